/** Schemas of states, shared by the contracts of every feature that shows one. No requests of its own. */
import { z } from 'zod';
import { DaySchema, idOf, MomentSchema } from '../kernel/schemas.ts';
import {
  CASTING_WORDS,
  CHIPS,
  HOLD_WORDS,
  OPERATION_WORDS,
  PART_WORDS,
  TICKED_FACTS,
  TICKET_WORDS,
} from './compute/words.ts';

export const TicketWordSchema = z.enum(TICKET_WORDS);
export const CastingWordSchema = z.enum(CASTING_WORDS);
export const OperationWordSchema = z.enum(OPERATION_WORDS);
export const PartWordSchema = z.enum(PART_WORDS);
export const HoldReasonSchema = z.enum(
  Object.keys(HOLD_WORDS) as [keyof typeof HOLD_WORDS, ...(keyof typeof HOLD_WORDS)[]],
);

export const ChipSchema = z.object({ chip: z.enum(CHIPS), words: z.string(), count: z.int().nullable() });

/** A button a screen may offer: a request to send with its input, or `request: null` for words only. */
const WayOnSchema = z.object({
  words: z.string(),
  request: z.string().nullable(),
  input: z.unknown().optional(),
});

/** The metal of a casting as tags, benches and papers print it. `outline` is the second sign beside the word, never alone. */
export const MetalSchema = z.object({
  word: z.enum(['IRON', 'ALUMINIUM', 'OTHER METAL', 'METAL NOT KNOWN']),
  class: z.enum(['iron', 'aluminium', 'other', 'not_known']),
  outline: z.enum(['filled', 'open', 'dashed']),
  confirmedAt: MomentSchema.nullable(),
});

/** One reason why something cannot be done yet, or should be looked at first. */
export const ReasonSchema = z.object({
  kind: z.enum(['rule', 'approval', 'hold', 'part', 'metal', 'items', 'fit', 'reading', 'identity', 'operation']),
  /** `hard` stops; `soft` is shown once as a line and stops nothing. */
  strength: z.enum(['hard', 'soft']),
  /** A whole sentence: "Seats come after guides: guide size is not done." */
  words: z.string(),
  /** A few words for the end of a row: "waits for guide size". */
  short: z.string(),
  wayOn: WayOnSchema.nullable(),
  /** Set for an order rule; `waiver` says whether and how a lead may let it pass. */
  rule: z.object({ id: z.int(), no: z.int(), waiver: z.enum(['none', 'reason', 'customer_signature']) }).nullable(),
});

/** A person as benches print them. */
export const WhoSchema = z.object({ staff: idOf<'staff'>(), initials: z.string(), name: z.string() });

/** The promise in force. `words` is ready to print, for example "Thu 12, 17:00"; `late` compares it with now. */
export const PromiseSchema = z.object({
  day: DaySchema,
  minute: z.int(),
  /** The hour is the customer's own, not the shop's usual one. */
  ownTime: z.boolean(),
  words: z.string(),
  late: z.boolean(),
  rush: z.boolean(),
});

/** Readings an operation needs at one stage. `table` is the bench table to open, null when none holds them. */
const NeededSchema = z.object({
  done: z.int(),
  of: z.int(),
  /** "24 of 24 read", "Not measured: 3E1 installed height", or "" when none are needed. */
  words: z.string(),
  table: z.string().nullable(),
});

