/**
 * The dial grid of a face as it stands, and its flatness. Places are counted in columns and rows: every figure of flatness is
 * the same whatever lengths the columns stand apart, because a tilt of an even grid is a tilt of its counts.
 */
import {
  FACES,
  type Face,
  faceQuantities,
  gridCode,
  MOST_COLUMNS,
  MOST_ROWS,
  USUAL_COLUMNS,
  USUAL_ROWS,
} from '../../catalogue/compute/faces.ts';
import { type MinimumZone, minimumZone } from './geometry/minimum-zone.ts';
import { type Known, type Look, madeBy, unknown } from './look.ts';
import type { Facts } from './model.ts';

export type GridRead = Readonly<{ code: string; column: number; row: number; known: Known; z: number }>;

export type FaceGrid = Readonly<{
  columns: number;
  rows: number;
  /** Points with a figure, column by column. */
  points: readonly GridRead[];
  /** Points that want one: all that nobody marked as nothing to measure. */
  wanted: number;
}>;

/** How many columns or rows were chosen; the usual number where nobody chose. */
const chosen = (known: Known | null, usual: number, most: number): number =>
  Math.min(Math.max(known?.value ?? usual, 2), most);

/** Read the grid of a face at the stage of the look. */
export function gridOf(look: Look, face: Face): FaceGrid {
  const of = faceQuantities(face);
  const columns = chosen(look.figure(of.columns), USUAL_COLUMNS, MOST_COLUMNS);
  const rows = chosen(look.figure(of.rows), USUAL_ROWS, MOST_ROWS);
  const places = Array.from({ length: columns * rows }, (_, n) => {
    const [column, row] = [Math.floor(n / rows) + 1, (n % rows) + 1];
    return { column, row, code: gridCode(column, row) };
  });
  const points = places.flatMap((it): GridRead[] => {
    const known = look.value(of.dial, { point: it.code });
    return known?.value == null ? [] : [{ ...it, known, z: known.value }];
  });
  const out = places.filter(({ code }) => look.isDash(of.dial, { point: code })).length;
  return { columns, rows, points, wanted: places.length - out };
}

/** Fewer than this lie on a plane whatever they read. */
export const FEWEST_POINTS = 4;
export const TOO_FEW = 'too few points';

export const isWhole = ({ points, wanted }: FaceGrid): boolean =>
  points.length >= FEWEST_POINTS && points.length >= wanted;

/** `12 of 15 points`. */
export const readOf = ({ points, wanted }: FaceGrid): string => `${points.length} of ${wanted} points`;

/** Tables whose faces were read by dial or straightedge: their figures stand, though nothing was typed into them. */
export function surveyedTables({ casting, readings }: Pick<Facts, 'casting' | 'readings'>): ReadonlySet<string> {
  const read = new Set(readings.map((it) => it.quantity));
  return new Set(
    FACES.filter((face) => read.has(faceQuantities(face).dial) || read.has(faceQuantities(face).gap)).flatMap(
      (face) => face.tables[casting.kind as keyof Face['tables']] ?? [],
    ),
  );
}

/** The two closest planes; null for fewer than four points. */
export const zoneOf = ({ points }: FaceGrid): MinimumZone | null =>
  points.length < FEWEST_POINTS ? null : minimumZone(points.map(({ column, row, z }) => ({ x: column, y: row, z })));

/** The zone with the doubt of the few readings that decide it. */
export function zoneKnown(grid: FaceGrid, zone: MinimumZone): Known {
  const parts = zone.slopes.map(({ index, slope }) => [grid.points[index]?.known ?? null, slope] as const);
  return madeBy(parts, zone.zone, isWhole(grid) ? [] : [readOf(grid)]);
}

/** A part of a face can show that it is too uneven, never that it is flat. */
export function ofPart(look: Look, quantity: string, known: Known, isAll: boolean, missing: string): Known {
  const high = look.high(quantity);
  return isAll || (high !== null && known.value !== null && known.value > high) ? known : unknown(missing);
}
