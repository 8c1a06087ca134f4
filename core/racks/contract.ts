/** Places in the shop and what stands there. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { GramsSchema, idOf, MomentSchema, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';

const PLACE_PURPOSES = ['arrival', 'waiting', 'parts', 'bench', 'ready', 'quarantine', 'floor', 'outside'] as const;

const PlaceView = z.object({
  placeId: idOf<'rack_place'>(),
  code: z.string(),
  words: z.string().nullable(),
  purpose: z.enum(PLACE_PURPOSES),
  purposeWords: z.string(),
  maxWeight: GramsSchema.nullable(),
  onlyMetal: z.enum(['iron', 'aluminium']).nullable(),
  /** "aluminium only, up to 45 kg"; null when anything may stand there. */
  limitWords: z.string().nullable(),
  castings: z.int(),
  containers: z.int(),
  version: z.int(),
});

/** A thing standing somewhere. */
const StandingThing = z.object({
  castingId: idOf<'casting'>().nullable(),
  containerId: idOf<'container'>().nullable(),
  /** Tag number or container label. */
  label: z.string(),
  words: z.string(),
  metalWord: z.string().nullable(),
  ticketId: idOf<'ticket'>(),
  ticketNumber: z.int(),
  customer: z.string(),
  place: z.string().nullable(),
  since: MomentSchema.nullable(),
  by: z.string().nullable(),
});

export const racksContract = {
  'racks/put-away': command({
    may: 'floor:work',
    input: z.strictObject({
      /** One thing, or several at a stroke. Text as read from a code, a tag or a label is understood. */
      things: z
        .array(
          z.union([
            z.strictObject({ castingId: idOf<'casting'>() }),
            z.strictObject({ containerId: idOf<'container'>() }),
            z.strictObject({ text: words(60, 'the tag') }),
          ]),
        )
        .min(1)
        .max(100),
      /** Code of the place, as typed or read. */
      place: words(60, 'the place'),
    }),
    output: z.object({
      place: z.string(),
      words: z.string(),
      things: z.array(z.string()),
      warnings: z.array(z.string()),
    }),
  }),
  'racks/list-places': query({
    may: 'floor:see',
    input: z.strictObject({ purpose: z.enum(PLACE_PURPOSES).optional() }),
    output: z.object({ places: z.array(PlaceView) }),
  }),
  'racks/list-place': query({
    may: 'floor:see',
    input: z.strictObject({ place: words(60, 'the place') }),
    output: z.object({ place: PlaceView, things: z.array(StandingThing) }),
  }),
  /** What to fetch for these tickets, in the order of the places. */
  'racks/get-pick-list': query({
    may: 'floor:see',
    input: z.strictObject({ ticketIds: z.array(idOf<'ticket'>()).min(1).max(200) }),
    output: z.object({
      things: z.array(StandingThing),
      /** "5 pieces from 3 places". */
      words: z.string(),
      /** Things that were never put away. */
      nowhere: z.int(),
    }),
  }),
  'racks/add-place': command({
    may: 'shop:edit',
    input: z.strictObject({
      code: words(20, 'a code'),
      words: optionalWords(120, 'the words'),
      purpose: z.enum(PLACE_PURPOSES),
      maxWeight: GramsSchema.refine((value) => value > 0, 'A weight is more than 0.')
        .nullable()
        .default(null),
      onlyMetal: z.enum(['iron', 'aluminium']).nullable().default(null),
    }),
    output: z.object({ placeId: idOf<'rack_place'>() }),
  }),
  'racks/retire-place': command({
    may: 'shop:edit',
    input: z.strictObject({ placeId: idOf<'rack_place'>(), seenVersion: SeenVersion }),
    output: z.object({}),
  }),
} as const;
