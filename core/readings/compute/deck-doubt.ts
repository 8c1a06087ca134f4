/**
 * A dial reading that does not belong to its neighbours: ten times off, or a minus left out. It is questioned, never refused.
 * What stood there before the work says nothing of a dial: the casting stood on other jacks. Bounds are common practice, no
 * source.
 */
import { FACES, faceQuantities } from '../../catalogue/compute/faces.ts';
import type { ReadFigure } from '../../kernel/measure.ts';
import type { Doubt } from '../../kernel/measure-doubt.ts';
import { showExact, showValue, typedDecimals, withMark } from '../../kernel/measure-show.ts';
import type { Bench } from './bench.ts';
import type { CellPlace } from './cells.ts';
import { FEWEST_POINTS, gridOf } from './deck-grid.ts';
import { leastSquaresPlane } from './geometry/plane.ts';
import { wholeOf } from './geometry/whole.ts';

/** Ten thou off the others at one point, and five times what they differ among themselves. */
const FAR = 254_000;
const FAR_TIMES = 5;
/** A figure that was probably meant lies within two thou of the others, or as near as they do. */
const NEAR = 50_800;

/** @returns null while fewer than four other points are read, or when it looks right */
export function dialDoubt(bench: Bench, { quantity, stage, point }: CellPlace, read: ReadFigure): Doubt | null {
  const face = FACES.find((it) => faceQuantities(it).dial === quantity.code);
  const at = /^c(\d+)r(\d+)$/.exec(point ?? '');
  if (!face || !at) return null;
  const others = gridOf(bench.look({ spot: null, stage }), face).points.filter((it) => it.code !== point);
  if (others.length < FEWEST_POINTS) return null;
  const plane = leastSquaresPlane(others.map(({ column, row, z }) => ({ x: column, y: row, z })));
  const around = plane.a * Number(at[1]) + plane.b * Number(at[2]) + plane.c;
  const off = (value: number) => Math.abs(value - around);
  if (off(read.value) <= Math.max(FAR, FAR_TIMES * plane.flatness)) return null;
  const said = withMark(showValue(read.value, read.unit, typedDecimals(read.typed)), read.unit);
  const away = withMark(showValue(wholeOf(off(read.value)), read.unit, typedDecimals(read.typed)), read.unit);
  const meant = meantBy(read, (value) => off(value) <= Math.max(NEAR, plane.flatness));
  const question = `${said} lies ${away} off the other points.`;
  if (!meant) return { question: `${question} Is it right?`, meant: null };
  return { question: `${question} Did you mean ${withMark(meant.typed, meant.unit)}?`, meant };
}

/** The sign left out or put in, or the point one place off. */
function meantBy({ value, unit, typed }: ReadFigure, isNear: (value: number) => boolean): Doubt['meant'] {
  const decimals = typedDecimals(typed);
  const candidates = [
    { value: -value, decimals },
    { value: wholeOf(value / 10), decimals },
    { value: wholeOf(-value / 10), decimals },
    { value: value * 10, decimals: Math.max(decimals - 1, 0) },
  ];
  const found = candidates.find((it) => isNear(it.value));
  return found ? { typed: showExact(found.value, unit, found.decimals), unit } : null;
}
