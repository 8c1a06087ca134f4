/** Asking the customer and writing down the answer: ceilings, estimates, added work. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { CentsSchema, idOf, MomentSchema, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';
import { BillView, ChargeWish, LineView, OperationWish, PackageWish, PartWish } from '../lines/contract.ts';
import { TypedAmount } from '../rates/contract.ts';

const MEANS = ['signature', 'text', 'email', 'phone', 'counter'] as const;
const Ticket = { ticketId: idOf<'ticket'>() };

/** Who answered and how we know. The time is now unless another is typed. */
const AnswerFields = {
  /** A person of the customer; null when somebody else answered. */
  personId: idOf<'customer_person'>().nullable().default(null),
  /** Their name, when they are nobody we know. */
  saidBy: optionalWords(80, 'who said it'),
  means: z.enum(MEANS, { error: 'Choose how they answered.' }),
  /** Needed for an answer by phone. */
  numberCalled: optionalWords(60, 'the number'),
  words: words(2000, 'their words'),
  proof: idOf<'attachment'>().nullable().default(null),
  saidAt: MomentSchema.nullable().default(null),
} as const;

/** What is answered: an estimate, or one option of added work. */
const QuestionRef = z.union([
  z.strictObject({ estimateId: idOf<'estimate'>() }),
  z.strictObject({ optionId: idOf<'added_work_option'>() }),
  /** A no to everything offered: the work waits or another question follows. */
  z.strictObject({ addedWorkId: idOf<'added_work'>() }),
  /** More hours than were estimated on one line. */
  z.strictObject({ overrunLineId: idOf<'work_line'>() }),
  /** The customer agrees that a casting is scrap. */
  z.strictObject({ scrapCastingId: idOf<'casting'>() }),
]);
const Answer = {
  question: QuestionRef,
  answer: z.enum(['yes', 'no', 'part']),
  /** For `part`: the lines of the estimate said yes to. */
  lines: z.array(idOf<'work_line'>()).max(300).default([]),
  ...AnswerFields,
};
const Answered = z.object({
  approvalId: idOf<'approval'>(),
  authorised: CentsSchema,
  authorisedTaxIn: z.boolean(),
});

const WorkOption = z.strictObject({
  kind: z.enum(['work', 'other_casting']),
  words: words(600, 'the option in plain words'),
  daysMore: z.int().min(0).max(400).default(0),
  ifDeclinedWords: optionalWords(600, 'what follows from a no'),
  operations: z.array(OperationWish).max(40).default([]),
  packages: z.array(PackageWish).max(5).default([]),
  parts: z.array(PartWish).max(40).default([]),
  charges: z.array(ChargeWish).max(20).default([]),
});
const AskFields = {
  ...Ticket,
  castingId: idOf<'casting'>(),
  operationId: idOf<'operation'>().nullable().default(null),
  findings: z.array(idOf<'finding'>()).max(20).default([]),
  /** What was found, in the customer's words. */
  words: words(2000, 'what was found'),
  options: z.array(WorkOption).min(1, 'Offer at least one way to go on.').max(6),
};

/** How "to pay if stopped" is made of what is done and ordered. */
const StopView = z.object({
  bill: BillView,
  lines: z.array(z.object({ tag: z.int().nullable(), words: z.string(), amount: CentsSchema, working: z.string() })),
});
export const OptionView = z.object({
  id: idOf<'added_work_option'>().nullable(),
  letter: z.string(),
  kind: z.enum(['work', 'other_casting', 'stop_casting', 'stop_all']),
  words: z.string(),
  daysMore: z.int(),
  /** What it adds to the ticket before tax, and with tax; 0 for a stop. */
  extra: CentsSchema,
  extraWithTax: CentsSchema,
  /** What the ticket comes to before tax; for a stop: what is to pay. */
  newTotal: CentsSchema,
  newTotalWithTax: CentsSchema,
  /** Past the ceiling by so much when chosen; null when below, or without a ceiling. */
  pastCeiling: CentsSchema.nullable(),
  ifDeclinedWords: z.string().nullable(),
  lines: z.array(
    LineView.pick({ words: true, quantityWords: true, priceWords: true, working: true, amount: true, kind: true }),
  ),
  answer: z.enum(['yes', 'no']).nullable(),
});
export const ApprovalView = z.object({
  id: idOf<'approval'>(),
  about: z.enum(['estimate', 'added_work', 'ceiling', 'scrap', 'overrun']),
  /** "estimate 20455-E1", "added work 20455-A1, way a", "ceiling". */
  aboutWords: z.string(),
  answer: z.enum(['yes', 'no', 'part', 'withdrawn']),
  amount: CentsSchema,
  taxIn: z.boolean(),
  saidBy: z.string(),
  means: z.enum(MEANS),
  numberCalled: z.string().nullable(),
  words: z.string(),
  saidAt: MomentSchema,
  writtenBy: z.string(),
  override: z.object({ by: z.string(), why: z.string() }).nullable(),
  /** Taken back later. */
  withdrawn: z.boolean(),
});

