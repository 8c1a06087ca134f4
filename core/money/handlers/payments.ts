/** Money in, money back, and which invoice it went to (I28). */
import type { z } from 'zod';
import { getCustomer } from '../../customers/store.ts';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Handlers } from '../../host/implement.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { CustomerId, InvoiceId, PaymentId, TicketId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { getTicket } from '../../tickets/store.ts';
import { allocateOldestFirst } from '../compute.ts';
import type { moneyContract, PaymentRow } from '../contract.ts';
import {
  getInvoiceBalance,
  getPaymentLeft,
  insertAllocation,
  insertPayment,
  listInvoiceBalances,
  listPaymentsLeft,
  type PaymentLeft,
  receiptName,
} from '../store.ts';

type Payments = Pick<
  Handlers<typeof moneyContract>,
  | 'payments/take-payment'
  | 'payments/allocate-payment'
  | 'payments/refund-payment'
  | 'payments/get-receipt'
  | 'payments/list-payments'
>;

export const payments: Payments = {
  'payments/take-payment': {
    run(input, { db, today }) {
      const customer = getCustomer(db, input.customerId);
      if (input.forTicketId !== null && getTicket(db, input.forTicketId).customer_id !== customer.id) {
        throw badField('payments/other-ticket', 'forTicketId', 'This ticket is of another customer.');
      }
      const receivedOn = input.receivedOn ?? today;
      if (receivedOn > today) throw badField('payments/in-the-future', 'receivedOn', 'This day is still to come.');
      const shares = sharesOf(db, input);
      const { id, receiptNumber } = insertPayment(db, {
        customer_id: customer.id,
        kind: input.kind,
        amount_cents: input.amount,
        for_ticket_id: input.forTicketId,
        received_on: receivedOn,
        words: input.words,
      });
      const applied = shares.map((share) => apply(db, id, share));
      const receipt = receiptName(receiptNumber);
      const tickets = [...applied.map((a) => a.ticketId), ...(input.forTicketId === null ? [] : [input.forTicketId])];
      const ticket = tickets[0] ?? null;
      return {
        output: {
          paymentId: id,
          receiptNumber,
          receipt,
          applied: applied.map(({ invoiceId, invoiceNumber, amount }) => ({ invoiceId, invoiceNumber, amount })),
          left: cents(input.amount - sumCents(applied.map((a) => a.amount))),
        },
        activity: [
          {
            subject: ['payment', id],
            words: `Took a payment by ${input.kind} from ${customer.short_name}, receipt ${receipt}`,
            ticket,
            after: { amount: input.amount, applied: applied.map((a) => [a.invoiceNumber, a.amount]) },
          },
        ],
        touched: tickets,
      };
    },
  },
  'payments/allocate-payment': {
    run(input, { db }) {
      const payment = getPaymentLeft(db, input.paymentId);
      const invoice = getInvoiceBalance(db, input.invoiceId);
      if (payment.customerId !== invoice.customerId) {
        throw badField(
          'payments/other-customer',
          'invoiceId',
          'This invoice is of another customer. Money is never netted between customers.',
        );
      }
      if (input.amount > payment.left) throw badField('payments/too-much', 'amount', leftWords(payment.left));
      refuseOver(input.amount, invoice.balance, invoice.number, 'amount');
      const applied = apply(db, payment.id, { invoiceId: invoice.id, amount: input.amount });
      return {
        output: { left: cents(payment.left - input.amount), balance: cents(invoice.balance - input.amount) },
        activity: [
          {
            subject: ['payment', payment.id],
            words: `Put ${receiptName(payment.receiptNumber)} on invoice ${invoice.number}`,
            ticket: applied.ticketId,
            after: { amount: input.amount },
          },
        ],
        touched: touchedBy(applied.ticketId, payment.forTicketId),
      };
    },
  },
  'payments/refund-payment': {
    run(input, { db, today }) {
      const payment = getPaymentLeft(db, input.paymentId);
      if (payment.reversesId !== null) throw ruleBroken('payments/is-refund', 'This receipt pays money back itself.');
      if (input.amount > payment.left) throw badField('payments/too-much', 'amount', leftWords(payment.left));
      const { id, receiptNumber } = insertPayment(db, {
        customer_id: payment.customerId,
        kind: input.kind,
        amount_cents: cents(-input.amount),
        reverses_id: payment.id,
        for_ticket_id: payment.forTicketId,
        received_on: today,
        words: input.words,
      });
      const receipt = receiptName(receiptNumber);
      return {
        output: { paymentId: id, receiptNumber, receipt },
        activity: [
          {
            subject: ['payment', id],
            words: `Paid back from ${receiptName(payment.receiptNumber)} with receipt ${receipt}: ${input.words}`,
            ticket: payment.forTicketId,
            after: { amount: -input.amount },
          },
        ],
        touched: payment.forTicketId === null ? [] : [payment.forTicketId],
      };
    },
  },
  'payments/get-receipt': {
    run({ paymentId }, { db }) {
      const payment = getPaymentLeft(db, paymentId);
      const customer = getCustomer(db, payment.customerId);
      const invoices = db.all(
        db.q
          .selectFrom('allocation')
          .select('invoice_id')
          .distinct()
          .where('payment_id', '=', paymentId)
          .orderBy('invoice_id'),
      );
      return {
        ...paymentRow(db, payment),
        customerId: customer.id,
        customer: customer.legal_name ?? customer.name,
        balances: invoices.map(({ invoice_id }) => {
          const { number, balance } = getInvoiceBalance(db, invoice_id);
          return { invoiceNumber: number, balance };
        }),
      };
    },
  },
  'payments/list-payments': {
    run: (input, { db }) => ({ payments: listPaymentsLeft(db, input).map((payment) => paymentRow(db, payment)) }),
  },
};

