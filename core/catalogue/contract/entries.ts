/** What one entry of each list of the catalogue holds, as it is brought in or typed. */
import { z } from 'zod';
import {
  GramsSchema,
  MicrodegreesSchema,
  NanometresSchema,
  optionalWords,
  PriceE4Schema,
  SecondsSchema,
  words,
} from '../../kernel/schemas.ts';

export const CASTING_KINDS = [
  'head',
  'block',
  'intake_manifold',
  'exhaust_manifold',
  'crank',
  'rod_set',
  'flywheel',
  'cover',
] as const;
export const MATERIALS = ['iron_grey', 'iron_ductile', 'steel', 'aluminium', 'other'] as const;
export const CAM_LAYOUTS = ['none', 'side', 'ohv', 'sohc', 'dohc'] as const;
export const FUELS = ['petrol', 'diesel', 'gas', 'other'] as const;
export const TAX_CLASSES = [
  'labour_repair',
  'labour_fabrication',
  'part',
  'supplies',
  'fee',
  'core',
  'sublet',
  'freight',
  'deposit',
  'storage',
  'combined',
] as const;
export const GATES = ['strip', 'clean', 'crack', 'machine', 'assemble', 'final_clean', 'none'] as const;
export const UNITS = [
  'each',
  'valve',
  'guide',
  'seat',
  'spring',
  'pocket',
  'chamber',
  'cylinder',
  'bore',
  'bank',
  'surface',
  'hole',
  'stud',
  'sleeve',
  'plug',
  'pin',
  'rod',
  'set',
  'hour',
] as const;
export const COUNTS_FROM = [
  'one',
  'valves',
  'guides',
  'seats',
  'springs',
  'chambers',
  'cylinders',
  'decks',
  'manifold_faces',
  'sleeves',
  'rods',
  'ask',
] as const;
const SPOT_KINDS = [
  'valve',
  'cylinder',
  'main',
  'cam_journal',
  'deck_corner',
  'deck_line',
  'chamber',
  'lifter',
  'plug',
  'journal',
  'rod',
  'port',
] as const;
export const COUNT_NAMES = [
  'cylinders',
  'intake_valves',
  'exhaust_valves',
  'guides',
  'seats',
  'springs',
  'chambers',
  'camshafts',
  'cam_journals',
  'mains',
  'pins',
  'rods',
  'decks',
  'manifold_faces',
  'plugs',
  'sleeves',
] as const;

export const Code = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/, 'A code is letters, digits and hyphens.');
export const Kind = z.enum(CASTING_KINDS);
const Group = words(60, 'the group');

