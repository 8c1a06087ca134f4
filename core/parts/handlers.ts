/** Parts of a ticket: needed, ordered, here, fitted. Ordering waits for the customer's yes (I5). */
import type { z } from 'zod';
import { type Ctx, implement, personOf } from '../host/implement.ts';
import { badField, ruleBroken } from '../kernel/errors.ts';
import type { PartLineId, TicketId } from '../kernel/ids.ts';
import { cents } from '../kernel/units.ts';
import { notCoveredWords } from '../lines/compute/authorised.ts';
import { coverageOf } from '../lines/compute/ticket-bill.ts';
import type { PartView } from '../lines/contract.ts';
import { addPart } from '../lines/store/add-charges.ts';
import { openJob } from '../lines/store/add-lines.ts';
import {
  getPart,
  listParts,
  listStockItems,
  type PartChanges,
  type PartRow,
  stepPart,
  stockItem,
} from '../lines/store/parts.ts';
import { readTicketMoney } from '../lines/store/ticket-money.ts';
import { partWord } from '../state/compute/goods.ts';
import { getTicket, refuseClosed, refuseWaitingAccount } from '../tickets/store.ts';
import { partsContract } from './contract.ts';

export const parts = implement(partsContract, {
  'parts/add-part': {
    run(input, ctx) {
      refuseClosed(getTicket(ctx.db, input.ticketId));
      const job = openJob(ctx.db, input.ticketId);
      const stock = stockItem(ctx.db, input.part.stockItemId);
      const { words, ...added } = addPart(ctx.db, job, input.castingId, input.part, stock, 'part');
      return {
        output: { partId: added.partId, lineId: added.lineId, amount: added.amount, working: added.working },
        activity: [
          {
            subject: ['part_line', added.partId],
            words: `Added ${input.part.quantity} ${words} to ticket ${job.ticket.number}`,
            ticket: input.ticketId,
            after: { amount: added.amount, source: input.part.source },
          },
        ],
        touched: [input.ticketId],
      };
    },
  },
  'parts/order-part': {
    run(input, ctx) {
      const part = getPart(ctx.db, input.part);
      refuseState(part, ['ordered', 'here', 'fitted', 'returned'], 'is ordered already');
      if (part.source === 'customer')
        throw ruleBroken('parts/customers-own', 'The customer brings this part: there is nothing to order.');
      refuseWaitingAccount(ctx.db, part.ticket_id);
      refuseUncovered(ctx, part);
      return step(ctx, part, input.seenVersion, `Ordered ${part.words}`, {
        ordered_at: ctx.now,
        expected_on: input.expectedOn,
        supplier_words: input.supplierWords,
        back_ordered_at: null,
      });
    },
  },
  'parts/mark-back-ordered': {
    run(input, ctx) {
      const part = getPart(ctx.db, input.part);
      refuseState(part, ['here', 'fitted', 'returned'], 'is here already');
      return step(ctx, part, input.seenVersion, `${part.words} is on back order`, {
        back_ordered_at: ctx.now,
        expected_on: input.expectedOn,
      });
    },
  },
  'parts/receive-part': {
    run(input, ctx) {
      const part = getPart(ctx.db, input.part);
      refuseState(part, ['fitted', 'returned'], 'was fitted or returned');
      if (input.count > part.quantity) {
        const message = `${part.quantity} were asked for, ${input.count} counted. Count again, or add the extra as a line of its own.`;
        throw badField('parts/too-many', 'count', message);
      }
      const missing = part.quantity - input.count;
      const done = step(ctx, part, input.seenVersion, `Received ${input.count} of ${part.quantity} ${part.words}`, {
        here_count: input.count,
        here_at: missing === 0 ? ctx.now : null,
      });
      return { ...done, output: { ...done.output, missing } };
    },
  },
  'parts/check-against-job': {
    run(input, ctx) {
      const part = getPart(ctx.db, input.part);
      return step(ctx, part, input.seenVersion, `Checked ${part.words} against the job`, {
        checked_at: ctx.now,
        checked_by: personOf(ctx),
      });
    },
  },
  'parts/fit-part': {
    run(input, ctx) {
      const part = getPart(ctx.db, input.part);
      refuseState(part, ['fitted', 'returned'], 'was fitted or returned');
      if (part.here_at === null && part.source !== 'stock') {
        throw ruleBroken('parts/not-here', `${part.words} is not here yet. Receive it first, then fit it.`);
      }
      refuseUncovered(ctx, part);
      return step(ctx, part, input.seenVersion, `Fitted ${part.words}`, {
        fitted_at: ctx.now,
        ...(part.here_at === null ? { here_at: ctx.now, here_count: part.quantity } : {}),
      });
    },
  },
  'parts/return-part': {
    run(input, ctx) {
      const part = getPart(ctx.db, input.part);
      refuseState(part, ['returned'], 'was returned already');
      if (part.fitted_at !== null) throw ruleBroken('parts/fitted', `${part.words} is fitted and cannot be returned.`);
      return step(ctx, part, input.seenVersion, `Returned ${part.words}`, { returned_at: ctx.now });
    },
  },
  'parts/list-parts': {
    run: ({ ticketId }, { db }) => ({ parts: listParts(db, ticketId).map(partView) }),
  },
  'parts/list-stock': {
    run: (_, { db }) => ({
      items: listStockItems(db).map((item) => ({
        ...item,
        coreCharge: item.coreCharge === null ? null : cents(item.coreCharge),
      })),
    }),
  },
});

