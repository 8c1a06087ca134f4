/** The pattern a hone leaves. Exact mathematics of a point that turns and goes up and down at steady speed. */
import { wholeOf } from './whole.ts';

/** Lengths in nanometres; `turns` and `full` a minute; a full stroke goes down and up again, `stroke` is one way. */
export type Honing = Readonly<{ diameter: number; turns: number; full: number; stroke: number }>;

/**
 * Angle between the two directions of scratches, the one that opens along the turn: 2 atan(stroke speed / surface speed).
 *
 * @returns millionths of a degree. All figures are above 0.
 */
export function includedAngle({ diameter, turns, full, stroke }: Honing): number {
  const strokeSpeed = full * 2 * stroke;
  const surfaceSpeed = Math.PI * diameter * turns;
  return wholeOf((2 * Math.atan(strokeSpeed / surfaceSpeed) * 180_000_000) / Math.PI);
}
