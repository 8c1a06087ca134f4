/** Money after the invoice: payments, receipts, balances, ageing, statements. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { CentsSchema, DaySchema, idOf, MomentSchema, optionalWords, words } from '../kernel/schemas.ts';
import { TypedAmount } from '../rates/contract.ts';

const PAYMENT_KINDS = ['cash', 'card', 'transfer', 'cheque', 'other'] as const;
const MoneyWordSchema = z.enum(['credited', 'disputed', 'paid', 'overdue', 'part paid', 'invoiced']);
const Positive = TypedAmount.refine((value) => value > 0, 'Write an amount above 0.');

/** An invoice in one row. */
export const InvoiceRow = z.object({
  id: idOf<'invoice'>(),
  number: z.int(),
  ticketId: idOf<'ticket'>(),
  ticketNumber: z.int(),
  customerId: idOf<'customer'>(),
  customer: z.string(),
  orderNumber: z.string().nullable(),
  issuedOn: DaySchema,
  dueOn: DaySchema,
  total: CentsSchema,
  balance: CentsSchema,
  word: MoneyWordSchema,
  /** Days past the day age is counted from; 0 or less is not late. */
  daysLate: z.int(),
});

/** A payment, a deposit while it is not applied, or a refund (negative). */
export const PaymentRow = z.object({
  id: idOf<'payment'>(),
  receiptNumber: z.int(),
  /** "R101". */
  receipt: z.string(),
  kind: z.enum(PAYMENT_KINDS),
  amount: CentsSchema,
  /** Not yet applied to an invoice. */
  left: CentsSchema,
  receivedOn: DaySchema,
  at: MomentSchema,
  by: z.string(),
  words: z.string().nullable(),
  forTicketNumber: z.int().nullable(),
  /** What it was applied to. */
  applied: z.array(z.object({ invoiceNumber: z.int(), amount: CentsSchema })),
  /** Receipt it pays back, for a refund or a cheque that came back. */
  reverses: z.string().nullable(),
});

const AgeRowView = z.object({
  current: CentsSchema,
  '1-30': CentsSchema,
  '31-60': CentsSchema,
  '61-90': CentsSchema,
  'over 90': CentsSchema,
});

export const moneyContract = {
  /**
   * Money came in. `apply`: `oldest` pays the customer's open invoices, oldest first; a list names invoices; `held` keeps it
   * (a deposit when a ticket is named).
   */
  'payments/take-payment': command({
    may: 'money:take',
    input: z.strictObject({
      customerId: idOf<'customer'>(),
      kind: z.enum(PAYMENT_KINDS, { error: 'Choose how they pay.' }),
      amount: Positive,
      /** The ticket a deposit is for. */
      forTicketId: idOf<'ticket'>().nullable().default(null),
      apply: z
        .union([
          z.enum(['oldest', 'held']),
          z.array(z.strictObject({ invoiceId: idOf<'invoice'>(), amount: Positive })).max(100),
        ])
        .default('held'),
      receivedOn: DaySchema.nullable().default(null),
      /** Slip or cheque number. */
      words: optionalWords(240, 'the slip number'),
    }),
    output: z.object({
      paymentId: idOf<'payment'>(),
      receiptNumber: z.int(),
      receipt: z.string(),
      applied: z.array(z.object({ invoiceId: idOf<'invoice'>(), invoiceNumber: z.int(), amount: CentsSchema })),
      /** Kept for later. */
      left: CentsSchema,
    }),
  }),
  'payments/allocate-payment': command({
    may: 'money:take',
    input: z.strictObject({ paymentId: idOf<'payment'>(), invoiceId: idOf<'invoice'>(), amount: Positive }),
    output: z.object({ left: CentsSchema, balance: CentsSchema }),
  }),
  /** Money that was not applied goes back, with a receipt of its own. */
  'payments/refund-payment': command({
    may: 'money:credit',
    input: z.strictObject({
      paymentId: idOf<'payment'>(),
      amount: Positive,
      kind: z.enum(PAYMENT_KINDS),
      words: words(240, 'why it is paid back'),
    }),
    output: z.object({ paymentId: idOf<'payment'>(), receiptNumber: z.int(), receipt: z.string() }),
  }),
  'payments/get-receipt': query({
    may: 'money:see',
    input: z.strictObject({ paymentId: idOf<'payment'>() }),
    output: PaymentRow.extend({
      customerId: idOf<'customer'>(),
      customer: z.string(),
      /** What is open on the invoices it was applied to, after it. */
      balances: z.array(z.object({ invoiceNumber: z.int(), balance: CentsSchema })),
    }),
  }),
  'payments/list-payments': query({
    may: 'money:see',
    input: z.strictObject({ customerId: idOf<'customer'>().optional(), ticketId: idOf<'ticket'>().optional() }),
    output: z.object({ payments: z.array(PaymentRow) }),
  }),
  'invoices/list-invoices': query({
    may: 'money:see',
    input: z.strictObject({
      customerId: idOf<'customer'>().optional(),
      ticketId: idOf<'ticket'>().optional(),
      openOnly: z.boolean().default(false),
      limit: z.int().min(1).max(500).default(100),
    }),
    output: z.object({ rows: z.array(InvoiceRow) }),
  }),
  /** What everybody owes by age, the most first. Money not applied stands in a column of its own, never netted. */
  'accounts/list-ageing': query({
    may: 'money:see',
    input: z.strictObject({ asOf: DaySchema.optional() }),
    output: z.object({
      asOf: DaySchema,
      /** "due day" or "day of the invoice". */
      countedFrom: z.string(),
      rows: z.array(
        z.object({
          customerId: idOf<'customer'>(),
          customer: z.string(),
          owed: CentsSchema,
          aged: AgeRowView,
          notApplied: CentsSchema,
          limit: CentsSchema.nullable(),
        }),
      ),
      sum: AgeRowView,
      owed: CentsSchema,
      notApplied: CentsSchema,
    }),
  }),
  'accounts/get-statement': query({
    may: 'money:see',
    input: z.strictObject({ customerId: idOf<'customer'>(), from: DaySchema.optional(), asOf: DaySchema.optional() }),
    output: z.object({
      customerId: idOf<'customer'>(),
      customer: z.string(),
      address: z.string().nullable(),
      from: DaySchema,
      asOf: DaySchema,
      opening: CentsSchema,
      /** Invoices, credits and payments in date order with the balance after each. */
      rows: z.array(
        z.object({
          on: DaySchema,
          kind: z.enum(['invoice', 'credit', 'payment', 'refund', 'write-off']),
          number: z.string(),
          words: z.string(),
          amount: CentsSchema,
          balance: CentsSchema,
          disputed: z.boolean(),
        }),
      ),
      closing: CentsSchema,
      aged: AgeRowView,
      notApplied: CentsSchema,
    }),
  }),
} as const;
