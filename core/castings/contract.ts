/** Castings on a ticket: identity, metal, what came with them, containers, condition. */
import { z } from 'zod';
import { CASTING_KINDS } from '../catalogue/contract/entries.ts';
import { ContainerView, ItemView, MATERIALS, NewContainer, NewItem } from '../intake/contract.ts';
import { command, query } from '../kernel/contract.ts';
import { GramsSchema, idOf, MomentSchema, optionalWords, words } from '../kernel/schemas.ts';
import { MetalSchema } from '../state/contract.ts';

const MATERIAL_HOW = ['known', 'magnet', 'type', 'not_known'] as const;
export const POSITIONS = ['left', 'right', 'front_bank', 'rear_bank', 'single', 'not_known'] as const;
const WEIGHT_CLASSES = ['one', 'one_careful', 'two', 'hoist'] as const;
const SEEN = ['present', 'not_seen', 'cannot_tell'] as const;
const Place = z.int().min(0).max(10_000);
export const Material = z.enum(MATERIALS, { error: 'Say what metal it is. If unsure, use a magnet.' });
const TagNo = z
  .int({ error: 'A tag number is digits only.' })
  .positive()
  .max(999_999_999, 'That tag number is too long.');

/** A condition seen at arrival; x and y in 0..10 000 of the picture, null for the whole casting. */
export const NewMark = z.strictObject({
  condition: words(80, 'the condition'),
  seen: z.enum(SEEN).default('present'),
  view: words(40, 'the view').default('deck'),
  x: Place.nullable().default(null),
  y: Place.nullable().default(null),
  severity: z
    .union([z.literal(1), z.literal(2), z.literal(3)])
    .nullable()
    .default(null),
  words: optionalWords(240, 'the words'),
  photoWanted: z.boolean().default(false),
});

const Count = z.int().min(0).max(200);
/** A casting of a design the catalogue does not know: described by counts, kept as a private type. */
export const DescribedType = z.strictObject({
  kind: z.enum(CASTING_KINDS),
  name: words(160, 'what it is'),
  camLayout: z.enum(['none', 'side', 'ohv', 'sohc', 'dohc']).default('none'),
  fuel: z.enum(['petrol', 'diesel', 'gas', 'other']).default('petrol'),
  counts: z
    .strictObject({
      cylinders: Count.default(0),
      intakeValves: Count.default(0),
      exhaustValves: Count.default(0),
      mains: Count.default(0),
      camshafts: Count.default(0),
      camJournals: Count.default(0),
      pins: Count.default(0),
      rods: Count.default(0),
      decks: Count.default(0),
      manifoldFaces: Count.default(0),
      plugs: Count.default(0),
      sleeves: Count.default(0),
    })
    .prefault({}),
  guideStyle: z.enum(['integral', 'insert']).default('insert'),
  seatStyle: z.enum(['integral', 'insert']).default('insert'),
  waterJacket: z.boolean().default(true),
});

export const NewCasting = z.strictObject({
  /** Code of a casting type of the catalogue; or describe it. */
  type: words(80, 'the casting type').optional(),
  described: DescribedType.optional(),
  /** A number from a pre-stamped tag; left out: the next number. */
  tagNo: TagNo.nullable().default(null),
  material: Material,
  materialHow: z.enum(MATERIAL_HOW).optional(),
  closeTolerance: z.boolean().default(false),
  position: z.enum(POSITIONS).default('not_known'),
  customerPositionWords: optionalWords(120, 'the position'),
  castingNumber: optionalWords(80, 'the casting number'),
  dateCode: optionalWords(40, 'the date code'),
  serial: optionalWords(80, 'the part or serial number'),
  earlierStamps: optionalWords(240, 'the stamps'),
  shopStamp: optionalWords(40, 'our stamp'),
  stampAllowed: z.enum(['yes', 'tag_only', 'ask']).default('yes'),
  /** Castings of one engine with the same number are a pair (or a set). */
  pair: z.int().min(1).max(100).nullable().default(null),
  bare: z.boolean().default(false),
  cameAssembled: z.boolean().default(false),
  dressWords: optionalWords(240, 'how it is dressed'),
  /** "paint L": their own marks and tray order, since washing removes paint. */
  ownMarks: optionalWords(240, 'their marks'),
  weight: GramsSchema.refine((value) => value > 0, 'A weight is more than 0.')
    .nullable()
    .default(null),
  shopOwned: z.boolean().default(false),
  previousCastingId: idOf<'casting'>().nullable().default(null),
  /** Left out: the list of the type, not counted yet. */
  items: z.array(NewItem).max(200).optional(),
  containers: z.array(NewContainer).max(100).default([]),
  marks: z.array(NewMark).max(200).default([]),
});