/** One operation of a casting as the bench and the ticket page show it. Screens decide nothing from it. */
export const OperationRowSchema = z.object({
  id: idOf<'operation'>(),
  version: z.int(),
  castingId: idOf<'casting'>(),
  kindCode: z.string(),
  /** Shop's words: "Seat cut". */
  words: z.string(),
  /** Second line: "12 seats", with the instruction and sizes wanted. May be empty. */
  second: z.string(),
  units: z.int(),
  /** "seats", "valves" ... beside `units` as a figure. */
  unitWords: z.string(),
  instruction: z.string().nullable(),
  centre: z.object({ id: idOf<'work_centre'>(), code: z.string(), name: z.string() }),
  gate: z.enum(['strip', 'clean', 'crack', 'machine', 'assemble', 'final_clean', 'none']),
  word: OperationWordSchema,
  /** Which of five marks the row carries. `off` is a row that no longer counts (not needed, redone, declined). */
  mark: z.enum(['done', 'running', 'open', 'uncovered', 'off']),
  /** End of the row: "done K.T.", "waits for crack result", "not approved, do not start". May be empty. */
  right: z.string(),
  covered: z.boolean(),
  mayStart: z.boolean(),
  mayStop: z.boolean(),
  mayFinish: z.boolean(),
  /** The next operation the hand goes to; at most one a casting. */
  next: z.boolean(),
  /** What stops it, hard ones first. Empty when it may start. */
  stops: z.array(ReasonSchema),
  /** What starting it shows once. */
  soft: z.array(ReasonSchema),
  /** Waivers that let it pass; printed on traveller and sign-off. */
  waived: z.array(z.object({ no: z.int(), words: z.string(), reason: z.string(), by: z.string(), at: MomentSchema })),
  /** Who is on it now. */
  running: z.array(WhoSchema.extend({ at: MomentSchema })),
  /** The asking person's open run. */
  mine: MomentSchema.nullable(),
  /** Minutes of closed runs, null when never started (then unknown, not nought). */
  minutes: z.int().nullable(),
  plannedSeconds: z.int(),
  finished: z.object({ at: MomentSchema, by: WhoSchema.nullable() }).nullable(),
  notNeeded: z.object({ at: MomentSchema, why: z.string() }).nullable(),
  redoOf: z.object({ operationId: idOf<'operation'>(), cause: z.string() }).nullable(),
  before: NeededSchema,
  after: NeededSchema,
  /** What it finds that stands in no table, for instance the result of a crack check: given in the operation's own row. */
  results: z.array(
    z.object({
      quantity: z.string(),
      words: z.string(),
      /** Empty: any words or a figure. */
      choices: z.array(z.string()),
      /** As given by this operation, and which reading says so; empty and null before. */
      value: z.string(),
      reading: idOf<'reading'>().nullable(),
      required: z.boolean(),
    }),
  ),
  twoSignatures: z.boolean(),
  cautions: z.string().nullable(),
  /** The same operation on the other casting of the pair while it may be acted on together: "Both". */
  both: z.object({ operationId: idOf<'operation'>(), version: z.int(), tag: z.int() }).nullable(),
  /** Operations that "Done down to here" would close, in order; empty when it would close only this one or none. */
  downTo: z.array(z.object({ operationId: idOf<'operation'>(), words: z.string() })),
});

export type OperationRow = z.output<typeof OperationRowSchema>;

export const HoldRowSchema = z.object({
  id: idOf<'hold'>(),
  ticketId: idOf<'ticket'>(),
  castingId: idOf<'casting'>().nullable(),
  operationId: idOf<'operation'>().nullable(),
  reason: HoldReasonSchema,
  /** "crack or scrap decision". */
  reasonWords: z.string(),
  words: z.string().nullable(),
  /** "this casting", "whole ticket" or the operation's words. */
  onWhat: z.string(),
  ownerRole: z.enum(['counter', 'parts', 'lead']),
  owner: WhoSchema.nullable(),
  followUpOn: DaySchema,
  /** True when the follow-up day has come. */
  due: z.boolean(),
  openedAt: MomentSchema,
  openedBy: WhoSchema.nullable(),
  /** Whole days open. */
  days: z.int(),
  /** A hold of this reason stops everything near it. */
  identity: z.boolean(),
});

