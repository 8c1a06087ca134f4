/**
 * The one judgement of a figure against its limits: five answers, integers only, limits inclusive.
 *
 * Guard band: nothing passes inside the uncertainty of a limit, and nothing fails until it is outside by more than it (the
 * doubt counts against whoever makes the claim; ISO 14253-1 as summarised publicly). Without guard the limits themselves.
 */
import type { Quantity } from '../../catalogue/compute/quantity.ts';
import type { Direction, Verdict, VerdictName } from './model.ts';

/** All in base units of one family. */
export type Judged = Readonly<{
  value: number | null;
  low: number | null;
  high: number | null;
  /** U (k = 2); null when the tool is not named: then the guard cannot be kept. */
  uncertainty: number | null;
  guard: boolean;
}>;

export const NOT_MEASURED: Verdict = { name: 'not measured', direction: null, cannotProve: false };

/** Judge one figure. A missing one is never a pass, nor is one without limits. */
export function judge({ value, low, high, uncertainty, guard }: Judged): Verdict {
  if (value === null) return NOT_MEASURED;
  if (low === null && high === null) return { name: 'no limit known', direction: null, cannotProve: false };
  const band = guard ? (uncertainty ?? 0) : 0;
  const cannotProve = low !== null && high !== null && uncertainty !== null && high - low < 2 * uncertainty;
  const outside = sideOf(value, low, high, band);
  if (outside) return { name: 'fail', direction: outside, cannotProve };
  const near = sideOf(value, low, high, -band);
  if (near) return { name: 'too close to call', direction: near, cannotProve };
  return { name: 'pass', direction: null, cannotProve };
}

/** A gauge is good enough without a guard band where the limits stand at least this many times its doubt apart. */
const SIMPLE_RATIO = 4n;

/**
 * Whether limits stand closer than four times the doubt interval 2U of the gauge: then a plain pass means little.
 * Rule of N:1 simple acceptance, usual N = 4: ASME B89.7.3.1, from memory. False where one limit or the doubt is not known.
 */
export function isWeakGauge({ low, high, uncertainty }: Pick<Judged, 'low' | 'high' | 'uncertainty'>): boolean {
  if (low === null || high === null || uncertainty === null) return false;
  return BigInt(high - low) < SIMPLE_RATIO * 2n * BigInt(uncertainty);
}

/** Which limit the value lies beyond when both are moved outwards by `margin` (inwards when negative). */
function sideOf(value: number, low: number | null, high: number | null, margin: number): Direction | null {
  if (high !== null && value > high + margin) return 'over';
  if (low !== null && value < low - margin) return 'under';
  return null;
}

/** U of a sum or a difference: root of the sum of squares, rounded up to a whole base unit. Null when one is not known. */
export function combineUncertainty(parts: readonly (number | null)[]): number | null {
  let sum = 0n;
  for (const part of parts) {
    if (part === null) return null;
    sum += BigInt(part) * BigInt(part);
  }
  const root = rootOf(sum);
  return Number(root * root < sum ? root + 1n : root);
}

/** Whole square root, rounded down. */
function rootOf(n: bigint): bigint {
  if (n < 2n) return n;
  let guess = 1n << BigInt(Math.ceil(n.toString(2).length / 2));
  for (;;) {
    const next = (guess + n / guess) / 2n;
    if (next >= guess) return guess;
    guess = next;
  }
}

/** What the bench says: `pass`, `too tall`, `too close`, `not measured`, `no limit known`. */
export function verdictWord(verdict: Verdict, quantity: Pick<Quantity, 'over' | 'under'>): string {
  if (verdict.name === 'fail') return verdict.direction === 'under' ? quantity.under : quantity.over;
  return verdict.name === 'too close to call' ? (verdict.word ?? 'too close') : verdict.name;
}

/** Worst first. "No limit known" weighs least: it says nothing against the figure, and nothing for it. */
const WORST: readonly VerdictName[] = ['fail', 'too close to call', 'not measured', 'pass', 'no limit known'];

/** Place of a verdict in the order of worry, 0 the worst. */
export const worry = (name: VerdictName): number => WORST.indexOf(name);

/** How many of each. */
export function countVerdicts(names: readonly VerdictName[]): Record<VerdictName, number> {
  const counts: Record<VerdictName, number> = {
    pass: 0,
    fail: 0,
    'too close to call': 0,
    'not measured': 0,
    'no limit known': 0,
  };
  for (const name of names) counts[name] += 1;
  return counts;
}

/** `11 pass, 2 fail, 1 too close, 2 not measured`; `nothing to judge` when there are none. */
export function summaryOf(counts: Readonly<Record<VerdictName, number>>): string {
  const said: readonly (readonly [VerdictName, string])[] = [
    ['pass', 'pass'],
    ['fail', 'fail'],
    ['too close to call', 'too close'],
    ['not measured', 'not measured'],
    ['no limit known', 'no limit known'],
  ];
  const parts = said.filter(([name]) => counts[name] > 0).map(([name, words]) => `${counts[name]} ${words}`);
  return parts.length > 0 ? parts.join(', ') : 'nothing to judge';
}
