/** The ticket page in one answer, a casting, and lists of tickets with their state and promise. */
import { z } from 'zod';
import { CastingIdentity } from '../castings/contract.ts';
import { AccountView } from '../check-in/contract.ts';
import { ContainerView } from '../intake/contract.ts';
import { query } from '../kernel/contract.ts';
import { CentsSchema, DaySchema, idOf, MomentSchema, NanometresSchema } from '../kernel/schemas.ts';
import {
  CastingWordSchema,
  ChipSchema,
  HoldRowSchema,
  OperationRowSchema,
  PartWordSchema,
  TicketWordSchema,
  WhoSchema,
} from '../state/contract.ts';
import { CONTACT_ABOUT, CONTACT_MEANS, GASKETS, OLD_PARTS, PROMISE_REASONS } from '../tickets/contract.ts';

const ticketId = idOf<'ticket'>();

/** One promise. `words`: "Mon 16 Mar 17:00". */
const PromiseRow = z.object({
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

export const TicketOperation = OperationRowSchema.extend({
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

export const TicketPage = z.object({
  ticketId,
  version: z.int(),
  number: z.int(),
  quick: z.boolean(),
  customer: z.object({
    customerId: idOf<'customer'>(),
    name: z.string(),
    shortName: z.string(),
    /** "account, net 30" or "retail". */
    words: z.string(),
    person: z.object({ personId: idOf<'customer_person'>(), name: z.string(), approveWords: z.string() }).nullable(),
    phone: z.string().nullable(),
    stopWords: z.string().nullable(),
    standingInstruction: z.string().nullable(),
    needsOrderNumber: z.boolean(),
  }),
  fields: z.object({
    orderNumber: z.string().nullable(),
    wantedWords: z.string().nullable(),
    broughtBy: z.string().nullable(),
    engine: z.string().nullable(),
    engineWords: z.string().nullable(),
    useWords: z.string().nullable(),
    gasket: z.enum(GASKETS),
    valveLift: z.string().nullable(),
    valveLiftValue: NanometresSchema.nullable(),
    fuelWords: z.string().nullable(),
    historyWords: z.string().nullable(),
    notes: z.string().nullable(),
    oldParts: z.enum(OLD_PARTS),
    crackCheck: z.enum(['wanted', 'declined']),
    certified: z.boolean(),
    declaredValue: CentsSchema.nullable(),
    contactPersonId: idOf<'customer_person'>().nullable(),
    customerId: idOf<'customer'>(),
  }),
  /** The same fields in words, ready to show: label and text; empty ones left out. */
  said: z.array(z.object({ label: z.string(), words: z.string() })),
  arrivedAt: MomentSchema.nullable(),
  /** "Mon 9 Mar 09:21". */
  arrivedWords: z.string(),
  takenInBy: WhoSchema.nullable(),
  signed: z
    .object({
      how: z.enum(['drawn', 'on_paper', 'left_unsigned']),
      by: z.string().nullable(),
      at: MomentSchema.nullable(),
      words: z.string(),
    })
    .nullable(),
  conditionsLocked: z.boolean(),
  /** The word now, and the agreement line: the stages in order, `here` on the present one. */
  word: TicketWordSchema,
  chips: z.array(ChipSchema),
  agreement: z.array(z.object({ word: TicketWordSchema, past: z.boolean(), here: z.boolean() })),
  /** Why it is not ready, one sentence each; empty when it is. */
  notReady: z.array(z.string()),
  castings: z.array(TicketCasting),
  operations: z.array(TicketOperation),
  /** Containers of the ticket itself; those of a casting stand with it. */
  containers: z.array(ContainerView),
  lines: z.array(TicketLine),
  parts: z.array(
    z.object({
      partLineId: idOf<'part_line'>(),
      version: z.int(),
      castingId: idOf<'casting'>().nullable(),
      words: z.string(),
      quantity: z.int(),
      word: PartWordSchema,
      expectedOn: DaySchema.nullable(),
      more: z.string(),
    }),
  ),
  holds: z.array(HoldRowSchema),
  questions: z.array(
    z.object({
      addedWorkId: idOf<'added_work'>(),
      number: z.int(),
      /** "10482-A2". */
      label: z.string(),
      castingId: idOf<'casting'>(),
      words: z.string(),
      extra: CentsSchema,
      askedAt: MomentSchema.nullable(),
      expiresAt: MomentSchema,
      answered: z.boolean(),
    }),
  ),
  approvals: z.array(
    z.object({
      approvalId: idOf<'approval'>(),
      about: z.string(),
      /** "Yes to A1 (a), 326.72. Ysolde Kerrow, by telephone 555-0142: ..." */
      words: z.string(),
      at: MomentSchema,
      by: z.string(),
      takenBack: z.boolean(),
    }),
  ),
  promise: PromiseRow.nullable(),
  firstPromise: PromiseRow.nullable(),
  promises: z.array(PromiseRow),
  /** "moved once: crack, weld out"; empty when it never moved. */
  promiseWords: z.string(),
  late: z.boolean(),
  money: TicketMoney,
  contacts: z.array(
    z.object({
      contactId: idOf<'contact_log'>(),
      at: MomentSchema,
      atWords: z.string(),
      means: z.enum(CONTACT_MEANS),
      about: z.enum(CONTACT_ABOUT),
      person: z.string().nullable(),
      number: z.string().nullable(),
      words: z.string(),
      reached: z.boolean(),
      by: z.string(),
    }),
  ),
  /** Newest first, at most 60. */
  activity: z.array(
    z.object({ id: z.int(), at: MomentSchema, atWords: z.string(), by: z.string(), words: z.string() }),
  ),
  releases: z.array(
    z.object({ releaseId: idOf<'release'>(), at: MomentSchema, takenBy: z.string(), words: z.string() }),
  ),
  photos: z.int(),
  /** What the page offers next, most likely first. */
  next: z.array(
    z.object({
      words: z.string(),
      go: z.enum(['answer', 'estimate', 'print', 'promise', 'release', 'invoice', 'tell', 'check-in', 'sign']),
    }),
  ),
});

export const ticketPageContract = {
  'tickets/get-ticket': query({
    may: 'tickets:see',
    input: z.union([z.strictObject({ ticketId }), z.strictObject({ number: z.int().positive() })]),
    output: TicketPage,
  }),
  'castings/get-casting': query({
    may: 'castings:see',
    input: z.union([z.strictObject({ castingId: idOf<'casting'>() }), z.strictObject({ tag: z.int().positive() })]),
    output: TicketCasting.extend({ customer: z.string(), ticketWord: TicketWordSchema, identityInDoubt: z.boolean() }),
  }),
} as const;
