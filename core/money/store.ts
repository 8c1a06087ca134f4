/** Reads and writes of invoices, credit notes, payments and where each payment went. Issued rows are never changed. */
import { sql } from 'kysely';
import type { NewRow, ReadDb, WriteDb } from '../db/query.ts';
import type { Day } from '../kernel/days.ts';
import { AppError, notFound } from '../kernel/errors.ts';
import type { CustomerId, Id, InvoiceId, PaymentId, TicketId } from '../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../kernel/units.ts';
import { takeNumber } from '../shop/store.ts';
import { balanceOf, leftOf } from './compute.ts';

export type InvoiceBalance = Readonly<{
  id: InvoiceId;
  number: number;
  ticketId: TicketId;
  ticketNumber: number;
  customerId: CustomerId;
  customer: string;
  orderNumber: string | null;
  issuedOn: Day;
  dueOn: Day;
  total: Cents;
  balance: Cents;
  credited: Cents;
  disputed: boolean;
}>;

type Which = Readonly<{
  customerId?: CustomerId | undefined;
  ticketId?: TicketId | undefined;
  id?: InvoiceId | undefined;
  /** Only those with something open. */
  open?: boolean;
}>;

const IS_OPEN = sql<boolean>`i.total_cents
  - COALESCE((SELECT SUM(a.amount_cents) FROM allocation a WHERE a.invoice_id = i.id), 0)
  - COALESCE((SELECT SUM(w.amount_cents) FROM write_off w WHERE w.invoice_id = i.id), 0) > 0`;

/** Invoices with their balance, the latest first. @param limit the most rows read */
export function listInvoiceBalances(db: ReadDb, which: Which, limit = 10_000): InvoiceBalance[] {
  let query = db.q
    .selectFrom('invoice as i')
    .innerJoin('ticket as t', 't.id', 'i.ticket_id')
    .innerJoin('customer as c', 'c.id', 'i.customer_id')
    .selectAll('i')
    .select(['t.number as ticket_number', 'c.short_name'])
    .orderBy('i.number', 'desc')
    .limit(limit);
  if (which.customerId !== undefined) query = query.where('i.customer_id', '=', which.customerId);
  if (which.ticketId !== undefined) query = query.where('i.ticket_id', '=', which.ticketId);
  if (which.id !== undefined) query = query.where('i.id', '=', which.id);
  if (which.open) query = query.where(IS_OPEN);
  return db.all(query).map((row) => ({
    id: row.id,
    number: row.number,
    ticketId: row.ticket_id,
    ticketNumber: row.ticket_number,
    customerId: row.customer_id,
    customer: row.short_name,
    orderNumber: row.order_number,
    issuedOn: row.issued_on,
    dueOn: row.due_on,
    total: row.total_cents,
    balance: balanceOf(row.total_cents, allocatedTo(db, row.id), writtenOff(db, row.id)),
    credited: creditedOf(db, row.id),
    disputed: isDisputed(db, row.id),
  }));
}

const allocatedTo = (db: ReadDb, invoice: InvoiceId): Cents[] =>
  db
    .all(db.q.selectFrom('allocation').select('amount_cents').where('invoice_id', '=', invoice))
    .map((r) => r.amount_cents);

const writtenOff = (db: ReadDb, invoice: InvoiceId): Cents[] =>
  db
    .all(db.q.selectFrom('write_off').select('amount_cents').where('invoice_id', '=', invoice))
    .map((r) => r.amount_cents);

const creditedOf = (db: ReadDb, invoice: InvoiceId): Cents =>
  sumCents(
    db
      .all(db.q.selectFrom('credit_note').select('total_cents').where('invoice_id', '=', invoice))
      .map((r) => r.total_cents),
  );

const isDisputed = (db: ReadDb, invoice: InvoiceId): boolean =>
  db.one(db.q.selectFrom('dispute').select('id').where('invoice_id', '=', invoice).where('closed_at', 'is', null)) !==
  undefined;

/** @throws AppError `not-found` `invoices/no-such-invoice` */
export function getInvoiceBalance(db: ReadDb, id: InvoiceId): InvoiceBalance {
  const [found] = listInvoiceBalances(db, { id }, 1);
  if (!found) throw notFound('invoices/no-such-invoice', 'This invoice');
  return found;
}

