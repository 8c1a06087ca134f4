/**
 * Valve springs: rate, load at a height, room before bind, retainer against the seal. All linear, so all exact.
 *
 * A spring is what was measured of it: loads at heights. Between two points it is a straight line; past the shortest point
 * nothing is claimed (conical, progressive and damped springs are only locally straight); above the tallest point the first
 * stretch goes on. Sources: the straight-line formulas F = F1 + k (h1 - h), k = (F2 - F1) / (h1 - h2).
 */
import type { MicronewtonsPerMetre } from '../../kernel/measure-units.ts';
import { divideRounded, type Micronewtons, micronewtons, type Nanometres, nanometres } from '../../kernel/units.ts';

export type SpringPoint = Readonly<{ height: number; load: number }>;

export type Spring = Readonly<{
  /** At least two, tallest first. */
  points: readonly SpringPoint[];
  /** True when these loads were measured on the spring itself, false for figures from a sheet. */
  tested: boolean;
}>;

/** @returns a spring with its points tallest first, or null when two of different height are not known. */
export function springOf(points: readonly SpringPoint[], tested: boolean): Spring | null {
  const ordered = points.toSorted((a, b) => b.height - a.height);
  const distinct = ordered.filter((point, index) => index === 0 || point.height !== ordered[index - 1]?.height);
  return distinct.length >= 2 ? { points: distinct, tested } : null;
}

/** The stretch of line that holds a height; null past the shortest point. */
function stretchAt(spring: Spring, height: number): readonly [SpringPoint, SpringPoint] | null {
  for (const [index, upper] of spring.points.entries()) {
    const lower = spring.points[index + 1];
    if (lower && height >= lower.height) return [upper, lower];
  }
  return null;
}

/** Load at a height; null where the height is shorter than every measured point. */
export function loadAt(spring: Spring, height: number): Micronewtons | null {
  const stretch = stretchAt(spring, height);
  if (!stretch) return null;
  const [upper, lower] = stretch;
  const run = BigInt(upper.height - lower.height);
  const rise = BigInt(lower.load - upper.load);
  const above = BigInt(upper.height) - BigInt(height);
  return micronewtons(divideRounded(BigInt(upper.load) * run + rise * above, run));
}

/** Rate of the stretch at a height, or of the first one. */
export function rateOf(spring: Spring, height?: number): MicronewtonsPerMetre | null {
  const [first, second] = spring.points;
  const stretch = height === undefined ? first && second && ([first, second] as const) : stretchAt(spring, height);
  if (!stretch) return null;
  const [upper, lower] = stretch;
  const rise = BigInt(lower.load - upper.load) * 1_000_000_000n;
  return divideRounded(rise, BigInt(upper.height - lower.height)) as MicronewtonsPerMetre;
}

/**
 * Why two printed loads can hardly be of one valve spring; null when they may.
 *
 * A valve spring grows stronger as it is pressed, and stands far taller free than not at all: one whose line reaches no load
 * only past twice its seat height has a slip in one of its loads (common practice, no source; the case is TM 9-4940-549-14&P).
 */
export function implausibleOf(spring: Spring): string | null {
  const rate = rateOf(spring);
  const [seat] = spring.points;
  if (rate === null || !seat) return null;
  if (rate <= 0) return 'the load does not grow as the spring gets shorter';
  const isFlat = BigInt(seat.load) * 1_000_000_000n > BigInt(rate) * BigInt(seat.height);
  return isFlat ? 'so weak a rate would need a spring of more than twice its seat height' : null;
}

/** What an uncertainty of the height makes of the load. */
export function loadUncertainty(spring: Spring, height: number, uncertainty: number | null): number | null {
  const rate = rateOf(spring, height);
  return uncertainty === null || rate === null
    ? null
    : Math.abs(divideRounded(BigInt(rate) * BigInt(uncertainty), 1_000_000_000n));
}

/** Room left before the coils touch, with the valve open. */
export const bindClearance = (height: number, lift: number, solid: number): Nanometres =>
  nanometres(height - lift - solid);

/** The greatest lift that leaves `margin` before the coils touch. */
export const greatestLift = (height: number, solid: number, margin: number): Nanometres =>
  nanometres(height - solid - margin);

/** Retainer to seal or guide with the valve open, from the gap with it closed. */
export const sealClearance = (gapClosed: number, lift: number): Nanometres => nanometres(gapClosed - lift);
