/** Changing lines while nobody was given their price, taking them back, worked hours, rush. */
import type { Ctx, Handlers } from '../../host/implement.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { WorkLineId } from '../../kernel/ids.ts';
import { draftOperation } from '../../lines/compute/book.ts';
import { lineAmount, PER_HOUR } from '../../lines/compute/line.ts';
import { lineWords, plainUnit } from '../../lines/compute/line-views.ts';
import { committedLines, type MoneyLine } from '../../lines/compute/ticket-bill.ts';
import { resizeOperations } from '../../lines/store/operations.ts';
import { resizePart } from '../../lines/store/parts.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { listTicketCastings } from '../../lines/store/priced-castings.ts';
import { getTicketForPrice, readTicketMoney } from '../../lines/store/ticket-money.ts';
import {
  getWorkLine,
  repriceLine,
  setWorkedSeconds,
  type WorkLine,
  withdrawLine,
} from '../../lines/store/work-lines.ts';
import { getShop } from '../../shop/store.ts';
import { getTicket, refuseClosed } from '../../tickets/store.ts';
import type { pricingContract } from '../contract.ts';

type Changing = Pick<
  Handlers<typeof pricingContract>,
  | 'pricing/change-quantity'
  | 'pricing/override-price'
  | 'pricing/withdraw-line'
  | 'pricing/set-hours'
  | 'pricing/agree-rush'
  | 'pricing/lose-rush'
>;

export const changing: Changing = {
  'pricing/change-quantity': {
    run(input, ctx) {
      const { line } = changeable(ctx, input.lineId);
      if (line.kind === 'package') {
        const message = 'A package counts its castings. Withdraw the line and add the package again.';
        throw badField('pricing/package-count', 'quantity', message);
      }
      const changed = { ...line, quantity: input.quantity };
      const amount = lineAmount(changed);
      const changes = { quantity: input.quantity, countNote: input.countNote };
      const version = repriceLine(ctx.db, line, input.seenVersion, changes, amount);
      resizeWork(ctx, line, input.quantity);
      const { working } = lineWords(changed, unitOf(ctx, line));
      return {
        output: { version, amount, working },
        activity: [activityOf(line, `Changed the count of ${line.words} to ${input.quantity}`, { amount })],
        touched: [line.ticketId],
      };
    },
  },
  'pricing/override-price': {
    run(input, ctx) {
      const { line } = changeable(ctx, input.lineId);
      const changed = { ...line, unitPrice: input.price };
      const amount = lineAmount(changed);
      const changes = { unitPrice: input.price, priceFrom: 'typed', priceWhy: input.why, net: input.net } as const;
      const version = repriceLine(ctx.db, line, input.seenVersion, changes, amount);
      const { working } = lineWords(changed, unitOf(ctx, line));
      return {
        output: { version, amount, working },
        activity: [activityOf(line, `Typed another price for ${line.words}: ${input.why}`, { amount })],
        touched: [line.ticketId],
      };
    },
  },
  'pricing/withdraw-line': {
    run(input, ctx) {
      const { line, facts, committed } = known(ctx, input.lineId);
      refuseGone(line, facts);
      if (
        committed &&
        line.kind !== 'fee' &&
        line.kind !== 'text' &&
        line.kind !== 'freight' &&
        line.kind !== 'storage'
      ) {
        const message = `${line.words} is begun or ordered and stays on the bill. Stop it by added work, or credit it after the invoice.`;
        throw ruleBroken('pricing/line-begun', message);
      }
      const version = withdrawLine(ctx.db, line.id, input.seenVersion, ctx.now, input.why);
      return {
        output: { version },
        activity: [activityOf(line, `Withdrew ${line.words}: ${input.why}`, { withdrawn: true })],
        touched: [line.ticketId],
      };
    },
  },
  'pricing/set-hours': {
    run(input, ctx) {
      const { line, facts } = known(ctx, input.lineId);
      refuseGone(line, facts);
      if (line.per !== PER_HOUR)
        throw badField('pricing/not-by-hour', 'actual', `${line.words} is not sold by the hour.`);
      const version = setWorkedSeconds(ctx.db, line.id, input.seenVersion, input.actual);
      const changed = { ...line, quantity: input.actual };
      return {
        output: {
          version,
          amount: lineAmount(changed),
          working: lineWords(changed, 'hour').working,
          overEstimate: input.actual > line.quantity,
        },
        activity: [activityOf(line, `Wrote the worked hours of ${line.words}`, { seconds: input.actual })],
        touched: [line.ticketId],
      };
    },
  },
  'pricing/agree-rush': {
    run(input, { db }) {
      const ticket = getTicket(db, input.ticketId);
      refuseClosed(ticket);
      const bp = input.bp ?? getShop(db).rush_bp;
      const version = db.step('ticket', ticket.id, input.seenVersion, { rush_bp: bp, rush_lost_at: null });
      const words = `Agreed rush on ticket ${ticket.number}`;
      return {
        output: { version, bp },
        activity: [{ subject: ['ticket', ticket.id], words, ticket: ticket.id, before: ticket.rush_bp, after: bp }],
        touched: [ticket.id],
      };
    },
  },
  'pricing/lose-rush': {
    run(input, { db, now }) {
      const ticket = getTicket(db, input.ticketId);
      if (ticket.rush_bp === null || ticket.rush_lost_at !== null) {
        throw ruleBroken('pricing/no-rush', `Ticket ${ticket.number} has no rush to lose.`);
      }
      const version = db.step('ticket', ticket.id, input.seenVersion, { rush_lost_at: now });
      const words = `Rush lost on ticket ${ticket.number}: it falls away from the bill`;
      return {
        output: { version },
        activity: [{ subject: ['ticket', ticket.id], words, ticket: ticket.id }],
        touched: [ticket.id],
      };
    },
  },
};

