/** Charges, questions, parts and money of a ticket, with what lines/compute says of each charge. */
import { keptQuery } from '../../db/kept-query.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { TicketId, WorkLineId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { answerOnLine, notCoveredWords } from '../../lines/compute/authorised.ts';
import { coverageOf, invoiceBill, type TicketMoney, unbilledLines } from '../../lines/compute/ticket-bill.ts';
import { balanceOf, leftOf } from '../../money/compute.ts';
import type { EstimateFact, LineFact, MoneyFact, PartFact, QuestionFact } from '../compute/facts.ts';

/** Every charge with its answer and whether it may be begun. */
export const lineFacts = (money: TicketMoney): LineFact[] =>
  money.lines.map((line) => {
    const coverage = coverageOf(money, line);
    return {
      id: line.id as WorkLineId,
      castingIds: line.castingIds,
      kind: line.bill.kind,
      amount: line.bill.amount,
      optionId: line.optionId,
      withdrawn: line.withdrawn,
      billed: line.invoiceNumber !== null,
      asked: line.asked,
      answer: answerOnLine(money.answers, line.id),
      covered: coverage.covered && !line.withdrawn,
      coverWords: coverage.covered ? '' : notCoveredWords(coverage, line.bill.amount),
    };
  });

const estimateRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('estimate')
    .select(['id', 'revision', 'created_at', 'valid_until', 'total_cents'])
    .where('ticket_id', '=', ticket)
    .orderBy('revision'),
);

/** Estimates that were sent, oldest first. */
export const listEstimateFacts = (db: ReadDb, ticket: TicketId): EstimateFact[] =>
  estimateRows(db, ticket).map((row) => ({
    id: row.id,
    revision: row.revision,
    sentAt: row.created_at,
    validUntil: row.valid_until,
    total: row.total_cents,
  }));

const questionRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('added_work').selectAll().where('ticket_id', '=', ticket).orderBy('number'),
);

const optionRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('added_work_option')
    .select(['id', 'added_work_id', 'extra_cents'])
    .where('ticket_id', '=', ticket)
    .orderBy('letter'),
);

/** Added work with its options, oldest first. */
export function listQuestions(db: ReadDb, ticket: TicketId): QuestionFact[] {
  const rows = questionRows(db, ticket);
  if (rows.length === 0) return [];
  const options = optionRows(db, ticket);
  return rows.map((row) => ({
    id: row.id,
    number: row.number,
    castingId: row.casting_id,
    askedAt: row.asked_at,
    closedAt: row.closed_at,
    expiresAt: row.expires_at,
    words: row.words,
    options: options.filter((option) => option.added_work_id === row.id).map((option) => option.id),
  }));
}

const partRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('part_line').selectAll().where('ticket_id', '=', ticket).orderBy('id'),
);

export const listParts = (db: ReadDb, ticket: TicketId): PartFact[] =>
  partRows(db, ticket).map((row) => ({
    id: row.id,
    castingId: row.casting_id,
    words: row.words,
    source: row.source,
    quotedAt: row.quoted_at,
    orderedAt: row.ordered_at,
    expectedOn: row.expected_on,
    backOrderedAt: row.back_ordered_at,
    hereAt: row.here_at,
    fittedAt: row.fitted_at,
    returnedAt: row.returned_at,
    blocks: row.blocks_id,
  }));

const invoiceRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('invoice').select(['id', 'total_cents', 'due_on']).where('ticket_id', '=', ticket).orderBy('id'),
);

const allocationRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('allocation').select(['invoice_id as id', 'amount_cents']).where('ticket_id', '=', ticket),
);

const writeOffRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('write_off').select(['invoice_id as id', 'amount_cents']).where('ticket_id', '=', ticket),
);

const openCores = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('core')
    .select(q.fn.countAll<number>().as('count'))
    .where('ticket_id', '=', ticket)
    .where('settled_at', 'is', null)
    .where('direction', '!=', 'left_in_payment'),
);

/** What is owed, held and not billed yet. */
export function readMoneyFact(db: ReadDb, ticket: TicketId, money: TicketMoney): MoneyFact {
  const invoices = invoiceRows(db, ticket);
  const allocated = amounts(allocationRows(db, ticket));
  const written = amounts(writeOffRows(db, ticket));
  const balances = invoices.map((invoice) => ({
    dueOn: invoice.due_on,
    balance: balanceOf(invoice.total_cents, allocated.get(invoice.id) ?? [], written.get(invoice.id) ?? []),
  }));
  const cores = openCores(db, ticket)[0];
  const unbilled = unbilledLines(money);
  return {
    balance: sumCents(balances.map((b) => b.balance)),
    invoiced: sumCents(invoices.map((invoice) => invoice.total_cents)),
    held: heldFor(db, ticket),
    dueOn: firstDay(balances.filter((b) => b.balance > 0).map((b) => b.dueOn)),
    openCores: cores?.count ?? 0,
    invoices: invoices.length,
    unbilledLines: unbilled.length,
    unbilled: unbilled.length === 0 ? cents(0) : invoiceBill(money, unbilled).figures.total,
  };
}

const firstDay = (days: readonly Day[]): Day | null =>
  days.reduce<Day | null>((a, b) => (a === null || b < a ? b : a), null);

function amounts(rows: readonly Readonly<{ id: number | null; amount_cents: Cents }>[]): Map<number, Cents[]> {
  const result = new Map<number, Cents[]>();
  for (const { id, amount_cents } of rows) {
    if (id !== null) result.set(id, [...(result.get(id) ?? []), amount_cents]);
  }
  return result;
}

const paymentRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('payment').select(['id', 'amount_cents']).where('for_ticket_id', '=', ticket).orderBy('id'),
);

const usedRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('allocation as a')
    .innerJoin('payment as p', 'p.id', 'a.payment_id')
    .select(['a.payment_id as id', 'a.amount_cents'])
    .where('p.for_ticket_id', '=', ticket),
);

/** Payments kept for the ticket, less what of them was put on invoices. */
function heldFor(db: ReadDb, ticket: TicketId): Cents {
  const payments = paymentRows(db, ticket);
  if (payments.length === 0) return cents(0);
  const used = amounts(usedRows(db, ticket));
  return sumCents(payments.map((payment) => leftOf(payment.amount_cents, used.get(payment.id) ?? [])));
}
