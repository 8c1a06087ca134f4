/** Sections through a dial grid: what a straightedge would show along each row and column and from corner to corner. */
import { type Face, faceQuantities } from '../../catalogue/compute/faces.ts';
import type { FaceGrid, GridRead } from './deck-grid.ts';
import { largest } from './formulas/formula.ts';
import { stripOf, worstInSpan } from './geometry/straightedge.ts';
import { wholeOf } from './geometry/whole.ts';
import { type Known, type Look, made } from './look.ts';

export type Section = Readonly<{
  code: string;
  kind: 'along' | 'across' | 'diagonal';
  /** Number of the row or column; 0 for a diagonal. */
  number: number;
  /** Read points from the first end to the last, and how many steps of the grid each lies from the first. */
  points: readonly Readonly<{ point: GridRead; t: number }>[];
  /** How many points the grid has on it. */
  places: number;
}>;

function sectionOf(
  grid: FaceGrid,
  kind: Section['kind'],
  code: string,
  number: number,
  places: number,
  test: (it: GridRead) => number | null,
): Section {
  const points = grid.points.flatMap((point) => {
    const t = test(point);
    return t === null ? [] : [{ point, t }];
  });
  return { code, kind, number, points: points.toSorted((a, b) => a.t - b.t), places };
}

const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));

/** Rows, columns and both diagonals with at least two points read. */
export function sectionsOf(grid: FaceGrid): Section[] {
  const { columns, rows } = grid;
  const along = Array.from({ length: rows }, (_, n) =>
    sectionOf(grid, 'along', `row-${n + 1}`, n + 1, columns, (it) => (it.row === n + 1 ? it.column - 1 : null)),
  );
  const across = Array.from({ length: columns }, (_, n) =>
    sectionOf(grid, 'across', `column-${n + 1}`, n + 1, rows, (it) => (it.column === n + 1 ? it.row - 1 : null)),
  );
  // A point lies on the line from corner to corner where its shares along and across are the same.
  const onDiagonal = (column: number, row: number) =>
    (column - 1) * (rows - 1) === (row - 1) * (columns - 1) ? column - 1 : null;
  const onIt = common(columns - 1, rows - 1) + 1;
  const diagonals = [
    sectionOf(grid, 'diagonal', 'diagonal-1', 0, onIt, (it) => onDiagonal(it.column, it.row)),
    sectionOf(grid, 'diagonal', 'diagonal-2', 0, onIt, (it) => onDiagonal(it.column, rows + 1 - it.row)),
  ];
  return [...along, ...across, ...diagonals].filter((it) => it.points.length >= 2);
}

export type Laid = Readonly<{
  gap: Known;
  rock: Known;
  worst: Known;
  word: 'hollow' | 'crowned' | 'flat';
  worstAt: string | null;
}>;

/** The straightedge laid on a section; null for fewer than three points. */
export function layOn(section: Section): Laid | null {
  const { points } = section;
  if (points.length < 3) return null;
  const strip = stripOf(points.map(({ point, t }) => ({ t, z: point.z })));
  const gap = knownAt(section, strip.gap, strip.gapAt);
  const rock = knownAt(section, strip.rock, strip.rockAt);
  const isHollow = strip.gap >= strip.rock;
  const at = isHollow ? strip.gapAt : strip.rockAt;
  return {
    gap,
    rock,
    worst: isHollow ? gap : rock,
    word: at < 0 ? 'flat' : isHollow ? 'hollow' : 'crowned',
    worstAt: points[at]?.point.code ?? null,
  };
}

/**
 * The doubt of one height against a straight line between two others: never more than that of two readings together, because
 * the two that carry the line share one.
 */
function knownAt({ points }: Pick<Section, 'points'>, value: number, at: number): Known {
  const own = points[at]?.point.known ?? points[0]?.point.known ?? null;
  const others = points.map(({ point }) => point.known);
  const isNamed = others.every((it) => it.uncertainty !== null);
  const doubtful = others.toSorted((a, b) => (b.uncertainty ?? 0) - (a.uncertainty ?? 0))[0] ?? null;
  const known = made([own, doubtful], wholeOf(value));
  return isNamed ? known : { ...known, uncertainty: null };
}

/** The worst of the sections of one kind; null when none has three points. */
export const worstAlong = (grid: FaceGrid, kind: Section['kind']): Known | null =>
  largest(
    sectionsOf(grid)
      .filter((it) => it.kind === kind)
      .map((it) => layOn(it)?.worst ?? null),
  );

export type SpanWorst = Readonly<{ known: Known; words: string; points: readonly string[]; isCovered: boolean }>;

/** Two lengths in nanometres that differ by rounding only. */
const SLACK = 100;

/**
 * The worst unevenness within a span along rows and columns. `isCovered` is false where the points of one direction stand too
 * far apart for three of them to lie in it.
 */
export function spanOf(
  grid: FaceGrid,
  sizes: Readonly<{ length: number; width: number; span: number }>,
): SpanWorst | null {
  const { length, width, span } = sizes;
  const straight = sectionsOf(grid).filter((it) => it.kind !== 'diagonal' && it.points.length >= 2);
  if (straight.length === 0) return null;
  let worst: Omit<SpanWorst, 'isCovered'> | null = null;
  let isCovered = true;
  for (const section of straight) {
    const pitch = section.kind === 'along' ? length / (grid.columns - 1) : width / (grid.rows - 1);
    const found = worstInSpan(
      section.points.map(({ point, t }) => ({ t: t * pitch, z: point.z })),
      span,
      SLACK,
    );
    if (!found) isCovered = false;
    else if (!worst || found.zone > (worst.known.value ?? 0)) {
      const within = section.points.slice(found.from, found.to + 1);
      worst = {
        known: knownAt({ points: within }, found.zone, 0),
        words: `${section.kind === 'along' ? 'along row' : 'across column'} ${section.number}`,
        points: within.map(({ point }) => point.code),
      };
    }
  }
  return worst && { ...worst, isCovered };
}

/** The span of the sheet laid over the grid; null while a length is not known or no span is given. */
export function spanAt(look: Look, face: Face, grid: FaceGrid): SpanWorst | null {
  const of = faceQuantities(face);
  const [length, width, span] = [of.length, of.width, of.spanLength].map((it) => look.figure(it)?.value ?? null);
  return length == null || width == null || span == null ? null : spanOf(grid, { length, width, span });
}
