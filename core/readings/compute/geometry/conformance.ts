/**
 * How sure one can be that a figure near its limit truly lies within: the probability mass of its doubt between the limits.
 *
 * Source: JCGM 106:2012, clause 7.2 (normal distribution about the reading, standard uncertainty u = U / 2).
 */

/** A figure with its doubt and its limits, all in one unit. */
export type NearLimit = Readonly<{ value: number; uncertainty: number; low: number | null; high: number | null }>;

/**
 * Probability that the true figure lies within the limits, 0 to 1.
 *
 * @param uncertainty U (k = 2), above 0
 */
export function conformanceProbability({ value, uncertainty, low, high }: NearLimit): number {
  const u = uncertainty / 2;
  const below = high === null ? 1 : normalBelow((high - value) / u);
  const under = low === null ? 0 : normalBelow((low - value) / u);
  return Math.min(1, Math.max(0, below - under));
}

/** Share of the normal distribution below z, to double precision: a series near the middle, a fraction in the tails. */
function normalBelow(z: number): number {
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) < 3) return 0.5 + density * seriesOf(z);
  const tail = density / fractionOf(Math.abs(z));
  return z > 0 ? 1 - tail : tail;
}

/** z + z^3/3 + z^5/15 ...: what multiplies the density in the integral from 0 to z. */
function seriesOf(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 3; Math.abs(term) > Number.EPSILON * Math.abs(sum); n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return sum;
}

/** The continued fraction z + 1/(z + 2/(z + 3/(z + ...))). */
function fractionOf(z: number): number {
  let fraction = z;
  for (let n = 60; n > 0; n -= 1) fraction = z + n / fraction;
  return fraction;
}
