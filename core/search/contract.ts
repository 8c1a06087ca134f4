/** One box that finds everything, and what to say to the caller. */
import { z } from 'zod';
import { query } from '../kernel/contract.ts';
import { CentsSchema, idOf } from '../kernel/schemas.ts';
import { ChipSchema, MetalSchema, TicketWordSchema } from '../state/contract.ts';

/** Where the text was found. */
const FOUND_BY = [
  'phone',
  'customer',
  'person',
  'ticket',
  'tag',
  'container',
  'stamp',
  'casting number',
  'order number',
  'engine',
  'words',
  'invoice',
] as const;

/** A stretch of shown text that matched: from, until (not included), in UTF-16 units. */
const Hit = z.object({ from: z.int(), until: z.int() });

const Found = z.object({
  foundBy: z.enum(FOUND_BY),
  /** The text that matched, as kept, with the stretches to underline. */
  matched: z.string(),
  hits: z.array(Hit),
});

const FoundTicket = Found.extend({
  ticketId: idOf<'ticket'>(),
  number: z.int(),
  customer: z.string(),
  customerId: idOf<'customer'>(),
  /** "2 heads, V6 DOHC, order 7731". */
  line: z.string(),
  tags: z.array(z.object({ castingId: idOf<'casting'>(), tag: z.int(), metal: MetalSchema })),
  /** A sentence for the caller; null for a role that does not speak to callers. */
  say: z.string().nullable(),
  word: TicketWordSchema,
  /** Beside the word: "waiting your answer", "told Fri 15:10". */
  wordMore: z.string().nullable(),
  chips: z.array(ChipSchema),
  open: z.boolean(),
});

const FoundCustomer = Found.extend({
  customerId: idOf<'customer'>(),
  name: z.string(),
  /** "account, net 30, not on stop. Owes 1,290.40, none overdue" */
  accountWords: z.string(),
  owed: CentsSchema,
  person: z.object({ personId: idOf<'customer_person'>(), name: z.string(), approveWords: z.string() }).nullable(),
  phone: z.string().nullable(),
  phoneHits: z.array(Hit),
  /** "last rang today 11:05"; null when nothing is logged. */
  lastRang: z.string().nullable(),
  openTickets: z.int(),
});

export const searchContract = {
  'search/find-anything': query({
    may: 'find:see',
    input: z.strictObject({ text: z.string().max(10_000), limit: z.int().min(1).max(50).default(20) }),
    output: z.object({
      /** The text as it was understood: trimmed, at most 200 characters. */
      text: z.string(),
      /** "1 customer, 3 open tickets", or "Nothing under 0142. Check the digits, or check in castings." */
      words: z.string(),
      customers: z.array(FoundCustomer),
      /** Newest first: those of the found customers that are open, then other matches. */
      tickets: z.array(FoundTicket),
      /** Castings by tag, stamp or casting number, newest first. */
      castings: z.array(
        Found.extend({
          castingId: idOf<'casting'>(),
          ticketId: idOf<'ticket'>(),
          ticketNumber: z.int(),
          tag: z.int(),
          metal: MetalSchema,
          /** "no. 710142-B, iron head"; second line "seen on 3 tickets, last 30655". */
          line: z.string(),
          second: z.string(),
          customer: z.string(),
          word: z.string(),
        }),
      ),
      /** More than the limit matched somewhere. */
      more: z.boolean(),
      /** What a call from here is logged against; null when nobody was found. */
      call: z
        .object({
          customerId: idOf<'customer'>(),
          personId: idOf<'customer_person'>().nullable(),
          ticketId: idOf<'ticket'>().nullable(),
          number: z.string().nullable(),
        })
        .nullable(),
    }),
  }),
} as const;
