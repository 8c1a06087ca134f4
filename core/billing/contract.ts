/** From the lines of a ticket to an issued invoice, and its credit. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { BasisPointsSchema, CentsSchema, DaySchema, idOf, MomentSchema, words } from '../kernel/schemas.ts';
import { BillView } from '../lines/contract.ts';
import { InvoiceRow } from '../money/contract.ts';
import { TaxClassSchema } from '../rates/contract.ts';

const CREDIT_REASONS = ['price_error', 'quality', 'goodwill', 'core', 'return'] as const;

/** Left out: everything unbilled. Castings: their lines, for a release of a part. Lines: exactly these. */
const Which = {
  ticketId: idOf<'ticket'>(),
  castings: z.array(idOf<'casting'>()).max(200).optional(),
  lines: z.array(idOf<'work_line'>()).max(400).optional(),
};

/** A line of an invoice, ready to show. */
export const InvoiceLineView = z.object({
  /** Null in a preview. */
  id: idOf<'invoice_line'>().nullable(),
  lineId: idOf<'work_line'>().nullable(),
  castingId: idOf<'casting'>().nullable(),
  tag: z.int().nullable(),
  role: z.string(),
  words: z.string(),
  quantityWords: z.string(),
  priceWords: z.string(),
  working: z.string(),
  amount: CentsSchema,
  taxClass: TaxClassSchema,
  /** Given back by credit notes. */
  credited: CentsSchema,
});

const Held = z.object({
  paymentId: idOf<'payment'>(),
  receipt: z.string(),
  receivedOn: DaySchema,
  left: CentsSchema,
  /** What issuing would apply of it. */
  applies: CentsSchema,
});

const AccountUseView = z.object({
  customerId: idOf<'customer'>(),
  open: CentsSchema,
  unbilledAuthorised: CentsSchema,
  used: CentsSchema,
  limit: CentsSchema.nullable(),
  bp: BasisPointsSchema.nullable(),
  state: z.enum(['none', 'ok', 'warn', 'over']),
  /** "2013.50 of 2500.00 used, 80.54 %"; empty without a limit. */
  words: z.string(),
});

export const billingContract = {
  /** What an invoice would say now, and what stands in its way. Writes nothing and takes no number. */
  'invoices/get-preview': query({
    may: 'money:see',
    input: z.strictObject(Which),
    output: z.object({
      ticketId: idOf<'ticket'>(),
      ticketNumber: z.int(),
      lines: z.array(InvoiceLineView),
      bill: BillView,
      issuedOn: DaySchema,
      dueOn: DaySchema,
      termsWords: z.string(),
      /** Nothing stays unbilled afterwards. */
      last: z.boolean(),
      /** Live lines that this invoice leaves out. */
      stays: z.array(z.object({ lineId: idOf<'work_line'>(), words: z.string(), why: z.string() })),
      deposits: z.array(Held),
      toPay: CentsSchema,
      /** What to look at before issuing; stops nothing: "Not done yet: cut seats on 41234." */
      notes: z.array(z.string()),
      /** Sentences; empty when it can be issued. */
      problems: z.array(z.object({ code: z.string(), words: z.string() })),
      earlierInvoices: z.array(z.int()),
    }),
  }),
  /** Takes the next number. From then on only a credit note and a new invoice change anything. */
  'invoices/issue-invoice': command({
    may: 'money:issue',
    input: z.strictObject({
      ...Which,
      /** The total the person was looking at: refused when it moved meanwhile. */
      seenTotal: CentsSchema,
      applyDeposits: z.boolean().default(true),
    }),
    output: z.object({
      invoiceId: idOf<'invoice'>(),
      number: z.int(),
      total: CentsSchema,
      applied: CentsSchema,
      balance: CentsSchema,
      dueOn: DaySchema,
    }),
  }),
  'invoices/get-invoice': query({
    may: 'money:see',
    input: z.strictObject({ invoiceId: idOf<'invoice'>() }),
    output: InvoiceRow.extend({
      /** As printed at issue, whatever the customer is called now. */
      printName: z.string(),
      printAddress: z.string().nullable(),
      contact: z.string().nullable(),
      termsWords: z.string(),
      warranty: z.string().nullable(),
      lines: z.array(InvoiceLineView),
      bill: BillView,
      beforeTax: CentsSchema,
      tax: CentsSchema,
      payments: z.array(
        z.object({ receipt: z.string(), kind: z.string(), receivedOn: DaySchema, amount: CentsSchema }),
      ),
      credits: z.array(
        z.object({
          id: idOf<'credit_note'>(),
          /** "C101". */
          number: z.string(),
          issuedOn: DaySchema,
          reason: z.enum(CREDIT_REASONS),
          words: z.string(),
          beforeTax: CentsSchema,
          tax: CentsSchema,
          total: CentsSchema,
        }),
      ),
      castings: z.array(z.object({ id: idOf<'casting'>(), tag: z.int(), words: z.string() })),
      /** Who approved what, one sentence each. */
      approvals: z.array(z.object({ at: MomentSchema, words: z.string() })),
      /** Payments of the customer not applied yet, and what of each this invoice could take. */
      held: z.array(Held),
    }),
  }),
  /**
   * Gives back whole lines or amounts of them, with their tax at the invoice's own rates, and puts the credit on the
   * invoice as far as it is open. A line credited in full for a wrong price may be billed again.
   */
  'invoices/credit-invoice': command({
    may: 'money:credit',
    input: z.strictObject({
      invoiceId: idOf<'invoice'>(),
      lines: z.union([
        z.literal('all'),
        z
          .array(
            z.strictObject({
              invoiceLineId: idOf<'invoice_line'>(),
              /** Left out, and no pieces: all that was not credited yet. */
              amount: CentsSchema.refine((value) => value !== 0, 'Write an amount.')
                .nullable()
                .default(null),
              /** Pieces given back: what is kept is priced again and the rest is credited. */
              pieces: z.int().positive('Write how many come back.').nullable().default(null),
            }),
          )
          .min(1, 'Choose what is credited.')
          .max(400),
      ]),
      reason: z.enum(CREDIT_REASONS, { error: 'Choose the reason.' }),
      words: words(240, 'why it is credited'),
    }),
    output: z.object({
      creditNoteId: idOf<'credit_note'>(),
      number: z.string(),
      beforeTax: CentsSchema,
      tax: CentsSchema,
      total: CentsSchema,
      balance: CentsSchema,
    }),
  }),
  /** How much of the account is used: what is owed plus what is authorised and not billed. */
  'accounts/get-account-use': query({
    may: 'customers:see',
    input: z.strictObject({ customerId: idOf<'customer'>() }),
    output: AccountUseView,
  }),
} as const;
