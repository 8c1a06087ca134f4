/** Estimates: a numbered revision of what the work will cost, kept as it was sent. */
import type { z } from 'zod';
import type { ReadDb } from '../../db/query.ts';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import { addDays, type Day } from '../../kernel/days.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { answerOnLine, standingAnswers } from '../../lines/compute/authorised.ts';
import { roleOf } from '../../lines/compute/bill.ts';
import { isOnBill, linesOnBill, type TicketMoney, wholeBill } from '../../lines/compute/ticket-bill.ts';
import { getEstimate, insertEstimate, listEstimates, listLinesOfEstimate } from '../../lines/store/answers.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { markQuoted } from '../../lines/store/parts.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { getShop } from '../../shop/store.ts';
import { getTicket, refuseClosed } from '../../tickets/store.ts';
import type { EstimateView, pricingContract } from '../contract.ts';

type Estimates = Pick<Handlers<typeof pricingContract>, 'pricing/send-estimate' | 'pricing/get-estimate'>;

export const estimates: Estimates = {
  'pricing/send-estimate': {
    run(input, { db, today, now }) {
      const ticket = getTicket(db, input.ticketId);
      refuseClosed(ticket);
      const money = readTicketMoney(db, ticket.id, today);
      const lines = linesOnBill(money);
      if (lines.length === 0) {
        throw ruleBroken('pricing/nothing-to-estimate', 'There is nothing to estimate yet. Add work or parts first.');
      }
      const validUntil = input.validUntil ?? addDays(today, getShop(db).estimate_days);
      if (validUntil < today)
        throw badField('pricing/valid-in-the-past', 'validUntil', 'Choose a day that is still to come.');
      const bill = wholeBill(money, lines);
      const revision = (listEstimates(db, ticket.id).at(-1)?.revision ?? 0) + 1;
      const on = new Set(lines.map((line) => line.id));
      const views = listLineViews(db, ticket.id, money, readPriceBook(db)).filter((view) => on.has(view.id));
      const { beforeTax, tax, total } = bill.figures;
      const estimateId = insertEstimate(
        db,
        {
          ticket_id: ticket.id,
          revision,
          valid_until: validUntil,
          before_tax_cents: beforeTax,
          tax_cents: tax,
          total_cents: total,
          words: input.words,
        },
        [
          ...views.map((view) => ({
            work_line_id: view.id,
            role: roleOf(view),
            words: view.words,
            quantity: view.quantity,
            amount_cents: view.amount,
            tax_class: view.taxClass,
          })),
          ...bill.derived.map((line) => ({
            role: line.role,
            words: line.words,
            amount_cents: line.amount,
            tax_class: line.taxClass,
          })),
        ],
      );
      markQuoted(
        db,
        ticket.id,
        views.map((view) => view.id),
        now,
      );
      const number = `${ticket.number}-E${revision}`;
      return {
        output: { estimateId, revision, number, total },
        activity: [
          {
            subject: ['estimate', estimateId],
            words: `Sent estimate ${number}`,
            ticket: ticket.id,
            after: bill.figures,
          },
        ],
        touched: [ticket.id],
      };
    },
  },
  'pricing/get-estimate': {
    run(input, ctx) {
      const { db, today } = ctx;
      const { ticket_id: ticketId } = getEstimate(db, input.estimateId);
      const ticket = getTicket(db, ticketId);
      const money = readTicketMoney(db, ticketId, today);
      const view = listEstimateViews(ctx, ticketId, money).find((one) => one.id === input.estimateId);
      if (!view) throw new RangeError(`estimate ${input.estimateId} is not on its ticket`);
      const lines = new Map(listLineViews(db, ticketId, money, readPriceBook(db)).map((line) => [line.id, line]));
      return {
        ...view,
        ticketId,
        ticketNumber: ticket.number,
        lines: listLinesOfEstimate(db, input.estimateId).map((row) => {
          const line = row.work_line_id === null ? undefined : lines.get(row.work_line_id);
          return {
            lineId: row.work_line_id,
            role: row.role,
            tag: line?.tag ?? null,
            words: row.words,
            quantityWords: line?.quantityWords ?? '',
            priceWords: line?.priceWords ?? '',
            amount: row.amount_cents,
            answer: row.work_line_id === null ? null : answerOnLine(money.answers, row.work_line_id),
          };
        }),
      };
    },
  },
};

/** Estimates of a ticket, the latest first. */
export function listEstimateViews(
  ctx: Pick<QueryCtx, 'db' | 'today'>,
  ticketId: TicketId,
  money: TicketMoney,
): z.output<typeof EstimateView>[] {
  const { number } = getTicket(ctx.db, ticketId);
  const standing = standingAnswers(money.answers).filter((a) => a.about === 'estimate');
  return listEstimates(ctx.db, ticketId)
    .map((row) => {
      const answer = standing.findLast((a) => a.question === row.id)?.answer ?? null;
      return {
        id: row.id,
        revision: row.revision,
        number: `${number}-E${row.revision}`,
        sentAt: row.created_at,
        sentBy: row.sent_by ?? '',
        validUntil: row.valid_until,
        expired: answer === null && isPast(row.valid_until, ctx.today),
        beforeTax: row.before_tax_cents,
        tax: row.tax_cents,
        total: row.total_cents,
        words: row.words,
        answer: answer === 'withdrawn' ? null : answer,
        outdated: isOutdated(ctx.db, row.id, money),
      };
    })
    .reverse();
}

const isPast = (day: Day, today: Day): boolean => day < today;

/** Work was added, or a line of it was taken back, since it was sent. Added work that was asked for itself does not count. */
function isOutdated(db: ReadDb, estimate: Parameters<typeof listLinesOfEstimate>[1], money: TicketMoney): boolean {
  const sent = new Set(listLinesOfEstimate(db, estimate).flatMap((row) => row.work_line_id ?? []));
  const now = money.lines.filter((line) => line.optionId === null && !line.withdrawn);
  return (
    now.some((line) => isOnBill(money, line) && !sent.has(line.id as never)) ||
    [...sent].some((id) => money.lines.find((line) => line.id === id)?.withdrawn === true)
  );
}
