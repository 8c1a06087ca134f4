/** The ticket page in one answer, a casting, and lists of tickets with their state and promise. */
import { z } from 'zod';
import { ContainerView } from '../intake/contract.ts';
import { query } from '../kernel/contract.ts';
import { CentsSchema, DaySchema, idOf, MomentSchema, NanometresSchema } from '../kernel/schemas.ts';
import { ChipSchema, HoldRowSchema, PartWordSchema, TicketWordSchema, WhoSchema } from '../state/contract.ts';
import { CONTACT_ABOUT, CONTACT_MEANS, GASKETS, OLD_PARTS } from '../tickets/contract.ts';
import { PromiseRow, TicketCasting, TicketLine, TicketMoney, TicketOperation } from './contract/panes.ts';

const ticketId = idOf<'ticket'>();

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
