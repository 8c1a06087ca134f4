/** The first page of the counter: who to ring, what to chase, what is due. Every row leads to where it is done. */
import { z } from 'zod';
import { query } from '../kernel/contract.ts';
import { CentsSchema, DaySchema, idOf, MomentSchema } from '../kernel/schemas.ts';
import { ChipSchema, HoldReasonSchema, MetalSchema, TicketWordSchema } from '../state/contract.ts';

/** Where a row leads. `screen` and `id` make the address; `focus` names what is opened there. */
const Target = z.object({
  screen: z.enum(['ticket', 'added-work', 'estimate', 'customer', 'hold', 'release']),
  ticketId: idOf<'ticket'>().nullable(),
  customerId: idOf<'customer'>().nullable(),
  /** Number of the question, id of the hold ...; null for the page itself. */
  focus: z.int().nullable(),
});

const Row = z.object({
  target: Target,
  ticketNumber: z.int().nullable(),
  customer: z.string(),
  /** Who to ask for, when a person is named. */
  person: z.string().nullable(),
  phone: z.string().nullable(),
  /** At most three tags; `moreTags` counts the rest. */
  tags: z.array(z.object({ tag: z.int(), metal: MetalSchema })),
  moreTags: z.int(),
  /** The sentence of the row: "Crack at seat 6: weld, 265.00. A2". */
  words: z.string(),
  /** At the end: "asked 11:05, answer by Fri 17:00", "before noon", "5 days". */
  right: z.string(),
  /** Carried by words too: `hold` is a paint block, `close` the close colour, `good` the pass colour. */
  tone: z.enum(['plain', 'good', 'close', 'hold']),
  chips: z.array(ChipSchema),
  /** Oldest and most urgent first within its list. */
  at: MomentSchema.nullable(),
});
export type HomeRow = z.output<typeof Row>;

const Promised = Row.extend({
  word: TicketWordSchema,
  day: DaySchema,
  /** Minutes after midnight of the promise. */
  minute: z.int(),
  /** Only these stand on the day scale. */
  ownTime: z.boolean(),
  /** Minutes left, negative when past. */
  left: z.int(),
  /** "2 h 10 min left", "missed by 40 min". */
  leftWords: z.string(),
  /** It was not or will not be kept, as far as can be seen. */
  misses: z.boolean(),
});

const Hold = Row.extend({ reason: HoldReasonSchema, days: z.int() });
const Money = Row.extend({ toPay: CentsSchema });
/** A list with how many there are in all; at most 50 rows are sent. */
const list = <T extends z.ZodType>(row: T) => z.object({ rows: z.array(row), count: z.int() });

export const homeContract = {
  'home/get-counter': query({
    may: 'tickets:see',
    input: z.strictObject({}),
    output: z.object({
      today: DaySchema,
      /** Minutes after midnight on the shop's clock. */
      minute: z.int(),
      /** "Tuesday 10 March". */
      dayWords: z.string(),
      /** "5 castings promised today, 1 will miss. 4 people to ring, 3 approvals to chase." */
      summary: z.string(),
      /** Opening hours of today's counter in minutes; null when closed. */
      open: z.object({ from: z.int(), until: z.int() }).nullable(),
      /** Promise passed, not ready: ring now. */
      missed: list(Promised),
      /** Somebody could not be reached, or wants a call. */
      ringBack: list(Row),
      /** Ready and nobody has told them; then told and still here. */
      ready: list(Money),
      approvals: list(Row),
      /** Open holds whose follow-up day has come, or that nobody owns. */
      holds: list(Hold),
      quotes: list(Row),
      promisedToday: list(Promised),
      /** Promised for the next open day and cannot be done yet; `right` says "ring by 15:00". */
      tomorrow: list(Promised),
      /** Follow-ups due today that are none of the above: parts expected, outside work due back. */
      due: list(Row),
    }),
  }),
} as const;
