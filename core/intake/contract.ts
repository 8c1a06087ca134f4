/** What came with a casting: lines of the arrival list, counts, bags and trays, and where every piece ended. */
import { z } from 'zod';
import { CASTING_KINDS } from '../catalogue/contract/entries.ts';
import { command, query } from '../kernel/contract.ts';
import { GramsSchema, idOf, MomentSchema, optionalWords, words } from '../kernel/schemas.ts';

export const MATERIALS = ['iron_grey', 'iron_ductile', 'steel', 'aluminium', 'other', 'not_known'] as const;
const CONTAINER_KINDS = ['bag', 'tray', 'board', 'box', 'basket', 'pallet'] as const;
const OWNER_MARKS = ['ours_with_casting', 'customers_own', 'new', 'old_return'] as const;
const MIX_RULES = ['none', 'keep_order', 'own_place'] as const;
export const FATES = ['in_casting', 'replaced', 'in_bag', 'returned', 'scrapped_agreed'] as const;
const COUNT_STAGES = ['teardown', 'after_wash', 'assembly', 'out'] as const;

/** A count of pieces. */
const Pieces = z
  .int({ error: 'Count in whole pieces.' })
  .min(0, 'A count is not below 0.')
  .max(10_000, 'That is too many to count.');

/** One line of what came with a casting. */
export const NewItem = z.strictObject({
  words: words(120, 'what it is'),
  expected: Pieces.nullable().default(null),
  /** Null: not counted yet (for instance inside a casting that came assembled). */
  counted: Pieces.nullable().default(null),
  mixRule: z.enum(MIX_RULES).default('none'),
  removeBeforeWash: z.boolean().default(false),
  /** Cannot be seen until the casting is taken apart. */
  inside: z.boolean().default(false),
  customersOwn: z.boolean().default(false),
  /** Cam and main caps: numbers and arrows seen, bolted in place. */
  numbersSeen: z.boolean().default(false),
  arrowsSeen: z.boolean().default(false),
  boltedInPlace: z.boolean().default(false),
  missing: z.boolean().default(false),
  more: optionalWords(240, 'the note'),
  /** Index into the containers of the same casting; null for on or in the casting. */
  container: z.int().min(0).nullable().default(null),
});

export const NewContainer = z.strictObject({
  kind: z.enum(CONTAINER_KINDS).default('bag'),
  contents: words(240, 'what is inside'),
  count: Pieces.nullable().default(null),
  ownerMark: z.enum(OWNER_MARKS).default('ours_with_casting'),
  /** "cylinder 3", "front caps". */
  spotWords: optionalWords(120, 'the place'),
});

export const ContainerView = z.object({
  containerId: idOf<'container'>(),
  castingId: idOf<'casting'>().nullable(),
  label: z.string(),
  kind: z.enum(CONTAINER_KINDS),
  kindWords: z.string(),
  contents: z.string(),
  count: z.int().nullable(),
  ownerMark: z.enum(OWNER_MARKS),
  ownerWords: z.string(),
  spotWords: z.string().nullable(),
  sealedAt: MomentSchema.nullable(),
  /** Code of the place; null when it was never put away. */
  place: z.string().nullable(),
  placePurpose: z.string().nullable(),
  outAt: MomentSchema.nullable(),
});

export const ItemView = z.object({
  itemId: idOf<'arrival_item'>(),
  castingId: idOf<'casting'>(),
  words: z.string(),
  expected: z.int().nullable(),
  counted: z.int().nullable(),
  /** The last count of any stage, or the count at arrival. */
  countNow: z.int().nullable(),
  counts: z.array(
    z.object({
      stage: z.enum(COUNT_STAGES),
      stageWords: z.string(),
      count: z.int(),
      explained: z.string().nullable(),
      by: z.string(),
      at: MomentSchema,
    }),
  ),
  containerId: idOf<'container'>().nullable(),
  containerLabel: z.string().nullable(),
  mixRule: z.enum(MIX_RULES),
  mixWords: z.string().nullable(),
  removeBeforeWash: z.boolean(),
  removedAt: MomentSchema.nullable(),
  inside: z.boolean(),
  customersOwn: z.boolean(),
  numbersSeen: z.boolean(),
  arrowsSeen: z.boolean(),
  boltedInPlace: z.boolean(),
  missing: z.boolean(),
  more: z.string().nullable(),
  fate: z.enum(FATES).nullable(),
  fateWords: z.string().nullable(),
  /** "8 of 8", "1 of 2, one short", "not counted". */
  countWords: z.string(),
  short: z.boolean(),
});

const castingId = idOf<'casting'>();

export const intakeContract = {
  'intake/get-arrival-list': query({
    may: 'castings:see',
    input: z.strictObject({ type: words(80, 'the casting type') }),
    output: z.object({
      typeCode: z.string(),
      typeName: z.string(),
      kind: z.enum(CASTING_KINDS),
      kindWords: z.string(),
      /** Usual metal of the type; a suggestion, never an answer. */
      material: z.enum(MATERIALS).nullable(),
      usualWeight: GramsSchema.nullable(),
      weightWords: z.string(),
      items: z.array(
        z.object({
          words: z.string(),
          expected: z.int().nullable(),
          mixRule: z.enum(MIX_RULES),
          mixWords: z.string().nullable(),
          removeBeforeWash: z.boolean(),
          inside: z.boolean(),
          containerHint: z.string().nullable(),
        }),
      ),
      conditions: z.array(
        z.object({ condition: z.string(), shopWords: z.string(), customerWords: z.string(), askCustomer: z.string() }),
      ),
    }),
  }),
  'intake/add-item': command({
    may: 'floor:work',
    input: z.strictObject({
      castingId,
      item: NewItem.omit({ container: true }),
      containerId: idOf<'container'>().nullable().default(null),
    }),
    output: z.object({ itemId: idOf<'arrival_item'>() }),
  }),
  'intake/add-container': command({
    may: 'floor:work',
    input: z.strictObject({
      ticketId: idOf<'ticket'>(),
      castingId: castingId.nullable().default(null),
      container: NewContainer,
      /** Arrival lines that go into it. */
      items: z.array(idOf<'arrival_item'>()).max(200).default([]),
    }),
    output: z.object({ containerId: idOf<'container'>(), label: z.string() }),
  }),
  'intake/seal-container': command({
    may: 'floor:work',
    input: z.strictObject({ containerId: idOf<'container'>(), count: Pieces.nullable().default(null) }),
    output: z.object({}),
  }),
  /** `arrival` sets the first count (until the conditions lock); the others are counts of their own. */
  'intake/count-pieces': command({
    may: 'floor:work',
    input: z.strictObject({
      itemId: idOf<'arrival_item'>(),
      stage: z.enum(['arrival', ...COUNT_STAGES]),
      count: Pieces,
      explained: optionalWords(240, 'the reason'),
      numbersSeen: z.boolean().optional(),
      arrowsSeen: z.boolean().optional(),
      boltedInPlace: z.boolean().optional(),
    }),
    output: z.object({ countWords: z.string(), short: z.boolean() }),
  }),
  /** Where pieces ended: in the casting, replaced, in a bag, returned, scrapped with agreement. */
  'intake/set-fate': command({
    may: 'floor:work',
    input: z.strictObject({
      fates: z
        .array(
          z.strictObject({
            itemId: idOf<'arrival_item'>(),
            fate: z.enum(FATES),
            count: Pieces.nullable().default(null),
            containerId: idOf<'container'>().nullable().default(null),
            words: optionalWords(240, 'the reason'),
          }),
        )
        .min(1)
        .max(200),
    }),
    output: z.object({}),
  }),
} as const;
