/**
 * The published lifting equation: the weight that most healthy people may lift under given conditions.
 *
 * NIOSH Publication 94-110, revised 9/2021: RWL = LC HM VM DM AM FM CM. Metric form throughout (23 kg); the inch form (51 lb) is
 * not its conversion. Computed at full precision: the manual rounds its multipliers to two places, so that its last digit may
 * differ by one. Not for one-handed, seated or unstable lifts.
 */
import { wholeOf } from './whole.ts';

/** Nanometres in a centimetre. */
const CM = 10_000_000;
const DEGREE = 1_000_000;
/** Load constant, kilograms. */
const LOAD = 23;
const GRAMS = 1000;

/** Horizontal distance, base unit of length. Under 25 cm counts as 25; beyond 63 nobody lifts. */
export function horizontal(h: number): number {
  const cm = h / CM;
  return cm > 63 ? 0 : 25 / Math.max(cm, 25);
}

/** Height of the hands above the floor. Above 175 cm nobody lifts. */
export function vertical(v: number): number {
  const cm = v / CM;
  return cm < 0 || cm > 175 ? 0 : 1 - 0.003 * Math.abs(cm - 75);
}

/** How far it is lifted up or down. Under 25 cm counts as 25; beyond 175 nobody lifts. */
export function travel(d: number): number {
  const cm = d / CM;
  return cm > 175 ? 0 : 0.82 + 4.5 / Math.max(cm, 25);
}

/** Twist of the body, millionths of a degree, either way. Beyond 135 degrees nobody lifts. */
export function twist(a: number): number {
  const degrees = Math.abs(a) / DEGREE;
  return degrees > 135 ? 0 : 1 - 0.0032 * degrees;
}

export const COUPLINGS = ['good', 'fair', 'poor'] as const;
export type Coupling = (typeof COUPLINGS)[number];

/** How well the hands hold it. Fair counts as good at or above 75 cm. */
export function coupling(grip: Coupling, v: number): number {
  if (grip === 'poor') return 0.9;
  return grip === 'fair' && v / CM < 75 ? 0.95 : 1;
}

export const DURATIONS = ['up to 1 hour', '1 to 2 hours', '2 to 8 hours'] as const;
export type Duration = (typeof DURATIONS)[number];

/** Lifts in 15 minutes up to which a row counts: 0.2, 0.5, 1, 2 .. 15 a minute. */
const UP_TO: readonly number[] = [3, 7.5, ...Array.from({ length: 15 }, (_, i) => 15 * (i + 1))];

/**
 * Table 5 of the manual, for hands at or above 75 cm; `low` is the first row that is 0 below 75 cm. The column up to one hour was
 * read in a public program, the others are from memory.
 */
const FREQUENCY: Readonly<Record<Duration, Readonly<{ rows: readonly number[]; low: number }>>> = {
  'up to 1 hour': {
    rows: [1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31, 0.28],
    low: 14,
  },
  '1 to 2 hours': { rows: [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0.23, 0.21], low: 12 },
  '2 to 8 hours': { rows: [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13], low: 10 },
};

/** How often it is lifted; between two rows the one that is more often counts. */
export function frequency(liftsIn15Minutes: number, duration: Duration, v: number): number {
  const row = UP_TO.findIndex((upTo) => liftsIn15Minutes <= upTo);
  const { rows, low } = FREQUENCY[duration];
  return row < 0 || (row >= low && v / CM < 75) ? 0 : (rows[row] ?? 0);
}

/** Product of all multipliers with a load constant, in its unit. */
export const weightLimit = (constant: number, multipliers: readonly number[]): number =>
  multipliers.reduce((product, it) => product * it, constant);

/** Lengths in nanometres, twist in millionths of a degree. */
export type Lift = Readonly<{ h: number; v: number; d: number; a: number; frequency: number; coupling: number }>;

/** The recommended weight limit in whole grams; 0: do not lift by hand. */
export const liftLimit = (lift: Lift): number =>
  wholeOf(
    GRAMS *
      weightLimit(LOAD, [
        horizontal(lift.h),
        vertical(lift.v),
        travel(lift.d),
        twist(lift.a),
        lift.frequency,
        lift.coupling,
      ]),
  );
