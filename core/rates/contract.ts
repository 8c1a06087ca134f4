/** Prices, factors and taxes with the day they begin. A change here touches no line of any ticket. */
import { z } from 'zod';
import { CASTING_KINDS } from '../catalogue/contract/entries.ts';
import { command, query } from '../kernel/contract.ts';
import {
  BasisPointsSchema,
  CentsSchema,
  DaySchema,
  FactorSchema,
  idOf,
  PriceE4Schema,
  SeenVersion,
  words,
} from '../kernel/schemas.ts';
import { FACTOR_FACTS, STANDARD_LIST, TAX_CLASSES } from './compute.ts';

export const TaxClassSchema = z.enum(TAX_CLASSES);
const ChargeUnit = z.string();

const NotNegative = 'A price is not below 0.';
/** A price a person types: 0 to a million. More is a slip of the finger, and sums of it would not be exact any more. */
export const TypedPrice = PriceE4Schema.refine((value) => value >= 0, NotNegative).refine(
  (value) => value <= 10_000_000_000,
  'A price is at most 1,000,000.00.',
);
/** An amount a person types: 0 to ten million. */
export const TypedAmount = CentsSchema.refine((value) => value >= 0, 'An amount is not below 0.').refine(
  (value) => value <= 1_000_000_000,
  'An amount is at most 10,000,000.00.',
);
const ListName = words(40, 'the name of the price list');

/** What a price is for: an operation on a kind of casting, or a package on one casting type. */
const PricedThing = z.union([
  z.strictObject({ operationKindId: idOf<'operation_kind'>(), castingKind: z.enum(CASTING_KINDS) }),
  z.strictObject({ packageId: idOf<'package'>(), castingTypeId: idOf<'casting_type'>() }),
]);

/** The price of a day and, where one is typed already, the next. */
const PriceOnDay = z.object({
  /** Null: not sold on that day. */
  price: PriceE4Schema.nullable(),
  lineMinimum: CentsSchema,
  from: DaySchema.nullable(),
  /** The list it came from: the one asked for, or `standard`. */
  list: z.string().nullable(),
  next: z.object({ price: PriceE4Schema, from: DaySchema }).nullable(),
});

const FactorView = z.object({
  id: idOf<'factor'>(),
  version: z.int(),
  code: z.string(),
  factor: FactorSchema,
  whenFact: z.enum(FACTOR_FACTS),
  whenValue: z.string(),
  /** "on aluminium castings", "on close-tolerance work". */
  whenWords: z.string(),
  from: DaySchema,
  until: DaySchema.nullable(),
  inForce: z.boolean(),
  /** Shop's words of the operations and packages it touches. */
  touches: z.array(z.string()),
});

const TaxView = z.object({
  id: idOf<'tax_rate'>(),
  version: z.int(),
  code: z.string(),
  words: z.string(),
  bp: BasisPointsSchema,
  from: DaySchema,
  until: DaySchema.nullable(),
  inForce: z.boolean(),
  classes: z.array(TaxClassSchema),
});

export const ratesContract = {
  /** A new price from a day on; the old one stays for tickets of earlier days. */
  'rates/set-price': command({
    may: 'rates:edit',
    input: z.strictObject({
      for: PricedThing,
      price: TypedPrice,
      lineMinimum: TypedAmount.default(0 as never),
      from: DaySchema,
      list: ListName.default(STANDARD_LIST),
    }),
    output: z.strictObject({ id: idOf<'rate'>() }),
  }),
  'rates/list-rates': query({
    may: 'pricing:see',
    input: z.strictObject({ day: DaySchema.optional(), list: ListName.default(STANDARD_LIST) }),
    output: z.object({
      day: DaySchema,
      /** Every price list that has a price, `standard` first. */
      lists: z.array(z.string()),
      operations: z.array(
        PriceOnDay.extend({
          operationKindId: idOf<'operation_kind'>(),
          code: z.string(),
          words: z.string(),
          section: z.string(),
          castingKind: z.enum(CASTING_KINDS),
          chargeUnit: ChargeUnit,
          taxClass: TaxClassSchema,
        }),
      ),
      packages: z.array(
        PriceOnDay.extend({
          packageId: idOf<'package'>(),
          code: z.string(),
          words: z.string(),
          castingTypeId: idOf<'casting_type'>(),
          castingType: z.string(),
          taxClass: TaxClassSchema,
        }),
      ),
      factors: z.array(FactorView),
      taxes: z.array(TaxView),
    }),
  }),
  'rates/add-factor': command({
    may: 'rates:edit',
    input: z.strictObject({
      code: words(40, 'a short name for the factor'),
      factor: FactorSchema.refine((value) => value > 0 && value <= 1_000_000, 'A factor is above 0 and at most 100.'),
      whenFact: z.enum(FACTOR_FACTS),
      whenValue: words(30, 'when it applies'),
      from: DaySchema,
      operations: z.array(idOf<'operation_kind'>()).max(200),
      packages: z.array(idOf<'package'>()).max(200).default([]),
    }),
    output: z.strictObject({ id: idOf<'factor'>() }),
  }),
  /** The last day it applies. */
  'rates/end-factor': command({
    may: 'rates:edit',
    input: z.strictObject({ factor: idOf<'factor'>(), seenVersion: SeenVersion, until: DaySchema }),
    output: z.strictObject({ version: z.int() }),
  }),
  /** A tax, or a new rate of one from a day on. */
  'rates/set-tax-rate': command({
    may: 'accounts:edit',
    input: z.strictObject({
      code: words(40, 'a short name for the tax'),
      words: words(80, 'the name that prints'),
      bp: BasisPointsSchema.refine((value) => value >= 0 && value <= 10_000, 'A tax is 0 to 100 percent.'),
      from: DaySchema,
      classes: z.array(TaxClassSchema).max(TAX_CLASSES.length),
    }),
    output: z.strictObject({ id: idOf<'tax_rate'>() }),
  }),
  'rates/end-tax-rate': command({
    may: 'accounts:edit',
    input: z.strictObject({ taxRate: idOf<'tax_rate'>(), seenVersion: SeenVersion, until: DaySchema }),
    output: z.strictObject({ version: z.int() }),
  }),
  /** What the items of a package cost one by one, as help when its price is typed. */
  'rates/get-package-sum': query({
    may: 'pricing:see',
    input: z.strictObject({
      packageId: idOf<'package'>(),
      castingTypeId: idOf<'casting_type'>(),
      day: DaySchema.optional(),
    }),
    output: z.object({
      /** The package's own price on that day; null when it is not sold for this type. */
      price: PriceE4Schema.nullable(),
      items: z.array(
        z.object({
          operationKindId: idOf<'operation_kind'>(),
          words: z.string(),
          /** Null: the item has no price on that day. */
          amount: CentsSchema.nullable(),
          working: z.string(),
        }),
      ),
      /** Sum of the items that have a price. */
      sum: CentsSchema,
    }),
  }),
} as const;
