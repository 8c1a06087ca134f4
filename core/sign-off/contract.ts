/** Requests that end the work on a casting: signing, taking a signature back, scrap, and going home unworked. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { idOf, MomentSchema, SeenVersion, words } from '../kernel/schemas.ts';
import { CastingWordSchema, ReasonSchema, WhoSchema } from '../state/contract.ts';

/** A reading that does not simply pass. */
const OpenReading = z.object({
  quantity: z.string(),
  quantityId: idOf<'quantity'>(),
  spotId: idOf<'spot'>().nullable(),
  stage: z.enum(['before', 'after']),
  point: z.string().nullable(),
  /** "3E1 installed height". */
  words: z.string(),
  verdict: z.enum(['not measured', 'no limit known', 'fail', 'too close to call']),
  /** As read, with unit; "" when not measured. */
  value: z.string(),
  /** As printed: "1.690-1.710 in, cam card"; "no limit known". */
  limit: z.string(),
  /** Who decided and how; null while nobody did. Void when the value changed since. */
  decision: z.object({ accepted: z.boolean(), words: z.string(), by: z.string() }).nullable(),
  /** False: it may be signed as it stands (no limit known, or decided). */
  stops: z.boolean(),
});

const Signature = z.object({
  place: z.enum(['first', 'second']),
  by: WhoSchema,
  at: MomentSchema,
  samePersonOkBy: WhoSchema.nullable(),
});

export const SignOffSchema = z.object({
  castingId: idOf<'casting'>(),
  tag: z.int(),
  version: z.int(),
  ticketNumber: z.int(),
  placeWords: z.string(),
  word: CastingWordSchema,
  /** 1, or 2 when a done operation asks for two. */
  needed: z.int(),
  signatures: z.array(Signature),
  /** The place that is signed next; null when all are signed. */
  nextPlace: z.enum(['first', 'second']).nullable(),
  /** Operations not done, in order. */
  notDone: z.array(z.object({ operationId: idOf<'operation'>(), words: z.string(), state: z.string() })),
  readings: z.array(OpenReading),
  partsNotFitted: z.array(z.object({ id: idOf<'part_line'>(), words: z.string(), state: z.string() })),
  /** Counts that do not agree: "2 plugs out, 1 back". */
  counts: z.array(z.string()),
  photosWanted: z.array(z.string()),
  waivers: z.array(z.object({ no: z.int(), words: z.string(), reason: z.string(), by: z.string() })),
  /** Everything that stops the signature, one sentence each; empty: may be signed. */
  stops: z.array(ReasonSchema),
  /** The asking person may sign; `whyNot` says why not ("You worked on this one. Another person signs."). */
  maySign: z.boolean(),
  whyNot: z.string().nullable(),
  /** The owner's setting lets the same person sign; then the sheet says so. */
  samePersonAllowed: z.boolean(),
});

const Ok = z.object({ words: z.string(), word: CastingWordSchema });

export const signOffContract = {
  'castings/get-sign-off': query({
    may: 'floor:see',
    input: z.strictObject({ castingId: idOf<'casting'>() }),
    output: SignOffSchema,
  }),
  /**
   * Signs as the person who sends it (`as`), PIN typed again. The second place must be another person. The computed
   * reading table is frozen with the signature. Readings that fail or are too close need a decision before
   * (`readings/decide-reading`), or here by a lead.
   */
  'castings/sign-off-casting': command({
    may: 'castings:sign',
    pin: 'again',
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      seenVersion: SeenVersion,
      place: z.enum(['first', 'second']),
      decisions: z
        .array(
          z.strictObject({
            quantityId: idOf<'quantity'>(),
            spotId: idOf<'spot'>().nullable(),
            stage: z.enum(['before', 'after']),
            point: z.string().max(20).nullable(),
            words: words(600, 'the decision'),
          }),
        )
        .max(200)
        .default([]),
    }),
    output: Ok.extend({ signOffId: idOf<'sign_off'>(), place: z.enum(['first', 'second']), more: z.boolean() }),
  }),
  'castings/reopen-casting': command({
    may: 'leads:decide',
    pin: 'again',
    input: z.strictObject({ castingId: idOf<'casting'>(), reason: words(240, 'the reason') }),
    output: Ok,
  }),
  /** A lead's half of scrap; the customer's answer is the other half. */
  'castings/declare-scrap': command({
    may: 'leads:decide',
    pin: 'again',
    input: z.strictObject({
      castingId: idOf<'casting'>(),
      seenVersion: SeenVersion,
      why: words(240, 'why it is scrap'),
    }),
    output: Ok.extend({
      /** The other casting of the pair: hold it or go on? */
      otherOne: z.array(z.object({ castingId: idOf<'casting'>(), tag: z.int(), question: z.string() })),
    }),
  }),
  'castings/return-unworked': command({
    may: 'leads:decide',
    input: z.strictObject({ castingId: idOf<'casting'>(), why: words(240, 'why it goes home unworked') }),
    output: Ok,
  }),
} as const;
