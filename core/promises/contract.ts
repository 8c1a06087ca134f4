/** Lists of tickets with their state and promise, and what could be promised. */
import { z } from 'zod';
import { query } from '../kernel/contract.ts';
import { DaySchema, idOf, MomentSchema } from '../kernel/schemas.ts';
import { ChipSchema, MetalSchema, TicketWordSchema } from '../state/contract.ts';

const ticketId = idOf<'ticket'>();

/** A ticket in one row of a list. */
const TicketRow = z.object({
  ticketId,
  number: z.int(),
  customerId: idOf<'customer'>(),
  customer: z.string(),
  person: z.string().nullable(),
  phone: z.string().nullable(),
  engineWords: z.string().nullable(),
  orderNumber: z.string().nullable(),
  /** "2 heads, V6 DOHC". */
  line: z.string(),
  tags: z.array(z.object({ castingId: idOf<'casting'>(), tag: z.int(), metal: MetalSchema })),
  word: TicketWordSchema,
  chips: z.array(ChipSchema),
  promise: z
    .object({ day: DaySchema, minute: z.int(), ownTime: z.boolean(), words: z.string(), late: z.boolean() })
    .nullable(),
  arrivedAt: MomentSchema.nullable(),
});

const Suggestion = z.object({
  /** Null when a wait has no date: see `dependsOn`. */
  earliest: z.object({ day: DaySchema, minute: z.int(), words: z.string() }).nullable(),
  comfortable: z.object({ day: DaySchema, minute: z.int(), words: z.string() }).nullable(),
  /** "surfacer is the bottleneck". */
  bottleneck: z.object({ centre: z.string(), words: z.string() }).nullable(),
  /** Waits without a date, in words: "pistons for 41290 have no date". */
  dependsOn: z.array(z.string()),
  /** How it was reckoned, one line a step of the slowest casting. */
  working: z.array(z.string()),
});

export const promisesContract = {
  'tickets/list-open': query({
    may: 'tickets:see',
    input: z.strictObject({
      word: TicketWordSchema.optional(),
      customerId: idOf<'customer'>().optional(),
      /** Also closed, declined and abandoned ones. */
      all: z.boolean().default(false),
      limit: z.int().min(1).max(500).default(200),
    }),
    output: z.object({ tickets: z.array(TicketRow), more: z.boolean() }),
  }),
  /** For a ticket that stands, or for work only thought of (a check-in page, a quote by telephone). */
  'promises/get-suggestion': query({
    may: 'promises:see',
    input: z.union([
      z.strictObject({ ticketId }),
      z.strictObject({
        castings: z
          .array(
            z.strictObject({
              type: z.string().max(80),
              material: z.string().max(20).default('not_known'),
              operations: z
                .array(z.strictObject({ operation: z.string().max(80), quantity: z.int().min(0).optional() }))
                .max(200)
                .default([]),
              packages: z.array(z.string().max(80)).max(50).default([]),
            }),
          )
          .max(100),
        rush: z.boolean().default(false),
      }),
    ]),
    output: Suggestion,
  }),
  'promises/list-due': query({
    may: 'promises:see',
    input: z.strictObject({ day: DaySchema.optional() }),
    output: z.object({ day: DaySchema, tickets: z.array(TicketRow) }),
  }),
  /** Promise passed and not ready, oldest promise first. */
  'promises/list-late': query({
    may: 'promises:see',
    input: z.strictObject({}),
    output: z.object({ tickets: z.array(TicketRow.extend({ lateWords: z.string() })) }),
  }),
} as const;
