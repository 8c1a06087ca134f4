/** Requests of the bench: queues, a casting's page, start to done, findings, holds, waivers, facts a person ticks. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { DaySchema, idOf, MomentSchema, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';
import { FileInput } from '../photos/contract.ts';
import { TICKED_FACTS } from '../state/compute/words.ts';
import {
  BenchSchema,
  HoldReasonSchema,
  HoldRowSchema,
  MetalSchema,
  OperationWordSchema,
  PromiseSchema,
  ReasonSchema,
  WhoSchema,
} from '../state/contract.ts';

const Operation = z.strictObject({ operationId: idOf<'operation'>(), seenVersion: SeenVersion });
/** One operation, or the same one on both castings of a pair ("Both"). All or none. */
const Operations = z.strictObject({ operations: z.array(Operation).min(1).max(8) });
export const Acted = z.object({
  /** A sentence for the live region: "Seat cut started on 30918." */
  words: z.string(),
  operations: z.array(z.object({ operationId: idOf<'operation'>(), version: z.int(), word: OperationWordSchema })),
  /** Soft rules shown this once. */
  soft: z.array(ReasonSchema),
  /** What to look at though nothing stopped: pair cut unalike, readings still to take. */
  warnings: z.array(z.string()),
});

const Photo = z.strictObject({
  file: FileInput,
  caption: optionalWords(240, 'the caption'),
  takenAt: MomentSchema.nullable().default(null),
});

const OpenHold = z.strictObject({
  reason: HoldReasonSchema,
  words: optionalWords(600, 'why'),
  /** Left out: the usual owner of the reason. */
  ownerRole: z.enum(['counter', 'parts', 'lead']).optional(),
  ownerId: idOf<'staff'>().nullish(),
  /** Left out: today for a lead, else the next open day. */
  followUpOn: DaySchema.optional(),
});

/** Exactly one of ticket, casting, operation. */
const HoldOn = OpenHold.extend({
  ticketId: idOf<'ticket'>().nullish(),
  castingId: idOf<'casting'>().nullish(),
  operationId: idOf<'operation'>().nullish(),
});
export type OpenHoldInput = z.output<typeof HoldOn>;

const QueueRow = z.object({
  operationId: idOf<'operation'>(),
  version: z.int(),
  castingId: idOf<'casting'>(),
  tag: z.int(),
  metal: MetalSchema,
  /** "Seat cut". */
  words: z.string(),
  /** "12 seats, left head, V6 DOHC" with the sizes wanted. */
  second: z.string(),
  units: z.int(),
  unitWords: z.string(),
  /** What the machine is set up for, "stem 6.0"; empty when nothing tells. */
  setUp: z.string(),
  /** True when it follows the row above with the same set-up. */
  sameSetUp: z.boolean(),
  customer: z.string(),
  ticketNumber: z.int(),
  promise: PromiseSchema.nullable(),
  word: OperationWordSchema,
  right: z.string(),
  hold: z.object({ reason: HoldReasonSchema, words: z.string() }).nullable(),
  mayStart: z.boolean(),
  running: z.array(WhoSchema.extend({ at: MomentSchema })),
  plannedSeconds: z.int(),
  /** Set when the lead put it there. */
  rank: z.int().nullable(),
});

const Centre = z.object({
  id: idOf<'work_centre'>(),
  code: z.string(),
  name: z.string(),
  outside: z.boolean(),
  running: z.int(),
  ready: z.int(),
  held: z.int(),
  waiting: z.int(),
  aheadSeconds: z.int(),
  /** "6 castings, 9.5 h ahead" or "This bench is clear." */
  words: z.string(),
});

const Ok = z.object({ words: z.string() });
const WashLoad = z.object({
  id: idOf<'wash_load'>(),
  /** Shop's words of the wash. */
  wash: z.string(),
  machine: z.string().nullable(),
  startedAt: MomentSchema,
  by: WhoSchema.nullable(),
  tags: z.array(z.int()),
});

