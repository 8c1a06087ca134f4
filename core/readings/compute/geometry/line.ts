/**
 * How straight a line of points is: the smallest gap between two parallel lines that hold them all (minimum zone, the
 * definition behind a straightness tolerance; ISO 12780, from memory). However the part lies, the figure is the same.
 *
 * Exact: the best pair of lines leans on two of the points, so every pair is tried, as fractions of big integers. A line has a
 * dozen points. Offsets are taken across the line, which for a small tilt is the gap itself.
 */
import { divideRounded } from '../../../kernel/units.ts';

/** Place along the line and height there, both whole and in any one unit each. */
export type LinePoint = Readonly<{ at: number; height: number }>;

export type Zone = Readonly<{
  width: number;
  /** Height of each point above the line in the middle of the zone, in the order given. */
  offsets: readonly number[];
  /** How much the width changes with each point's height: 0 for a point that does not touch. */
  weights: readonly number[];
}>;

type Try = Readonly<{
  residuals: readonly bigint[];
  low: bigint;
  high: bigint;
  run: bigint;
  lean: readonly [number, number];
}>;

/**
 * The zone of at least three points at different places.
 *
 * @returns null for fewer, or when all of them stand at one place.
 */
export function straightnessOf(points: readonly LinePoint[]): Zone | null {
  const tries = pairsOf(points.length).flatMap(([i, j]) => leanOn(points, i, j) ?? []);
  const best = tries.reduce<Try | null>((least, it) => (least === null || isNarrower(it, least) ? it : least), null);
  if (points.length < 3 || best === null) return null;
  const { residuals, low, high, run } = best;
  return {
    width: divideRounded(high - low, run),
    offsets: residuals.map((it) => divideRounded(2n * it - low - high, 2n * run)),
    weights: weightsOf(points, best),
  };
}

function pairsOf(count: number): (readonly [number, number])[] {
  const all = Array.from({ length: count }, (_, index) => index);
  return all.flatMap((i) => all.slice(i + 1).map((j) => [i, j] as const));
}

/** Heights above the line through two points, times the distance between these. */
function leanOn(points: readonly LinePoint[], i: number, j: number): Try | null {
  const [from, to] = [points[i], points[j]];
  if (!from || !to || from.at === to.at) return null;
  const run = BigInt(to.at - from.at);
  const rise = BigInt(to.height - from.height);
  const sign = run < 0n ? -1n : 1n;
  const residuals = points.map((it) => sign * (BigInt(it.height - from.height) * run - rise * BigInt(it.at - from.at)));
  let low = residuals[0] ?? 0n;
  let high = low;
  for (const it of residuals) {
    if (it < low) low = it;
    if (it > high) high = it;
  }
  return { residuals, low, high, run: sign * run, lean: [i, j] };
}

const isNarrower = (a: Try, b: Try): boolean => (a.high - a.low) * b.run < (b.high - b.low) * a.run;

/** The two points leaned on against the one opposite, which stands between them. */
function weightsOf(points: readonly LinePoint[], { residuals, low, high, lean: [i, j] }: Try): number[] {
  const opposite = residuals.indexOf(residuals[i] === low ? high : low);
  const [from, to, far] = [points[i], points[j], points[opposite]];
  if (!from || !to || !far || low === high) return points.map(() => 0);
  const share = (far.at - from.at) / (to.at - from.at);
  return points.map((_, index) => (index === opposite ? 1 : index === i ? share - 1 : index === j ? -share : 0));
}