const QuestionView = z.object({
  id: idOf<'added_work'>(),
  version: z.int(),
  ...Ticket,
  ticketNumber: z.int(),
  /** "20455-A1". */
  number: z.string(),
  revision: z.int(),
  castingId: idOf<'casting'>(),
  tag: z.int(),
  operationWords: z.string().nullable(),
  words: z.string(),
  findings: z.array(
    z.object({
      id: idOf<'finding'>(),
      words: z.string(),
      place: z.string().nullable(),
      at: MomentSchema,
      by: z.string(),
    }),
  ),
  photos: z.array(z.object({ sha256: z.string(), caption: z.string().nullable() })),
  askedAt: MomentSchema,
  askedBy: z.string(),
  expiresAt: MomentSchema,
  expired: z.boolean(),
  ifNoAnswer: z.string().nullable(),
  closedAt: MomentSchema.nullable(),
  authorised: CentsSchema,
  authorisedTaxIn: z.boolean(),
  ceiling: z.boolean(),
  /** The ticket before tax without any of the options. */
  totalBefore: CentsSchema,
  options: z.array(OptionView),
  stopCasting: StopView,
  stopAll: StopView,
  /** Who may say yes, and up to what; in the order to ring. */
  mayApprove: z.array(
    z.object({
      personId: idOf<'customer_person'>(),
      name: z.string(),
      limit: CentsSchema.nullable(),
      numbers: z.array(z.string()),
    }),
  ),
  anyoneMayApprove: z.boolean(),
  answers: z.array(ApprovalView),
  /** Tries to reach them, latest first. */
  tries: z.array(z.object({ at: MomentSchema, by: z.string(), words: z.string(), reached: z.boolean() })),
});

export const askingContract = {
  /** "Up to so much without a call." An answer of the customer like any other. */
  'approvals/set-ceiling': command({
    may: 'approvals:record',
    input: z.strictObject({
      ...Ticket,
      amount: TypedAmount,
      /** Left out: as the shop usually means it. */
      taxIn: z.boolean().nullable().default(null),
      ...AnswerFields,
      /** For a person who may not approve so much: why it counts. A lead's to give. */
      overrideWhy: optionalWords(240, 'why this counts'),
    }),
    output: Answered,
  }),
  /** Price the options and both stops without asking yet. */
  'approvals/get-added-work-price': query({
    may: 'pricing:see',
    input: z.strictObject(AskFields),
    output: z.object({ options: z.array(OptionView), stopCasting: StopView, stopAll: StopView }),
  }),
  /** Both stops are always offered beside the options: this casting only, and everything. */
  'approvals/ask-added-work': command({
    may: 'approvals:record',
    input: z.strictObject({ ...AskFields, expiresAt: MomentSchema, ifNoAnswer: optionalWords(240, 'what follows') }),
    output: z.object({
      addedWorkId: idOf<'added_work'>(),
      number: z.string(),
      options: z.array(OptionView),
    }),
  }),
  'approvals/record-answer': command({
    may: 'approvals:record',
    input: z.strictObject(Answer),
    output: Answered,
  }),
  /** The same for somebody who is not named, or above their limit: a lead says why it counts. */
  'approvals/accept-unnamed': command({
    may: 'leads:decide',
    input: z.strictObject({ ...Answer, why: words(240, 'why this counts') }),
    output: Answered,
  }),
  'approvals/withdraw-answer': command({
    may: 'approvals:record',
    input: z.strictObject({ approvalId: idOf<'approval'>(), ...AnswerFields }),
    output: Answered,
  }),
  'approvals/close-question': command({
    may: 'approvals:record',
    input: z.strictObject({ addedWorkId: idOf<'added_work'>(), seenVersion: SeenVersion }),
    output: z.object({ version: z.int() }),
  }),
  'approvals/get-question': query({
    may: 'tickets:see',
    input: z.strictObject({ addedWorkId: idOf<'added_work'>() }),
    output: QuestionView,
  }),
  'approvals/list-answers': query({
    may: 'tickets:see',
    input: z.strictObject(Ticket),
    output: z.object({ answers: z.array(ApprovalView) }),
  }),
  /** Estimates and added work nobody has answered, the soonest to expire first. */
  'approvals/list-unanswered': query({
    may: 'tickets:see',
    input: z.strictObject({ ticketId: idOf<'ticket'>().optional() }),
    output: z.object({
      rows: z.array(
        z.object({
          kind: z.enum(['estimate', 'added_work']),
          id: z.int(),
          number: z.string(),
          ticketId: idOf<'ticket'>(),
          ticketNumber: z.int(),
          customer: z.string(),
          words: z.string(),
          askedAt: MomentSchema,
          /** Null for an estimate, which is good until the end of its last day. */
          expiresAt: MomentSchema.nullable(),
          expiresWords: z.string(),
          expired: z.boolean(),
          amount: CentsSchema,
          tries: z.int(),
        }),
      ),
    }),
  }),
} as const;
