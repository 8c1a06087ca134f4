/**
 * Main bores and cam tunnel: round, in line, and what honing the line does to the rest of the engine.
 * Common practice, no source; the vertical reading should not be the largest (exam-style web text, weak source).
 */
import { divideRounded } from '../../../kernel/units.ts';
import { offEndLine } from '../geometry/end-line.ts';
import { type LinePoint, straightnessOf } from '../geometry/line.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import type { Spot } from '../model.ts';
import { difference, type Formula, largest, range } from './formula.ts';
import { asFarAsRead, readPoints, unlessEmpty } from './points.ts';
import { sayLength } from './say.ts';

const roundness =
  (quantity: string, points: string): Formula =>
  (look) => {
    const places = readPoints(look, points);
    const known = range(places.read.map((it) => it.known));
    return unlessEmpty(places, () => asFarAsRead(look, quantity, known, places.missing));
  };

/** Vertical less the greater of the other two; above zero a cap has been pinched or the bore is stretched. */
function verticalOver(look: Look): Known | null {
  const { read, missing } = readPoints(look, 'main-size');
  const vertical = read.find(({ code }) => code === '0');
  const others = read.filter(({ code }) => code !== '0').map(({ known }) => known);
  if (!vertical) return null;
  if (missing.length > 0) return unknown(`not measured: ${missing.join('; ')}`);
  return difference(vertical.known, largest(others));
}

type Row = Readonly<{
  points: readonly (LinePoint & Readonly<{ spot: Spot; known: Known }>)[];
  missing: readonly string[];
  /** Said where the places were not typed. */
  marks: readonly string[];
}>;

const EVEN = 'places taken as evenly spaced';
/** One metre between places: only their ratio counts. */
const STEP = 1_000_000_000;

/** Heights along the bar with their places; places are even unless every one was typed and no two are alike. */
function readRow(look: Look, heights: string, places: string): Row {
  const spots = look.places(heights);
  const typed = new Map(
    [...look.all(places, { stage: 'before' }), ...look.all(places, { stage: 'after' })].map(({ spot, known }) => [
      spot,
      known.value,
    ]),
  );
  const isTyped =
    spots.length > 0 && spots.every((it) => typed.has(it)) && new Set(typed.values()).size === spots.length;
  const read = new Map(look.all(heights).map(({ spot, known }) => [spot, known]));
  const points = spots.flatMap((spot, index) => {
    const known = read.get(spot);
    const at = isTyped ? (typed.get(spot) ?? 0) : index * STEP;
    return known?.value == null ? [] : [{ at, height: known.value, spot, known }];
  });
  const missing = spots.filter((it) => !read.has(it)).map(({ label }) => label);
  return { points, missing, marks: isTyped ? [] : [EVEN] };
}

/** Above the line of the end bores. */
const offLine =
  (heights: string, places: string): Formula =>
  (look) => {
    const row = readRow(look, heights, places);
    const here = row.points.findIndex(({ spot }) => spot === look.place.spot);
    const [point, first, last] = [row.points[here], row.points[0], row.points.at(-1)];
    if (!point || !first || !last) return null;
    const ends = look.places(heights);
    if (first.spot !== ends[0] || last.spot !== ends.at(-1))
      return unknown('the first and the last one are not both read');
    return made([point.known, first.known, last.known], offEndLine(row.points)[here] ?? 0, row.marks);
  };

/** The greatest step to the bore before or behind, along the line of the end bores. */
function step(look: Look): Known | null {
  const places = look.places('main-line');
  const spot = look.place.spot;
  if (spot === null) return null;
  const here = places.indexOf(spot);
  const lines = new Map(look.all('main-line').map(({ spot, known }) => [spot, known]));
  const own = lines.get(spot);
  if (!own) return null;
  const steps = [places[here - 1], places[here + 1]].map((it) => {
    const by = it ? difference(own, lines.get(it) ?? null) : null;
    return by?.value == null ? null : made([by], Math.abs(by.value));
  });
  const missing = [places[here - 1], places[here + 1]].flatMap((it) => (it && !lines.has(it) ? [it.label] : []));
  return asFarAsRead(look, 'main-step', largest(steps), missing);
}

/** Least zone of two parallel lines that holds every bore: the tilt of the bar counts for nothing. */
const lineError =
  (quantity: string, heights: string, places: string): Formula =>
  (look) => {
    const { points, missing, marks } = readRow(look, heights, places);
    if (points.length === 0) return null;
    const zone = straightnessOf(points);
    const parts = points.map(({ known }, index) => [known, zone?.weights[index] ?? 0] as const);
    const known = zone === null ? null : madeBy(parts, zone.width, marks);
    if (missing.length === 0) return known ?? unknown('fewer than three bores have no line');
    return asFarAsRead(look, quantity, known, missing);
  };

/** Honed back to size after the cap was cut, the bore grows into the block by half of the cut. */
function rise(look: Look): Known | null {
  const cut = look.either('cap-cut');
  return cut?.value == null ? null : { ...made([cut], divideRounded(BigInt(cut.value), 2n)) };
}

/** The greatest rise of all mains, and what it moves. */
function lineRise(look: Look): Known | null {
  const rises = [...look.all('main-rise', { stage: 'before' }), ...look.all('main-rise', { stage: 'after' })];
  const top = largest(rises.map(({ known }) => known));
  if (top?.value == null) return null;
  const values = rises.map(({ known }) => known.value ?? 0);
  const low = Math.min(...values);
  const by = sayLength(look, top.value);
  return {
    ...top,
    marks: [
      ...top.marks,
      `deck height is less by ${by}: pistons stand higher`,
      `crank and cam are nearer by ${by}: look at the timing chain or gears`,
      ...(low < top.value ? [`caps not cut alike: from ${sayLength(look, low)}`] : []),
    ],
  };
}

export const MAIN_FORMULAS: Readonly<Record<string, Formula>> = {
  'main-out-of-round': roundness('main-out-of-round', 'main-size'),
  'main-vertical': verticalOver,
  'main-line': offLine('main-height', 'main-place'),
  'main-step': step,
  'line-error': lineError('line-error', 'main-height', 'main-place'),
  'main-rise': rise,
  'centre-line-rise': lineRise,
  'cam-tunnel-line': offLine('cam-height', 'cam-place'),
  'cam-tunnel-error': lineError('cam-tunnel-error', 'cam-height', 'cam-place'),
  'big-end-out-of-round': roundness('big-end-out-of-round', 'big-end-place'),
};