const momentsOf = (part: PartRow): Parameters<typeof partWord>[0] => ({
  source: part.source,
  quotedAt: part.quoted_at,
  orderedAt: part.ordered_at,
  backOrderedAt: part.back_ordered_at,
  hereAt: part.here_at,
  fittedAt: part.fitted_at,
  returnedAt: part.returned_at,
});

function refuseState(part: PartRow, words: readonly string[], what: string): void {
  if (words.includes(partWord(momentsOf(part)))) throw ruleBroken('parts/too-late', `${part.words} ${what}.`);
}

/** A charged part is ordered or fitted only when the customer said yes, or below the ceiling (I5). */
function refuseUncovered(ctx: Ctx, part: PartRow): void {
  if (part.work_line_id === null) return;
  const money = readTicketMoney(ctx.db, part.ticket_id, ctx.today);
  const line = money.lines.find((other) => other.id === part.work_line_id);
  if (!line || line.ordered) return;
  const coverage = coverageOf(money, line);
  if (!coverage.covered) throw ruleBroken('approvals/not-covered', notCoveredWords(coverage, line.bill.amount));
}

function step(ctx: Ctx, part: PartRow, seen: number, words: string, changes: PartChanges) {
  const version = stepPart(ctx.db, part.id, seen, changes);
  const subject: readonly [string, PartLineId] = ['part_line', part.id];
  const ticket: TicketId = part.ticket_id;
  return { output: { version }, activity: [{ subject, words, ticket, after: changes }] as const, touched: [ticket] };
}

const partView = (part: PartRow): z.output<typeof PartView> => ({
  id: part.id,
  version: part.version,
  ticketId: part.ticket_id,
  castingId: part.casting_id,
  tag: part.tag_no,
  workLineId: part.work_line_id,
  words: part.words,
  makerNumber: part.maker_number,
  quantity: part.quantity,
  source: part.source,
  newUsed: part.new_used,
  word: partWord(momentsOf(part)),
  supplierWords: part.supplier_words,
  expectedOn: part.expected_on,
  hereCount: part.here_count,
  orderedAt: part.ordered_at,
  hereAt: part.here_at,
  fittedAt: part.fitted_at,
  checked: part.checked_at === null ? null : { at: part.checked_at, by: part.checked_name ?? '' },
  blocks: part.blocks_words,
});