type KnownLine = Readonly<{ line: WorkLine; facts: MoneyLine; committed: boolean }>;

function known(ctx: Ctx, id: WorkLineId): KnownLine {
  const line = getWorkLine(ctx.db, id);
  const money = readTicketMoney(ctx.db, line.ticketId, ctx.today);
  const facts = money.lines.find((other) => other.id === id);
  if (!facts) throw new RangeError(`line ${id} has no facts`);
  return { line, facts, committed: committedLines(money).includes(facts) };
}

/** A line whose price may still change (I30). @throws AppError `pricing/line-asked`, `pricing/line-billed`, `pricing/line-withdrawn` */
function changeable(ctx: Ctx, id: WorkLineId): KnownLine {
  const found = known(ctx, id);
  refuseGone(found.line, found.facts);
  if (found.facts.asked) {
    throw ruleBroken('pricing/line-asked', 'The customer was given this price. Withdraw the line and add a new one.');
  }
  return found;
}

function refuseGone(line: WorkLine, facts: MoneyLine): void {
  if (facts.invoiceNumber !== null) {
    throw ruleBroken('pricing/line-billed', `This line is already on invoice ${facts.invoiceNumber}. Credit it there.`);
  }
  if (line.withdrawnAt !== null) {
    throw ruleBroken('pricing/line-withdrawn', 'This line was withdrawn. Add it again if it is wanted.');
  }
}

/** Units and planned time of the operation, or the count of the part, follow the line. */
function resizeWork(ctx: Ctx, line: WorkLine, quantity: number): void {
  if (line.kind === 'part') resizePart(ctx.db, line.id, quantity);
  if (line.operationKindId === null) return;
  const book = readPriceBook(ctx.db);
  const kind = book.kinds.get(line.operationKindId);
  const casting = listTicketCastings(ctx.db, line.ticketId).find((c) => c.id === line.castingIds[0]);
  if (!kind || !casting) return;
  const ticket = getTicketForPrice(ctx.db, line.ticketId);
  const pricing = { list: ticket.priceList, on: line.priceDay, factors: book.factors };
  const drafted = draftOperation(book, kind, casting, pricing, quantity);
  if ('draft' in drafted) resizeOperations(ctx.db, line.id, drafted.draft.operations);
}

function unitOf(ctx: Ctx, line: WorkLine): string {
  if (line.operationKindId === null) return plainUnit(line.per);
  const casting = listTicketCastings(ctx.db, line.ticketId).find((c) => c.id === line.castingIds[0]);
  const kind = readPriceBook(ctx.db).kinds.get(line.operationKindId);
  return (casting && kind?.uses.get(casting.kind)?.chargeUnit) ?? plainUnit(line.per);
}

const activityOf = (line: WorkLine, words: string, after: unknown) => ({
  subject: ['work_line', line.id] as const,
  words,
  ticket: line.ticketId,
  before: { quantity: line.quantity, unitPrice: line.unitPrice, amount: line.amount },
  after,
});