/** The row as it was issued. @throws AppError `not-found` `invoices/no-such-invoice` */
export function getInvoice(db: ReadDb, id: InvoiceId) {
  const row = db.one(db.q.selectFrom('invoice').selectAll().where('id', '=', id));
  if (!row) throw notFound('invoices/no-such-invoice', 'This invoice');
  return row;
}

/** Rows of an invoice in printing order, with the tag of their casting. */
export const listInvoiceLines = (db: ReadDb, id: InvoiceId) =>
  db.all(
    db.q
      .selectFrom('invoice_line as l')
      .leftJoin('casting as c', 'c.id', 'l.casting_id')
      .selectAll('l')
      .select('c.tag_no')
      .where('l.invoice_id', '=', id)
      .orderBy('l.position')
      .orderBy('l.id'),
  );

export const listInvoiceTaxes = (db: ReadDb, id: InvoiceId) =>
  db.all(db.q.selectFrom('invoice_tax').selectAll().where('invoice_id', '=', id).orderBy('id'));

/** Credit notes of an invoice, oldest first. */
export const listCreditNotes = (db: ReadDb, id: InvoiceId) =>
  db.all(db.q.selectFrom('credit_note').selectAll().where('invoice_id', '=', id).orderBy('number'));

/** What was credited of each row of an invoice. */
export function creditedByLine(db: ReadDb, id: InvoiceId): Map<number, Cents> {
  const rows = db.all(
    db.q
      .selectFrom('credit_note_line as l')
      .innerJoin('credit_note as n', 'n.id', 'l.credit_note_id')
      .select(['l.invoice_line_id', 'l.amount_cents'])
      .where('n.invoice_id', '=', id),
  );
  const sums = new Map<number, Cents>();
  for (const { invoice_line_id: line, amount_cents: amount } of rows) {
    if (line !== null) sums.set(line, cents((sums.get(line) ?? 0) + amount));
  }
  return sums;
}

/** What credit notes gave back of each tax of an invoice: base and amount by rate code. */
export function creditedByTax(db: ReadDb, id: InvoiceId): Map<string, Readonly<{ base: Cents; amount: Cents }>> {
  const rows = db.all(
    db.q
      .selectFrom('credit_note_tax as x')
      .innerJoin('credit_note as n', 'n.id', 'x.credit_note_id')
      .select(['x.rate_code', 'x.base_cents', 'x.amount_cents'])
      .where('n.invoice_id', '=', id),
  );
  const sums = new Map<string, Readonly<{ base: Cents; amount: Cents }>>();
  for (const row of rows) {
    const before = sums.get(row.rate_code);
    sums.set(row.rate_code, {
      base: cents((before?.base ?? 0) + row.base_cents),
      amount: cents((before?.amount ?? 0) + row.amount_cents),
    });
  }
  return sums;
}

type Rows<T extends 'invoice_line' | 'invoice_tax'> = readonly Omit<NewRow<T>, 'invoice_id' | 'ticket_id'>[];

/**
 * Issue an invoice: take the next number and write its rows.
 *
 * @throws AppError `invoices/out-of-step` when the file refuses the number (I2)
 */
export function insertInvoice(
  db: WriteDb,
  row: Omit<NewRow<'invoice'>, 'number'>,
  lines: Rows<'invoice_line'>,
  taxes: Rows<'invoice_tax'>,
): Readonly<{ id: InvoiceId; number: number }> {
  const number = takeNumber(db, 'invoice');
  const id = numbered('invoice number', () => db.add('invoice', { ...row, number }));
  for (const line of lines) db.add('invoice_line', { ...line, invoice_id: id, ticket_id: row.ticket_id });
  for (const tax of taxes) db.add('invoice_tax', { ...tax, invoice_id: id, ticket_id: row.ticket_id });
  return { id, number };
}

/** Turns the refusal of an unbroken series into a sentence; the transaction takes everything back. */
function numbered<T>(what: string, add: () => T): T {
  try {
    return add();
  } catch (cause) {
    if (!(cause instanceof Error) || !cause.message.includes('without a gap')) throw cause;
    const message = `The ${what} is out of step. Nothing was saved; call support.`;
    throw new AppError('unavailable', 'invoices/out-of-step', message, { cause });
  }
}

type CreditRows<T extends 'credit_note_line' | 'credit_note_tax'> = readonly Omit<
  NewRow<T>,
  'credit_note_id' | 'ticket_id'
>[];