type Share = Readonly<{ invoiceId: InvoiceId; amount: Cents }>;
type Taking = Readonly<{
  customerId: CustomerId;
  amount: Cents;
  apply: 'oldest' | 'held' | readonly Share[];
}>;

/** Where a new payment goes. @throws AppError `payments/too-much` beside the share that is too big */
function sharesOf(db: ReadDb, { customerId, amount, apply: how }: Taking): Share[] {
  if (how === 'held') return [];
  const opens = listInvoiceBalances(db, { customerId, open: true });
  if (how === 'oldest') {
    const purse = { id: 0, receivedOn: '9999-12-31' as never, left: amount };
    return allocateOldestFirst([purse], opens).map((share) => ({
      invoiceId: share.open as InvoiceId,
      amount: share.amount,
    }));
  }
  if (sumCents(how.map((share) => share.amount)) > amount)
    throw badField('payments/too-much', 'apply', leftWords(amount));
  for (const [index, share] of how.entries()) {
    const open = opens.find((invoice) => invoice.id === share.invoiceId);
    if (!open)
      throw badField(
        'payments/nothing-open',
        `apply.${index}.invoiceId`,
        'Nothing is open on this invoice of this customer.',
      );
    const before = sumCents(
      how
        .slice(0, index)
        .filter((s) => s.invoiceId === share.invoiceId)
        .map((s) => s.amount),
    );
    refuseOver(share.amount, cents(open.balance - before), open.number, `apply.${index}.amount`);
  }
  return [...how];
}

function apply(db: WriteDb, payment: PaymentId, { invoiceId, amount }: Share) {
  const { number, ticketId } = getInvoiceBalance(db, invoiceId);
  insertAllocation(db, { payment_id: payment, invoice_id: invoiceId, ticket_id: ticketId, amount_cents: amount });
  return { invoiceId, invoiceNumber: number, amount, ticketId };
}

const plain = (amount: Cents): string => `${Math.floor(amount / 100)}.${String(amount % 100).padStart(2, '0')}`;
const leftWords = (left: Cents): string => `Only ${plain(left)} of this payment is left.`;

function refuseOver(amount: Cents, balance: Cents, invoice: number, field: string): void {
  if (amount <= balance) return;
  throw badField('payments/over-balance', field, `Only ${plain(balance)} is open on invoice ${invoice}.`);
}

const touchedBy = (ticket: TicketId, other: TicketId | null): TicketId[] =>
  other === null || other === ticket ? [ticket] : [ticket, other];

/** A payment with what it was applied to. */
function paymentRow(db: ReadDb, payment: PaymentLeft): z.output<typeof PaymentRow> {
  const row = db.one(
    db.q
      .selectFrom('payment as p')
      .leftJoin('staff as s', 's.id', 'p.created_by')
      .leftJoin('ticket as t', 't.id', 'p.for_ticket_id')
      .select(['p.words', 'p.created_at', 's.name', 't.number'])
      .where('p.id', '=', payment.id),
  );
  if (!row) throw new RangeError(`payment ${payment.id} is gone`);
  const applied = db.all(
    db.q
      .selectFrom('allocation as a')
      .innerJoin('invoice as i', 'i.id', 'a.invoice_id')
      .select(['i.number as invoiceNumber', 'a.amount_cents as amount'])
      .where('a.payment_id', '=', payment.id)
      .orderBy('a.id'),
  );
  return {
    id: payment.id,
    receiptNumber: payment.receiptNumber,
    receipt: receiptName(payment.receiptNumber),
    kind: payment.kind,
    amount: payment.amount,
    left: payment.left,
    receivedOn: payment.receivedOn,
    at: row.created_at,
    by: row.name ?? '',
    words: row.words,
    forTicketNumber: row.number,
    applied,
    reverses: payment.reversesId === null ? null : receiptName(getPaymentLeft(db, payment.reversesId).receiptNumber),
  };
}