export const floorContract = {
  'floor/list-centres': query({
    may: 'floor:see',
    input: z.strictObject({}),
    output: z.object({ centres: z.array(Centre) }),
  }),
  'floor/list-queue': query({
    may: 'floor:see',
    input: z.strictObject({ centreId: idOf<'work_centre'>() }),
    output: z.object({
      centre: Centre,
      /** On the machine. */
      running: z.array(QueueRow),
      /** May start now, in the order to be taken. */
      next: z.array(QueueRow),
      /** Covered, but waits for another operation, a part or a person. */
      waiting: z.array(QueueRow),
      held: z.array(QueueRow),
      /** "same set-up first: stem 6.0, then 5.5"; empty when no set-up tells. */
      orderWords: z.string(),
      notApproved: z.int(),
    }),
  }),
  'floor/reorder-queue': command({
    may: 'leads:decide',
    /** The operations in the order wanted; those left out follow in the usual order. Empty: back to the usual order. */
    input: z.strictObject({ centreId: idOf<'work_centre'>(), operationIds: z.array(idOf<'operation'>()).max(500) }),
    output: Ok,
  }),
  'floor/get-bench': query({
    may: 'floor:see',
    input: z.strictObject({ tag: z.int().positive() }),
    output: BenchSchema,
  }),
  'floor/list-tags': query({
    // A paired device nobody is signed in on; no customer, ticket, promise or price.
    may: 'nobody',
    input: z.strictObject({}),
    output: z.object({
      tags: z.array(
        z.object({
          tag: z.int(),
          kindWords: z.string(),
          metal: MetalSchema,
          next: z.string(),
          centre: z.string(),
          held: z.boolean(),
          late: z.boolean(),
        }),
      ),
    }),
  }),
  'floor/list-holds': query({
    may: 'floor:see',
    input: z.strictObject({}),
    output: z.object({
      holds: z.array(HoldRowSchema.extend({ tag: z.int().nullable(), ticketNumber: z.int(), customer: z.string() })),
    }),
  }),
  'floor/start-operation': command({ may: 'floor:work', input: Operations, output: Acted }),
  'floor/stop-operation': command({ may: 'floor:work', input: Operations, output: Acted }),
  /** Without a start before: done, its minutes unknown. */
  'floor/finish-operation': command({ may: 'floor:work', input: Operations, output: Acted }),
  /** Closes every open operation of the casting down to this one, in order; a hard rule stops the whole. */
  'floor/finish-down-to': command({
    may: 'floor:work',
    input: Operation.extend({ both: z.boolean().default(false) }),
    output: Acted,
  }),
  'floor/mark-not-needed': command({
    may: 'floor:work',
    input: Operation.extend({ why: words(240, 'why it is not needed') }),
    output: Ok,
  }),
  'floor/redo-operation': command({
    may: 'floor:work',
    input: Operation.extend({
      cause: z.enum(['setup', 'tool_wear', 'wrong_spec', 'wrong_part', 'damage', 'hidden_defect', 'customer_change']),
      words: optionalWords(240, 'what happened'),
    }),
    output: Ok.extend({ operationId: idOf<'operation'>() }),
  }),
  'floor/report-finding': command({
    may: 'floor:work',
    secret: ['photos'],
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      operationId: idOf<'operation'>().nullish(),
      findingKindId: idOf<'finding_kind'>().nullish(),
      conditionKindId: idOf<'condition_kind'>().nullish(),
      spotId: idOf<'spot'>().nullish(),
      /** Where, when no spot fits: "between 2 and 3, exhaust side". */
      place: optionalWords(120, 'the place'),
      /** Left out: the words of the kind. */
      words: optionalWords(600, 'what you found'),
      photos: z.array(Photo).max(12).default([]),
      hold: OpenHold.nullish(),
      answersId: idOf<'finding'>().nullish(),
    }),
    output: Ok.extend({
      findingId: idOf<'finding'>(),
      holdId: idOf<'hold'>().nullable(),
      /** A crack or scrap decision on one of a pair: ask the lead about the other one. */
      otherOne: z.array(z.object({ castingId: idOf<'casting'>(), tag: z.int(), question: z.string() })),
      /** Operations the catalogue offers for this finding. */
      offers: z.array(z.object({ kindCode: z.string(), words: z.string(), alsoNeeded: z.boolean() })),
    }),
  }),
  'floor/open-hold': command({
    may: 'floor:work',
    input: HoldOn,
    output: Ok.extend({
      holdId: idOf<'hold'>(),
      otherOne: z.array(z.object({ castingId: idOf<'casting'>(), tag: z.int(), question: z.string() })),
    }),
  }),
  'floor/close-hold': command({
    may: 'floor:work',
    input: z.strictObject({ holdId: idOf<'hold'>(), words: words(600, 'how it was settled') }),
    output: Ok,
  }),
  'floor/waive-rule': command({
    may: 'leads:decide',
    pin: 'again',
    input: Operation.extend({
      ruleId: idOf<'order_rule'>(),
      reason: words(240, 'the reason'),
      /** The customer's signed answer, where the rule asks for one. */
      approvalId: idOf<'approval'>().nullish(),
    }),
    output: Ok,
  }),
  'floor/tick-fact': command({
    may: 'floor:work',
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      fact: z.enum(TICKED_FACTS),
      holds: z.boolean().default(true),
      words: optionalWords(240, 'a note'),
    }),
    output: Ok,
  }),
  /** The item is off the casting (before a hot or caustic wash). */
  'floor/remove-item': command({
    may: 'floor:work',
    input: z.strictObject({ itemId: idOf<'arrival_item'>() }),
    output: Ok,
  }),
  /** Loads still in the machines, oldest first. */
  'floor/list-wash-loads': query({
    may: 'floor:see',
    input: z.strictObject({}),
    output: z.object({ loads: z.array(WashLoad) }),
  }),
  /**
   * Castings go into a wash together: each metal is looked at again, each wash of its ticket is started. One that does not
   * bear this wash stops the whole load and leaves a near miss.
   */
  'floor/start-wash-load': command({
    may: 'floor:work',
    input: z.strictObject({
      /** Code of the wash, for example `hot-tank`. */
      wash: words(60, 'which wash'),
      machine: optionalWords(60, 'the machine'),
      tags: z.array(z.int().positive()).min(1, 'Put a casting in first.').max(60),
    }),
    output: Ok.extend({ washLoadId: idOf<'wash_load'>(), warnings: z.array(z.string()) }),
  }),
  /** Takes the load out: the wash of each casting is done. */
  'floor/end-wash-load': command({
    may: 'floor:work',
    input: z.strictObject({ washLoadId: idOf<'wash_load'>() }),
    output: Ok.extend({ warnings: z.array(z.string()) }),
  }),
  'floor/report-incident': command({
    may: 'floor:work',
    input: z.strictObject({
      castingId: idOf<'casting'>().nullish(),
      kind: z.enum(['near_miss', 'damage', 'injury']),
      words: words(2000, 'what happened'),
      cause: optionalWords(240, 'the cause'),
    }),
    output: Ok.extend({ incidentId: idOf<'incident'>() }),
  }),
} as const;