export const MarkView = z.object({
  markId: idOf<'condition_mark'>(),
  castingId: idOf<'casting'>(),
  /** 1, 2, 3 ... in the order made, as the rings of the drawing say. */
  no: z.int(),
  condition: z.string(),
  conditionWords: z.string(),
  customerWords: z.string(),
  askCustomer: z.string(),
  seen: z.enum(SEEN),
  view: z.string(),
  x: z.int().nullable(),
  y: z.int().nullable(),
  severity: z.int().nullable(),
  severityWords: z.string().nullable(),
  words: z.string().nullable(),
  photoWanted: z.boolean(),
  photos: z.int(),
  atStage: z.enum(['arrival', 'finding']),
});

/** What a casting is, without its work: identity and goods. */
export const CastingIdentity = z.object({
  castingId: idOf<'casting'>(),
  ticketId: idOf<'ticket'>(),
  ticketNumber: z.int(),
  version: z.int(),
  tagNo: z.int(),
  kind: z.enum(CASTING_KINDS),
  kindWords: z.string(),
  typeId: idOf<'casting_type'>(),
  typeCode: z.string(),
  typeName: z.string(),
  typePrivate: z.boolean(),
  engineWords: z.string().nullable(),
  material: z.enum(MATERIALS),
  metal: MetalSchema,
  /** "ALUMINIUM - NO CAUSTIC" and the like; null for iron. */
  metalWarning: z.string().nullable(),
  materialHow: z.enum(MATERIAL_HOW),
  metalConfirmedAt: MomentSchema.nullable(),
  metalConfirmedBy: z.string().nullable(),
  closeTolerance: z.boolean(),
  position: z.enum(POSITIONS),
  positionWords: z.string(),
  customerPositionWords: z.string().nullable(),
  /** "Head 1 of 2, left". */
  title: z.string(),
  positionInTicket: z.int(),
  castingNumber: z.string().nullable(),
  dateCode: z.string().nullable(),
  serial: z.string().nullable(),
  earlierStamps: z.string().nullable(),
  shopStamp: z.string().nullable(),
  stampAllowed: z.enum(['yes', 'tag_only', 'ask']),
  pair: z.int().nullable(),
  bare: z.boolean(),
  cameAssembled: z.boolean(),
  dressWords: z.string().nullable(),
  ownMarks: z.string().nullable(),
  weight: GramsSchema.nullable(),
  weightClass: z.enum(WEIGHT_CLASSES),
  weightWords: z.string(),
  shopOwned: z.boolean(),
  previous: z.object({ castingId: idOf<'casting'>(), tagNo: z.int() }).nullable(),
  place: z.string().nullable(),
  placePurpose: z.string().nullable(),
  scrapAt: MomentSchema.nullable(),
  outAt: MomentSchema.nullable(),
  /** Arrival conditions can no longer be changed: signed, or work began on a ticket left unsigned. */
  conditionsLocked: z.boolean(),
  lockWords: z.string().nullable(),
  items: z.array(ItemView),
  /** "8 of 9 lines counted". */
  countedWords: z.string(),
  containers: z.array(ContainerView),
  marks: z.array(MarkView),
});

const castingId = idOf<'casting'>();
export const AddedCasting = z.object({
  castingId,
  tagNo: z.int(),
  title: z.string(),
  metal: MetalSchema,
  containers: z.array(z.object({ containerId: idOf<'container'>(), label: z.string() })),
  /** Our stamp is already on another casting in the house: both are held until it is cleared. */
  identityHold: z.string().nullable(),
});

export const castingsContract = {
  'castings/mark-condition': command({
    may: 'floor:work',
    input: z.strictObject({ castingId, mark: NewMark }),
    output: z.object({
      markId: idOf<'condition_mark'>(),
      atStage: z.enum(['arrival', 'finding']),
      suggests: z.string().nullable(),
    }),
  }),
  'castings/remove-mark': command({
    may: 'floor:work',
    input: z.strictObject({ markId: idOf<'condition_mark'>() }),
    output: z.object({}),
  }),
  'castings/find-by-tag': query({
    may: 'castings:see',
    input: z.strictObject({ text: z.string().max(200) }),
    output: z.object({
      /** Null when nothing carries it. A bag's label finds its casting. */
      found: z
        .object({
          castingId: castingId.nullable(),
          containerId: idOf<'container'>().nullable(),
          ticketId: idOf<'ticket'>(),
          ticketNumber: z.int(),
          tagNo: z.int().nullable(),
          words: z.string(),
        })
        .nullable(),
      sentence: z.string(),
    }),
  }),
  /** Earlier and present visits of the same metal, newest first, by our stamp or by the visit before. */
  'castings/list-visits': query({
    may: 'castings:see',
    input: z.union([z.strictObject({ stamp: words(40, 'the stamp') }), z.strictObject({ castingId })]),
    output: z.object({
      visits: z.array(
        z.object({
          castingId,
          tagNo: z.int(),
          ticketId: idOf<'ticket'>(),
          ticketNumber: z.int(),
          customer: z.string(),
          kindWords: z.string(),
          typeName: z.string(),
          castingNumber: z.string().nullable(),
          shopStamp: z.string().nullable(),
          arrivedAt: MomentSchema.nullable(),
          outAt: MomentSchema.nullable(),
          inHouse: z.boolean(),
        }),
      ),
    }),
  }),
} as const;