export const WorkCentreEntry = z.strictObject({
  code: Code,
  name: words(60),
  people: z.int().min(0),
  effectiveSeconds: SecondsSchema,
  unattended: z.boolean(),
  outside: z.boolean(),
});
export const OperationEntry = z.strictObject({
  code: Code,
  shopWords: words(120, 'the shop words'),
  customerWords: words(160, 'the customer words'),
  section: words(40, 'the section'),
  workCentre: Code,
  gate: z.enum(GATES),
  taxClass: z.enum(TAX_CLASSES),
  waitAfter: z.enum(['none', 'overnight', 'working_days']),
  waitDays: z.int().min(0),
  twoSignatures: z.boolean(),
  fits: z.array(
    z.strictObject({
      fact: z.enum(['metal', 'cam_layout', 'fuel', 'guide_style', 'water_jacket']),
      value: z.string(),
      fit: z.enum(['normal', 'special', 'refused']),
    }),
  ),
  uses: z.array(
    z.strictObject({
      castingKind: Kind,
      chargeUnit: z.enum(UNITS),
      countFrom: z.enum(COUNTS_FROM),
      setupSeconds: SecondsSchema,
      unattendedSeconds: SecondsSchema,
      perUnit: z.array(z.strictObject({ count: z.string(), seconds: SecondsSchema })),
    }),
  ),
  needed: z.array(
    z.strictObject({
      quantity: Code,
      stage: z.enum(['before', 'after']),
      where: z.enum(['all_spots', 'worked_spots', 'once']),
      required: z.boolean(),
    }),
  ),
  cautions: z.array(z.string()),
  usualAddOns: z.array(Code),
});
export const RuleEntry = z.strictObject({
  no: z.int(),
  first: Group,
  before: Group,
  strength: z.enum(['hard', 'soft']),
  need: z.enum(['if_present', 'must_exist']),
  scope: z.enum(['casting', 'pair', 'ticket']),
  ifKind: Kind.nullable(),
  ifMetal: z.enum(['iron', 'aluminium', 'other']).nullable(),
  ifCamLayout: z.enum(CAM_LAYOUTS).nullable(),
  ifFuel: z.enum(FUELS).nullable(),
  waiver: z.enum(['none', 'reason', 'customer_signature']),
  why: words(240),
});
const FindingEntry = z.strictObject({
  code: Code,
  words: words(160),
  offer: z.array(Code),
  alsoNeeded: z.array(Code),
  note: optionalWords(240),
});
const ConditionEntry = z.strictObject({
  code: Code,
  words: words(160),
  where: z.array(z.string()),
  askCustomer: z.enum(['no', 'note', 'maybe', 'yes', 'after_measure', 'at_once']),
  suggestsFinding: Code.nullable(),
});
const PackageEntry = z.strictObject({
  code: Code,
  shopWords: words(120),
  customerWords: words(160),
  castingKind: Kind,
  taxClass: z.enum(TAX_CLASSES),
  notInside: optionalWords(240),
  items: z
    .array(z.strictObject({ operation: Code, metal: z.enum(['any', 'iron', 'aluminium']), position: z.int() }))
    .min(1, 'Put at least one operation in.'),
});
export const EngineEntry = z.strictObject({
  code: Code,
  words: words(160),
  cylinders: z.int().min(1).max(48),
  layout: z.enum(['inline', 'v', 'flat', 'single']),
  bankLean: MicrodegreesSchema.nullable(),
  faceLean: MicrodegreesSchema.nullable(),
  bore: NanometresSchema.nullable(),
  stroke: NanometresSchema.nullable(),
  numbering: words(120),
  frontIs: z.enum(['far_from_flywheel', 'other_words']),
  frontWords: optionalWords(160),
});
const Counts = z.partialRecord(z.enum(COUNT_NAMES), z.int().min(0).max(96));
export const SpotEntry = z.strictObject({
  kind: z.enum(SPOT_KINDS),
  label: words(8),
  benchOrder: z.int(),
  row: z.int(),
  bank: z.enum(['left', 'right', 'none']),
  cylinder: z.int().nullable(),
  side: z.enum(['I', 'E']).nullable(),
});
export const ArrivalEntry = z.strictObject({
  words: words(120),
  expected: z.int().min(0).nullable(),
  mixRule: z.enum(['none', 'keep_order', 'own_place']),
  removeBeforeWash: z.boolean(),
  inside: z.boolean().default(false),
  containerHint: optionalWords(20),
});
export const CastingTypeEntry = z.strictObject({
  code: Code,
  engineType: Code.nullable(),
  kind: Kind,
  name: words(160, 'a name'),
  castingNumberPattern: optionalWords(80),
  material: z.enum(MATERIALS).nullable(),
  camLayout: z.enum(CAM_LAYOUTS),
  fuel: z.enum(FUELS),
  private: z.boolean(),
  counts: Counts,
  guideStyle: z.enum(['integral', 'insert']),
  seatStyle: z.enum(['integral', 'insert']),
  usualWeight: GramsSchema.nullable(),
  heavyDiesel: z.boolean(),
  waterJacket: z.boolean(),
  spots: z.array(SpotEntry),
  arrival: z.array(ArrivalEntry),
});
const PlaceEntry = z.strictObject({
  code: Code,
  words: optionalWords(120),
  purpose: z.enum(['arrival', 'waiting', 'parts', 'bench', 'ready', 'quarantine', 'floor', 'outside']),
  maxWeight: GramsSchema.nullable(),
  onlyMetal: z.enum(['iron', 'aluminium']).nullable(),
});
export const StockEntry = z.strictObject({
  code: Code,
  words: words(120),
  listPrice: PriceE4Schema.nullable(),
  thickness: NanometresSchema.nullable(),
  thicknessTyped: optionalWords(20),
  shimUnit: z.enum(['in', 'mm']).nullable(),
});

export const Entries = z.strictObject({
  workCentres: z.array(WorkCentreEntry).default([]),
  /** True: also the quantities and bench tables that the program knows. */
  quantities: z.boolean().default(false),
  operations: z.array(OperationEntry).default([]),
  groups: z.record(z.string(), z.array(Code)).default({}),
  rules: z.array(RuleEntry).default([]),
  findings: z.array(FindingEntry).default([]),
  conditions: z.array(ConditionEntry).default([]),
  packages: z.array(PackageEntry).default([]),
  engineTypes: z.array(EngineEntry).default([]),
  castingTypes: z.array(CastingTypeEntry).default([]),
  places: z.array(PlaceEntry).default([]),
  stock: z.array(StockEntry).default([]),
});

export type CatalogueEntries = z.output<typeof Entries>;
export type EntriesTyped = z.input<typeof Entries>;
export type CastingTypeEntryOf = z.output<typeof CastingTypeEntry>;
