/** The catalogue: engines, casting types, operations, packages, rules, findings, conditions, centres, places, stock. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { GramsSchema, idOf, SecondsSchema, SeenVersion, words } from '../kernel/schemas.ts';
import {
  ArrivalEntry,
  CAM_LAYOUTS,
  CastingTypeEntry,
  COUNTS_FROM,
  Code,
  EngineEntry,
  Entries,
  FUELS,
  GATES,
  Kind,
  MATERIALS,
  SpotEntry,
  StockEntry,
  TAX_CLASSES,
  UNITS,
  WorkCentreEntry,
} from './contract/entries.ts';

const CastingTypeRow = z.strictObject({
  id: idOf<'casting_type'>(),
  version: z.int(),
  code: z.string(),
  name: z.string(),
  kind: Kind,
  engineType: z
    .strictObject({
      id: idOf<'engine_type'>(),
      code: z.string(),
      words: z.string(),
      layout: z.string(),
      cylinders: z.int(),
    })
    .nullable(),
  castingNumberPattern: z.string().nullable(),
  material: z.enum(MATERIALS).nullable(),
  camLayout: z.enum(CAM_LAYOUTS),
  fuel: z.enum(FUELS),
  private: z.boolean(),
  counts: z.record(z.string(), z.int()),
  guideStyle: z.string(),
  seatStyle: z.string(),
  usualWeight: GramsSchema.nullable(),
  heavyDiesel: z.boolean(),
  waterJacket: z.boolean(),
});
const SpotRow = SpotEntry.extend({ id: idOf<'spot'>() });

const ByFacts = z.strictObject({
  castingKind: Kind,
  material: z.enum([...MATERIALS, 'not_known']).default('not_known'),
  castingType: idOf<'casting_type'>().nullish(),
});

export const catalogueContract = {
  /** Bring in entries that are not there yet; what the shop has under the same code stays as it is. */
  'operations/bring-in': command({
    may: 'catalogue:edit',
    secret: ['operations', 'castingTypes', 'rules', 'places'],
    input: Entries,
    output: z.strictObject({ added: z.int(), kept: z.int() }),
  }),
  /** Whether all of these entries are there and what the program knows of measuring stands as the program has it. */
  'operations/is-brought-in': query({
    may: 'catalogue:see',
    input: Entries,
    output: z.strictObject({ whole: z.boolean() }),
  }),
  'operations/list-kinds': query({
    may: 'catalogue:see',
    /** With `castingKind`: only what is done on that kind, with its fit on the given metal and type. */
    input: z.strictObject({ for: ByFacts.optional() }),
    output: z.strictObject({
      kinds: z.array(
        z.strictObject({
          id: idOf<'operation_kind'>(),
          version: z.int(),
          code: z.string(),
          shopWords: z.string(),
          customerWords: z.string(),
          section: z.string(),
          workCentre: z.string().nullable(),
          gate: z.enum(GATES),
          taxClass: z.enum(TAX_CLASSES),
          cautions: z.string().nullable(),
          retired: z.boolean(),
          uses: z.array(
            z.strictObject({
              id: idOf<'op_use'>(),
              castingKind: Kind,
              chargeUnit: z.enum(UNITS),
              countFrom: z.enum(COUNTS_FROM),
            }),
          ),
          /** Only with `for`: how it fits, the count it would be charged, and why not in words. */
          fit: z.enum(['normal', 'special', 'refused', 'does_not_arise']).nullable(),
          count: z.int().nullable(),
          why: z.string().nullable(),
        }),
      ),
    }),
  }),
  'operations/list-packages': query({
    may: 'catalogue:see',
    input: z.strictObject({ castingKind: Kind.optional() }),
    output: z.strictObject({
      packages: z.array(
        z.strictObject({
          id: idOf<'package'>(),
          version: z.int(),
          code: z.string(),
          shopWords: z.string(),
          customerWords: z.string(),
          castingKind: Kind,
          notInside: z.string().nullable(),
          items: z.array(
            z.strictObject({ operation: z.string(), words: z.string(), metal: z.enum(['any', 'iron', 'aluminium']) }),
          ),
        }),
      ),
    }),
  }),
  'operations/list-casting-types': query({
    may: 'catalogue:see',
    input: z.strictObject({ privateToo: z.boolean().default(false) }),
    output: z.strictObject({ types: z.array(CastingTypeRow) }),
  }),
  'operations/get-casting-type': query({
    may: 'catalogue:see',
    input: z.strictObject({ castingType: idOf<'casting_type'>() }),
    output: CastingTypeRow.extend({
      /** How its engine counts the cylinders, bank by bank; null without an engine. */
      numbering: z.string().nullable(),
      spots: z.array(SpotRow),
      arrival: z.array(ArrivalEntry.extend({ id: idOf<'arrival_template'>() })),
    }),
  }),
  /** Described at the counter: counts are enough, the spots follow from them. */
  'operations/add-casting-type': command({
    may: 'castings:edit',
    input: CastingTypeEntry.omit({ code: true, spots: true, arrival: true }).extend({
      code: Code.optional(),
      spots: z.array(SpotEntry).optional(),
      arrival: z.array(ArrivalEntry).optional(),
    }),
    output: z.strictObject({ castingType: idOf<'casting_type'>() }),
  }),
  'operations/add-engine-type': command({
    may: 'catalogue:edit',
    input: EngineEntry,
    output: z.strictObject({ engineType: idOf<'engine_type'>() }),
  }),
  'operations/list-engine-types': query({
    may: 'catalogue:see',
    input: z.strictObject({}),
    output: z.strictObject({ engines: z.array(EngineEntry.extend({ id: idOf<'engine_type'>() })) }),
  }),
  'operations/set-arrival-template': command({
    may: 'catalogue:edit',
    input: z.strictObject({ castingType: idOf<'casting_type'>(), items: z.array(ArrivalEntry).max(80) }),
    output: z.strictObject({}),
  }),
  'operations/change-kind': command({
    may: 'catalogue:edit',
    input: z.strictObject({
      kind: idOf<'operation_kind'>(),
      seenVersion: SeenVersion,
      shopWords: words(120).optional(),
      customerWords: words(160).optional(),
      workCentre: Code.optional(),
    }),
    output: z.strictObject({ version: z.int() }),
  }),
  'operations/retire-kind': command({
    may: 'catalogue:edit',
    input: z.strictObject({ kind: idOf<'operation_kind'>(), seenVersion: SeenVersion }),
    output: z.strictObject({}),
  }),
  'operations/list-work-centres': query({
    may: 'catalogue:see',
    input: z.strictObject({}),
    output: z.strictObject({
      centres: z.array(WorkCentreEntry.extend({ id: idOf<'work_centre'>(), version: z.int() })),
    }),
  }),
  'operations/set-work-centre': command({
    may: 'catalogue:edit',
    input: z.strictObject({
      centre: idOf<'work_centre'>(),
      seenVersion: SeenVersion,
      people: z.int().min(0).optional(),
      effectiveSeconds: SecondsSchema.optional(),
      name: words(60).optional(),
    }),
    output: z.strictObject({ version: z.int() }),
  }),
  'operations/list-conditions': query({
    may: 'catalogue:see',
    input: z.strictObject({ castingKind: Kind.optional() }),
    output: z.strictObject({
      conditions: z.array(
        z.strictObject({
          id: idOf<'condition_kind'>(),
          code: z.string(),
          shopWords: z.string(),
          customerWords: z.string(),
          askCustomer: z.string(),
        }),
      ),
    }),
  }),
  'operations/list-findings': query({
    may: 'catalogue:see',
    input: z.strictObject({}),
    output: z.strictObject({
      findings: z.array(
        z.strictObject({
          id: idOf<'finding_kind'>(),
          code: z.string(),
          shopWords: z.string(),
          note: z.string().nullable(),
          offers: z.array(z.strictObject({ operation: z.string(), words: z.string(), alsoNeeded: z.boolean() })),
        }),
      ),
    }),
  }),
  'operations/list-stock': query({
    may: 'catalogue:see',
    input: z.strictObject({}),
    output: z.strictObject({ stock: z.array(StockEntry.extend({ id: idOf<'stock_item'>() })) }),
  }),
} as const;