const ArrivalItem = z.object({
  id: idOf<'arrival_item'>(),
  words: z.string(),
  expected: z.int().nullable(),
  counted: z.int().nullable(),
  /** "7 of 8", "not counted yet", "missing at arrival". */
  countWords: z.string(),
  container: z.string().nullable(),
  removeBeforeWash: z.boolean(),
  removedAt: MomentSchema.nullable(),
  customersOwn: z.boolean(),
  marks: z.array(z.string()),
});

/** Everything the bench shows of one casting. No price, no telephone, no address. */
export const BenchSchema = z.object({
  castingId: idOf<'casting'>(),
  version: z.int(),
  ticketId: idOf<'ticket'>(),
  ticketNumber: z.int(),
  tag: z.int(),
  customer: z.string(),
  kind: z.string(),
  position: z.enum(['left', 'right', 'front_bank', 'rear_bank', 'single', 'not_known']),
  /** How the engine numbers its cylinders, so that the drawing reads as the tables do: "L:1,2,3 R:4,5,6". */
  numbering: z.string().nullable(),
  /** "RIGHT, head 2 of 2". */
  placeWords: z.string(),
  /** "V6 DOHC head"; the type's name. */
  typeWords: z.string(),
  /** For the drawing: catalogue/get-casting-type. */
  castingTypeId: idOf<'casting_type'>(),
  castingNumber: z.string().nullable(),
  shopStamp: z.string().nullable(),
  metal: MetalSchema,
  word: CastingWordSchema,
  /** Identity in doubt: everything on this page stands still. */
  identityInDoubt: z.boolean(),
  /** Capital lines of the warning block, most dangerous first. */
  warnings: z.array(z.string()),
  promise: PromiseSchema.nullable(),
  pair: z.array(z.object({ castingId: idOf<'casting'>(), tag: z.int(), placeWords: z.string(), metal: MetalSchema })),
  operations: z.array(OperationRowSchema),
  /** First thing that stops the casting, with the way on; null when something may start or all is done. */
  firstStop: ReasonSchema.nullable(),
  /** Sizes wanted and limits of this casting: "Stem 6.0 mm". */
  sizes: z.array(
    z.object({ quantity: z.string(), words: z.string(), text: z.string(), source: z.string(), checked: z.boolean() }),
  ),
  arrival: z.object({
    /** "valves in a marked board", own marks, dress, history: one sentence each. */
    notes: z.array(z.string()),
    items: z.array(ArrivalItem),
    /** "8 caps bolted in place, 1 dowel of 2". */
    cameWith: z.string(),
    marks: z.array(
      z.object({
        id: idOf<'condition_mark'>(),
        words: z.string(),
        view: z.string(),
        x: z.int().nullable(),
        y: z.int().nullable(),
        seen: z.string(),
      }),
    ),
  }),
  photos: z.array(
    z.object({
      id: idOf<'photo'>(),
      sha256: z.string(),
      stage: z.enum(['arrival', 'finding', 'done']),
      caption: z.string().nullable(),
    }),
  ),
  findings: z.array(
    z.object({
      id: idOf<'finding'>(),
      words: z.string(),
      at: MomentSchema,
      by: WhoSchema.nullable(),
      question: z.string().nullable(),
    }),
  ),
  holds: z.array(HoldRowSchema),
  /** Facts a person ticks for this casting, with who said so. */
  facts: z.array(
    z.object({ fact: z.enum(TICKED_FACTS), words: z.string(), holds: z.boolean(), said: z.string().nullable() }),
  ),
  /** Bench tables that hold readings of this casting. */
  tables: z.array(z.object({ code: z.string(), words: z.string() })),
  /** "Paper is revision 1, now 2." when the printed traveller is stale, else null. */
  paperWords: z.string().nullable(),
  cardTagOffAt: MomentSchema.nullable(),
  metalTagOnAt: MomentSchema.nullable(),
  place: z.string().nullable(),
  /** "signed off by R.O." and what is open, in one line; null before the work is done. */
  signOffWords: z.string().nullable(),
});
