/** The agreement with a customer: enquiry, what is written on the ticket, calls, promises. */
import { z } from 'zod';
import { CustomerWish } from '../customers/contract.ts';
import { command } from '../kernel/contract.ts';
import { changeOf, TakenOverSchema } from '../kernel/field-changes.ts';
import { CentsSchema, DaySchema, idOf, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';

export const GASKETS = ['mls', 'composition', 'other', 'not_asked'] as const;
export const OLD_PARTS = ['return', 'discard', 'not_asked'] as const;
export const CONTACT_MEANS = ['call', 'text', 'email', 'counter', 'letter'] as const;
export const CONTACT_ABOUT = ['ready', 'answer', 'money', 'enquiry', 'late', 'other'] as const;
export const PROMISE_REASONS = ['first', 'parts', 'answer', 'machine', 'found_more', 'customer', 'other'] as const;

/** What the customer says and wants, as typed at the counter. */
export const ticketFields = {
  orderNumber: optionalWords(60, 'the order number'),
  wantedWords: optionalWords(2000, 'what is wanted'),
  broughtBy: optionalWords(80, 'who brought it'),
  /** Code of an engine type of the catalogue. */
  engine: optionalWords(80, 'the engine'),
  engineWords: optionalWords(240, 'the engine'),
  useWords: optionalWords(240, 'the use'),
  gasket: z.enum(GASKETS),
  /** As typed, with its unit: `0.480 in`, `12 mm`. */
  valveLift: optionalWords(20, 'the valve lift'),
  fuelWords: optionalWords(80, 'the fuel'),
  historyWords: optionalWords(2000, 'what happened to it'),
  notes: optionalWords(10_000, 'the notes'),
  oldParts: z.enum(OLD_PARTS),
  crackCheck: z.enum(['wanted', 'declined']),
  /** Guard band on for every verdict of this ticket. */
  certified: z.boolean(),
  declaredValue: CentsSchema.refine((value) => value >= 0, 'An amount is not below 0.').nullable(),
};

const Minute = z.int().min(0).max(1439);

/** A promise as typed; the minute left out: the shop's usual hour. */
export const PromiseWish = z.strictObject({
  day: DaySchema,
  minute: Minute.nullable().default(null),
  dependsOn: optionalWords(240, 'what it depends on'),
});

const ticketId = idOf<'ticket'>();

export const ticketsContract = {
  /** A quote by telephone: takes a ticket number, no castings yet. */
  'tickets/open-enquiry': command({
    may: 'tickets:edit',
    input: z.strictObject({
      customer: CustomerWish,
      engine: ticketFields.engine,
      engineWords: ticketFields.engineWords,
      wantedWords: ticketFields.wantedWords,
      useWords: ticketFields.useWords,
      historyWords: ticketFields.historyWords,
      notes: ticketFields.notes,
      orderNumber: ticketFields.orderNumber,
    }),
    output: z.object({ ticketId, number: z.int(), customerId: idOf<'customer'>() }),
  }),
  /** Field by field: fields another person changed meanwhile are taken over, a field both touched answers `conflict`. */
  'tickets/change-ticket': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ticketId,
      seenVersion: SeenVersion,
      changes: z.strictObject({
        customerId: changeOf(idOf<'customer'>()),
        contactPersonId: changeOf(idOf<'customer_person'>().nullable()),
        orderNumber: changeOf(ticketFields.orderNumber),
        wantedWords: changeOf(ticketFields.wantedWords),
        broughtBy: changeOf(ticketFields.broughtBy),
        engine: changeOf(ticketFields.engine),
        engineWords: changeOf(ticketFields.engineWords),
        useWords: changeOf(ticketFields.useWords),
        gasket: changeOf(ticketFields.gasket),
        valveLift: changeOf(ticketFields.valveLift),
        fuelWords: changeOf(ticketFields.fuelWords),
        historyWords: changeOf(ticketFields.historyWords),
        notes: changeOf(ticketFields.notes),
        oldParts: changeOf(ticketFields.oldParts),
        crackCheck: changeOf(ticketFields.crackCheck),
        certified: changeOf(ticketFields.certified),
        declaredValue: changeOf(ticketFields.declaredValue),
      }),
    }),
    output: z.object({ version: z.int(), takenOver: z.array(TakenOverSchema) }),
  }),
  'tickets/decline-ticket': command({
    may: 'tickets:edit',
    input: z.strictObject({ ticketId, seenVersion: SeenVersion, why: words(240, 'why it is declined') }),
    output: z.object({ version: z.int() }),
  }),
  'tickets/log-contact': command({
    may: 'tickets:edit',
    input: z.strictObject({
      /** Null: a call about no ticket yet. */
      ticketId: ticketId.nullable().default(null),
      customerId: idOf<'customer'>(),
      personId: idOf<'customer_person'>().nullable().default(null),
      means: z.enum(CONTACT_MEANS),
      numberOrAddress: optionalWords(240, 'the number or address'),
      about: z.enum(CONTACT_ABOUT),
      words: words(2000, 'what was said'),
      /** False: nobody answered; ring back. */
      reached: z.boolean().default(true),
    }),
    output: z.object({ contactId: idOf<'contact_log'>() }),
  }),
  /** The first promise, or a new one beside it with its reason. Never on a closed day. */
  'promises/set-promise': command({
    may: 'tickets:edit',
    input: z.strictObject({
      ticketId,
      promise: PromiseWish,
      reason: z.enum(PROMISE_REASONS),
      why: optionalWords(240, 'why it changes'),
      /** The promise the person saw, null for none; another one meanwhile answers `conflict`. Left out: not compared. */
      seenPromiseId: idOf<'promise'>().nullable().optional(),
    }),
    output: z.object({ promiseId: idOf<'promise'>(), day: DaySchema, minute: z.int(), words: z.string() }),
  }),
  /** A lead or the owner lets work go on, or goods go out, for an account on stop or over its limit. */
  'tickets/give-account-yes': command({
    may: 'leads:decide',
    pin: 'again',
    input: z.strictObject({ ticketId, about: z.enum(['work', 'release']), why: words(240, 'why it may go on') }),
    output: z.object({ words: z.string() }),
  }),
} as const;
