/** The panes of the ticket page: promises, castings, operations, lines, money. */
import { z } from 'zod';
import { CastingIdentity } from '../../castings/contract.ts';
import { AccountView } from '../../check-in/contract.ts';
import { CentsSchema, DaySchema, idOf, MomentSchema } from '../../kernel/schemas.ts';
import { CastingWordSchema, OperationRowSchema } from '../../state/contract.ts';
import { PROMISE_REASONS } from '../../tickets/contract.ts';

/** One promise. `words`: "Mon 16 Mar 17:00". */
export const PromiseRow = z.object({
  promiseId: idOf<'promise'>(),
  day: DaySchema,
  minute: z.int(),
  ownTime: z.boolean(),
  words: z.string(),
  dependsOn: z.string().nullable(),
  reason: z.enum(PROMISE_REASONS),
  reasonWords: z.string(),
  why: z.string().nullable(),
  at: MomentSchema,
  by: z.string(),
});

/** What the bar of a casting is made of, in the order of the traveller. */
const BarPart = z.object({
  operation: idOf<'operation'>(),
  mark: OperationRowSchema.shape.mark,
  held: z.boolean(),
});

export const TicketCasting = CastingIdentity.extend({
  word: CastingWordSchema,
  /** "in machine work", "waiting customer's answer". */
  wordWords: z.string(),
  /** Beside it: "surfacer next", "since 11:05, owner Nadia". */
  wordMore: z.string().nullable(),
  held: z.boolean(),
  bar: z.array(BarPart),
  done: z.int(),
  of: z.int(),
  /** "Valve grind started 10:20, D.R. then Seat cut"; "5 of 13 done" stands in `doneWords`. */
  nowWords: z.string(),
  doneWords: z.string(),
  signedWords: z.string().nullable(),
});

export const TicketOperation = OperationRowSchema.pick({
  id: true,
  version: true,
  castingId: true,
  kindCode: true,
  words: true,
  second: true,
  units: true,
  instruction: true,
  centre: true,
  gate: true,
  word: true,
  mark: true,
  right: true,
  covered: true,
  mayStart: true,
  next: true,
  stops: true,
  running: true,
  plannedSeconds: true,
  finished: true,
  notNeeded: true,
}).extend({
  /** First column: "in package", "added A2", or empty. */
  group: z.string(),
  line: idOf<'work_line'>().nullable(),
  /** Amount of its line, shown on the first operation of a line only. Null for a role that sees no prices. */
  amount: CentsSchema.nullable(),
  /** "K.T. Mon 14:10". */
  whoWords: z.string(),
});

export const TicketLine = z.object({
  lineId: idOf<'work_line'>(),
  version: z.int(),
  kind: z.string(),
  words: z.string(),
  /** The customer's own words. */
  wished: z.string().nullable(),
  castingId: idOf<'casting'>().nullable(),
  tags: z.array(z.int()),
  quantity: z.int(),
  per: z.int(),
  amount: CentsSchema,
  /** "75.00 × 1.15 × 2". */
  working: z.string(),
  net: z.boolean(),
  /** Answer: yes, no, not asked; "under the ceiling". */
  answerWords: z.string(),
  covered: z.boolean(),
  withdrawnWhy: z.string().nullable(),
  billed: z.boolean(),
  option: z.string().nullable(),
});

const MoneyRow = z.object({
  /** "Estimate, revision 1". */
  words: z.string(),
  amount: CentsSchema,
  /** `asked` is painted; `past` carries words beside the figure: "past by 248.68". */
  tone: z.enum(['plain', 'asked', 'past']),
  more: z.string().nullable(),
});

export const TicketMoney = z.object({
  /** Rows of the Money pane in order; "before tax" or "tax in" in `basis`. */
  rows: z.array(MoneyRow),
  basis: z.enum(['before tax', 'tax in']),
  estimate: z
    .object({
      estimateId: idOf<'estimate'>(),
      revision: z.int(),
      beforeTax: CentsSchema,
      tax: CentsSchema,
      total: CentsSchema,
      validUntil: DaySchema,
      sentAt: MomentSchema,
    })
    .nullable(),
  /** All live lines now. */
  now: z.object({ beforeTax: CentsSchema, tax: CentsSchema, total: CentsSchema }),
  authorised: CentsSchema.nullable(),
  authorisedWords: z.string(),
  exposure: CentsSchema,
  asked: CentsSchema,
  invoiced: CentsSchema,
  paid: CentsSchema,
  balance: CentsSchema,
  depositHeld: CentsSchema,
  moneyWord: z.string(),
  invoices: z.array(
    z.object({
      invoiceId: idOf<'invoice'>(),
      number: z.int(),
      issuedOn: DaySchema,
      dueOn: DaySchema,
      total: CentsSchema,
      balance: CentsSchema,
      word: z.string(),
    }),
  ),
  account: AccountView,
});