/** Issue a credit note with the next number of its own series. */
export function insertCreditNote(
  db: WriteDb,
  row: Omit<NewRow<'credit_note'>, 'number'>,
  lines: CreditRows<'credit_note_line'>,
  taxes: CreditRows<'credit_note_tax'>,
): Readonly<{ id: Id<'credit_note'>; number: number }> {
  const number = takeNumber(db, 'credit_note');
  const id = numbered('credit note number', () => db.add('credit_note', { ...row, number }));
  for (const line of lines) db.add('credit_note_line', { ...line, credit_note_id: id, ticket_id: row.ticket_id });
  for (const tax of taxes) db.add('credit_note_tax', { ...tax, credit_note_id: id, ticket_id: row.ticket_id });
  return { id, number };
}

export const insertAllocation = (db: WriteDb, row: NewRow<'allocation'>): Id<'allocation'> => db.add('allocation', row);

/** Take a payment, or give one back (negative), with the next receipt number. */
export function insertPayment(
  db: WriteDb,
  row: Omit<NewRow<'payment'>, 'receipt_number'>,
): Readonly<{ id: PaymentId; receiptNumber: number }> {
  const receiptNumber = takeNumber(db, 'receipt');
  const id = numbered('receipt number', () => db.add('payment', { ...row, receipt_number: receiptNumber }));
  return { id, receiptNumber };
}

/** How receipts and credit notes are written: R101, C101. */
export const receiptName = (number: number): string => `R${number}`;
export const creditName = (number: number): string => `C${number}`;

export type PaymentLeft = Readonly<{
  id: PaymentId;
  receiptNumber: number;
  customerId: CustomerId;
  kind: 'cash' | 'card' | 'transfer' | 'cheque' | 'other';
  amount: Cents;
  left: Cents;
  receivedOn: Day;
  forTicketId: TicketId | null;
  reversesId: PaymentId | null;
}>;

type PaymentsOf = Readonly<{
  customerId?: CustomerId | undefined;
  ticketId?: TicketId | undefined;
  id?: PaymentId | undefined;
}>;

/** Payments with what is left of each (refunds taken off), oldest first. A refund has nothing left. */
export function listPaymentsLeft(db: ReadDb, of: PaymentsOf): PaymentLeft[] {
  let query = db.q.selectFrom('payment').selectAll().orderBy('received_on').orderBy('id');
  if (of.customerId !== undefined) query = query.where('customer_id', '=', of.customerId);
  if (of.ticketId !== undefined) query = query.where('for_ticket_id', '=', of.ticketId);
  if (of.id !== undefined) query = query.where('id', '=', of.id);
  return db.all(query).map((row) => ({
    id: row.id,
    receiptNumber: row.receipt_number,
    customerId: row.customer_id,
    kind: row.kind,
    amount: row.amount_cents,
    left:
      row.reverses_id === null ? leftOf(cents(row.amount_cents + refunded(db, row.id)), usedOf(db, row.id)) : cents(0),
    receivedOn: row.received_on,
    forTicketId: row.for_ticket_id,
    reversesId: row.reverses_id,
  }));
}

const usedOf = (db: ReadDb, payment: PaymentId): Cents[] =>
  db
    .all(db.q.selectFrom('allocation').select('amount_cents').where('payment_id', '=', payment))
    .map((r) => r.amount_cents);

/** What was paid back of a payment; 0 or negative. */
const refunded = (db: ReadDb, payment: PaymentId): Cents =>
  sumCents(
    db
      .all(db.q.selectFrom('payment').select('amount_cents').where('reverses_id', '=', payment))
      .map((r) => r.amount_cents),
  );

/** @throws AppError `not-found` `payments/no-such-payment` */
export function getPaymentLeft(db: ReadDb, id: PaymentId): PaymentLeft {
  const [found] = listPaymentsLeft(db, { id });
  if (!found) throw notFound('payments/no-such-payment', 'This payment');
  return found;
}

/** Credit of a customer's credit notes that is not on an invoice yet. */
export function creditLeft(db: ReadDb, customer: CustomerId): Cents {
  const notes = db.all(
    db.q.selectFrom('credit_note').select(['id', 'total_cents']).where('customer_id', '=', customer),
  );
  const used = (note: Id<'credit_note'>) =>
    db
      .all(db.q.selectFrom('allocation').select('amount_cents').where('credit_note_id', '=', note))
      .map((r) => r.amount_cents);
  return sumCents(notes.map((note) => leftOf(note.total_cents, used(note.id))));
}
