/**
 * What an operation or a package costs on one casting on one day, before anybody adds it: quantity from the casting's own
 * counts, price in force, factors by the casting's facts. The check-in screen shows the same figures while it is filled in.
 */
import type { Day } from '../../kernel/days.ts';
import type { Cents } from '../../kernel/units.ts';
import {
  type CastingFacts,
  type FactorRow,
  factorsInForce,
  type RateRow,
  rateInForce,
  type TaxClass,
} from '../../rates/compute.ts';
import { lineAmount, lineWorking, PER_HOUR, PER_PIECE, type PriceTerms } from './line.ts';

/** Where a quantity comes from: a count of the casting type, one, or a person. */
export const COUNT_SOURCES = [
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
export type CountSource = (typeof COUNT_SOURCES)[number];

/** Counts of one casting by name; a missing name counts as 0. */
export type Counts = Readonly<Record<string, number>>;

/** An operation as it is sold on one kind of casting, or a package on one casting type. */
export type Sold = Readonly<{
  code: string;
  chargeUnit: string;
  countFrom: CountSource;
  taxClass: TaxClass;
  rates: readonly RateRow[];
}>;

export type PricedCasting = CastingFacts & Readonly<{ counts: Counts }>;

export type PricingDay = Readonly<{ list: string; on: Day; factors: readonly FactorRow[] }>;

export type Offer = PriceTerms & Readonly<{ amount: Cents; working: string; unit: string; taxClass: TaxClass }>;

/**
 * The quantity a casting gives by itself.
 *
 * @returns null when a person has to say it (hours, holes, pins); 0 when the thing does not arise on this casting
 */
export function usualQuantity(countFrom: CountSource, counts: Counts): number | null {
  if (countFrom === 'ask') return null;
  return countFrom === 'one' ? 1 : (counts[countFrom] ?? 0);
}

/** 3600 for things sold by the hour (their quantity is seconds), else 1. */
export const perOf = (chargeUnit: string): number => (chargeUnit === 'hour' ? PER_HOUR : PER_PIECE);

/**
 * Price one thing on one casting.
 *
 * @param quantity what a person typed, or null for the casting's own count
 * @returns undefined when it has no price on that day; `quantity` null in, and a person has to say it: 0 pieces, so that the
 *   screen shows the price of one beside an empty field
 */
export function offerOn(
  sold: Sold,
  casting: PricedCasting,
  pricing: PricingDay,
  quantity: number | null = null,
): Offer | undefined {
  const rate = rateInForce(sold.rates, pricing.list, pricing.on);
  if (!rate) return undefined;
  const terms: PriceTerms = {
    quantity: quantity ?? usualQuantity(sold.countFrom, casting.counts) ?? 0,
    per: perOf(sold.chargeUnit),
    unitPrice: rate.price,
    factors: factorsInForce(pricing.factors, sold.code, casting, pricing.on),
    lineMinimum: rate.lineMinimum,
  };
  return {
    ...terms,
    amount: lineAmount(terms),
    working: lineWorking(terms, sold.chargeUnit),
    unit: sold.chargeUnit,
    taxClass: sold.taxClass,
  };
}
