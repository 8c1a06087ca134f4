/** Heights along a row of bores against the line through its ends. Exact: slopes stay fractions until the one rounding. */
import { divideRounded } from '../../../kernel/units.ts';
import type { LinePoint } from './line.ts';

/** Heights above the straight line through the first and the last point, in the order given; fewer than two points: all 0. */
export function offEndLine(points: readonly LinePoint[]): number[] {
  const [first, last] = [points.at(0), points.at(-1)];
  if (!first || !last || first.at === last.at) return points.map(() => 0);
  const run = BigInt(last.at - first.at);
  const rise = BigInt(last.height - first.height);
  return points.map(({ at, height }) =>
    divideRounded(BigInt(height - first.height) * run - rise * BigInt(at - first.at), run),
  );
}
