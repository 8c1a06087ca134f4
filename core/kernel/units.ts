/**
 * The exact units of Benchtag: every amount, size and time is a whole number of one small unit.
 *
 * | unit | one is | why whole numbers are exact |
 * |---|---|---|
 * | Cents | 1/100 of the shop's currency | printed columns add up |
 * | PriceE4 | 1/10 000 of the currency | screws at 0.0375 each |
 * | Nanometres | 1e-9 m | 1 in = 25 400 000 nm, so inch and metric are both whole |
 * | BasisPoints, Factor | 1/100 of a percent; 10 000 = times 1 | 8.25 % = 825; 1.15 = 11 500 |
 * | Seconds | 1 s | minutes and tenths of an hour are whole seconds |
 */
declare const unit: unique symbol;
/** A number that carries the name of its unit; made only by the checked constructors below. */
export type Unit<Name extends string> = number & { readonly [unit]: Name };

export type Cents = Unit<'Cents'>;
export type PriceE4 = Unit<'PriceE4'>;
export type BasisPoints = Unit<'BasisPoints'>;
export type Factor = Unit<'Factor'>;
export type Seconds = Unit<'Seconds'>;
export type Nanometres = Unit<'Nanometres'>;
export type Micronewtons = Unit<'Micronewtons'>;
export type Microdegrees = Unit<'Microdegrees'>;
export type Grams = Unit<'Grams'>;

/**
 * Build the checked constructor of one unit.
 *
 * @throws RangeError when the value is not a safe integer: a unit that is not exact is a programming
 * mistake, never something the person at the screen can be asked to mend.
 */
function unitOf<Name extends string>(name: Name): (value: number) => Unit<Name> {
  return (value) => {
    if (!Number.isSafeInteger(value)) throw new RangeError(`${name} must be a safe integer, got ${value}`);
    // Minus zero would print as "-0" and compare unequal under Object.is.
    return (value === 0 ? 0 : value) as Unit<Name>;
  };
}

export const cents = unitOf('Cents');
export const priceE4 = unitOf('PriceE4');
export const basisPoints = unitOf('BasisPoints');
export const factor = unitOf('Factor');
export const seconds = unitOf('Seconds');
export const nanometres = unitOf('Nanometres');
export const micronewtons = unitOf('Micronewtons');
export const grams = unitOf('Grams');

/** 10 000: one, as a Factor or as 100 % in BasisPoints. */
export const ONE = 10_000;

/**
 * Divide exactly and round once, half away from zero (half up for positive sums; a credit mirrors its charge).
 *
 * @throws RangeError when the divisor is 0 or the result is beyond 2^53.
 */
export function divideRounded(numerator: bigint, divisor: bigint): number {
  if (divisor === 0n) throw new RangeError('divideRounded: divisor is 0');
  const negative = numerator < 0n !== divisor < 0n;
  const top = numerator < 0n ? -numerator : numerator;
  const bottom = divisor < 0n ? -divisor : divisor;
  const rounded = Number((2n * top + bottom) / (2n * bottom));
  if (!Number.isSafeInteger(rounded)) throw new RangeError('divideRounded: result is beyond 2^53');
  return rounded === 0 ? 0 : negative ? -rounded : rounded;
}

/** Percent of an amount in basis points, rounded once. */
export const shareOf = (amount: Cents, bp: BasisPoints): Cents =>
  cents(divideRounded(BigInt(amount) * BigInt(bp), BigInt(ONE)));

/** Sum of cents; 0 for none. */
export const sumCents = (amounts: Iterable<Cents>): Cents => {
  let sum = 0;
  for (const amount of amounts) sum += amount;
  return cents(sum);
};

/**
 * Split an amount by whole-number weights so that the parts add up to it exactly (largest remainder; ties go to the
 * earlier part). All weights 0: the first part gets all.
 *
 * @throws RangeError for no parts or a negative weight.
 */
export function splitByWeight(amount: Cents, weights: readonly number[]): Cents[] {
  if (weights.length === 0) throw new RangeError('splitByWeight: no parts');
  if (weights.some((w) => w < 0)) throw new RangeError('splitByWeight: negative weight');
  const total = weights.reduce((sum, w) => sum + BigInt(w), 0n);
  if (total === 0n) return weights.map((_, i) => cents(i === 0 ? amount : 0));
  const sign = amount < 0 ? -1 : 1;
  const size = BigInt(Math.abs(amount));
  const parts = weights.map((w, index) => {
    const exact = size * BigInt(w);
    return { index, whole: Number(exact / total), rest: exact % total };
  });
  let left = Math.abs(amount) - parts.reduce((sum, p) => sum + p.whole, 0);
  const byRest = [...parts].sort((a, b) => (a.rest === b.rest ? a.index - b.index : a.rest > b.rest ? -1 : 1));
  for (const part of byRest) {
    if (left === 0) break;
    part.whole += 1;
    left -= 1;
  }
  return parts.map((p) => cents(sign * p.whole));
}
