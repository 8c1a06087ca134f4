/**
 * A round-wire compression spring by its wire: rate, stress, natural frequency. Linear, small pitch angle.
 *
 * Formulas and their bounds (spring index 4 to 12, at least two working coils, wire up to 20 mm) as EN 13906-1:2013 is
 * summarised publicly; correction of the stress by Wahl. Uncertainty: the rate follows the fourth power of the wire, so one
 * percent of wire is four of rate: a check on a tester, never a specification.
 */
import { wholeOf } from './whole.ts';

/** Base units: millipascal, nanometres, ten-thousandths of a coil. All above zero. */
export type WireSpring = Readonly<{ shear: number; wire: number; mean: number; active: number }>;

const METRE = 1e-9;
const TEN_THOUSANDTH = 1e-4;

const si = ({ shear, wire, mean, active }: WireSpring) => ({
  g: shear / 1000,
  d: wire * METRE,
  mean: mean * METRE,
  coils: active * TEN_THOUSANDTH,
});

/** `G d4 / (8 D3 n)`, in millionths of a newton per metre. */
export function rateOfWire(spring: WireSpring): number {
  const { g, d, mean, coils } = si(spring);
  return wholeOf(((g * d ** 4) / (8 * mean ** 3 * coils)) * 1e6);
}

/** Mean coil diameter over wire thickness, in ten-thousandths. */
export const indexOf = ({ wire, mean }: Pick<WireSpring, 'wire' | 'mean'>): number =>
  wholeOf(mean / wire / TEN_THOUSANDTH);

/** Wahl's factor for the curvature of the wire: `(4C - 1)/(4C - 4) + 0.615/C`. */
export const wahlOf = (index: number): number => (4 * index - 1) / (4 * index - 4) + 0.615 / index;

/** Corrected shear stress under a load in micronewtons, in millipascal: `K 8 F D / (pi d3)`. */
export function stressOf(spring: Pick<WireSpring, 'wire' | 'mean'>, load: number): number {
  const [d, mean] = [spring.wire * METRE, spring.mean * METRE];
  return wholeOf(((wahlOf(mean / d) * 8 * load * 1e-6 * mean) / (Math.PI * d ** 3)) * 1000);
}

/** Steel, 0.283 lb/in3, in kilograms per cubic metre; from memory. */
const STEEL = 7833.4;

/** Lowest natural frequency with both ends held, in cycles a minute: `d / (2 pi D2 n) sqrt(G / (2 rho))`. */
export function surgeOf(spring: WireSpring): number {
  const { g, d, mean, coils } = si(spring);
  return wholeOf((d / (2 * Math.PI * mean ** 2 * coils)) * Math.sqrt(g / (2 * STEEL)) * 60);
}
