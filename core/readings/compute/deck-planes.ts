/** The planes laid through a dial grid, and its sections, as the screen shows them. */
import { type Face, gridCode } from '../../catalogue/compute/faces.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import { figureOf, saidOf } from './deck-figures.ts';
import { type FaceGrid, isWhole, readOf, zoneKnown } from './deck-grid.ts';
import { layOn, type Section, type SpanWorst, sectionsOf } from './deck-sections.ts';
import type { Figure, GridPlanes, GridSection } from './deck-survey-model.ts';
import type { MinimumZone } from './geometry/minimum-zone.ts';
import { type Height, leastSquaresPlane, planeOnThree } from './geometry/plane.ts';
import { wholeOf } from './geometry/whole.ts';
import { type Known, made } from './look.ts';

/** Grid places as the planes count them. */
const heightsOf = ({ points }: FaceGrid): Height[] => points.map(({ column, row, z }) => ({ x: column, y: row, z }));

/** Never more doubtful than two readings together: greatest less smallest of heights over one plane. */
function spreadKnown(grid: FaceGrid, value: number): Known {
  const doubtful = grid.points.map((it) => it.known).toSorted((a, b) => (b.uncertainty ?? 0) - (a.uncertainty ?? 0));
  const isNamed = doubtful.every((it) => it.uncertainty !== null);
  const known = made(doubtful.slice(0, 2), wholeOf(value), isWhole(grid) ? [] : [readOf(grid)]);
  return isNamed ? known : { ...known, uncertainty: null };
}

/** Flatness over three corners, as a hand levels; the first choice leaves out the rear corner of the second side. */
export function cornersOf(
  grid: FaceGrid,
  face: Face,
): readonly Readonly<{ words: string; points: readonly string[]; known: Known }>[] {
  const { columns, rows } = grid;
  const heights = heightsOf(grid);
  const [one, two] = face.sides;
  const all = [
    { words: `front ${one}`, column: 1, row: 1 },
    { words: `rear ${one}`, column: columns, row: 1 },
    { words: `front ${two}`, column: 1, row: rows },
    { words: `rear ${two}`, column: columns, row: rows },
  ].map((it) => ({ ...it, height: heights.find(({ x, y }) => x === it.column && y === it.row) }));
  return [3, 2, 1, 0].flatMap((left) => {
    const kept = all.filter((_, n) => n !== left);
    const [p, q, r] = kept.map((it) => it.height);
    const plane = p && q && r ? planeOnThree(heights, [p, q, r]) : null;
    if (!plane) return [];
    return [
      {
        words: kept.map((it) => it.words).join(', '),
        points: kept.map(({ column, row }) => gridCode(column, row)),
        known: spreadKnown(grid, plane.flatness),
      },
    ];
  });
}

const leastSquaresOf = (grid: FaceGrid): Known => spreadKnown(grid, leastSquaresPlane(heightsOf(grid)).flatness);

function tiltWords(grid: FaceGrid, face: Face, unit: UnitCode): string {
  const { a, b } = leastSquaresPlane(heightsOf(grid));
  const [alongBy, acrossBy] = [wholeOf(a * (grid.columns - 1)), wholeOf(b * (grid.rows - 1))];
  const said = (words: string, by: number) => `${words} ${saidOf(Math.abs(by), unit)} ${by < 0 ? 'lower' : 'higher'}`;
  return `${said('rear', alongBy)}, ${said(face.sides[1], acrossBy)}`;
}

function sectionWords({ kind, number, code }: Section, { rows }: FaceGrid, face: Face): string {
  if (kind === 'diagonal') return code === 'diagonal-1' ? 'Corner to corner' : 'The other corners';
  if (kind === 'across') return `Across column ${number}`;
  if (number === 1) return `Along, ${face.sides[0]}`;
  if (number === rows) return `Along, ${face.sides[1]}`;
  return number * 2 === rows + 1 ? 'Along, middle' : `Along row ${number}`;
}

/** Points of a section less the straight line from its first to its last. */
function profileOf({ points, places }: Section, stride: number): GridSection['points'] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return [];
  const slope = last.t === first.t ? 0 : (last.point.z - first.point.z) / (last.t - first.t);
  return points.map(({ point, t }) => ({
    code: point.code,
    at: t / ((places - 1) * stride),
    height: wholeOf(point.z - first.point.z - slope * (t - first.t)),
  }));
}

/** Sections with what a straightedge would show on them; those with fewer than three points are left out. */
function shownSections(grid: FaceGrid, face: Face, unit: UnitCode): readonly GridSection[] {
  return sectionsOf(grid).flatMap((section) => {
    const laid = layOn(section);
    if (!laid) return [];
    const { code, kind, number } = section;
    // Along a diagonal a place comes only every few columns.
    const stride = kind === 'diagonal' ? (grid.columns - 1) / (section.places - 1) : 1;
    return [
      {
        code,
        kind,
        words: sectionWords(section, grid, face),
        isMiddle: kind === 'along' && number === Math.ceil(grid.rows / 2),
        points: profileOf(section, stride),
        gap: figureOf(laid.gap, unit),
        rock: figureOf(laid.rock, unit),
        worst: figureOf(laid.worst, unit),
        word: laid.word,
        worstAt: laid.worstAt,
      },
    ];
  });
}

type Asked = Readonly<{
  grid: FaceGrid;
  face: Face;
  unit: UnitCode;
  zone: MinimumZone;
  span: Readonly<{ worst: SpanWorst; length: Figure }> | null;
}>;

/** Everything said of a grid of four points or more. */
export function planesOf({ grid, face, unit, zone, span }: Asked): GridPlanes {
  const z = grid.points.map((it) => it.z);
  const codes = (indices: readonly number[]) => indices.flatMap((n) => grid.points[n]?.code ?? []);
  const meanStock = zone.heights.reduce((sum, it) => sum + it, 0) / zone.heights.length;
  const isFlat = zone.zone === 0;
  return {
    read: grid.points.length,
    wanted: grid.wanted,
    rawSpread: figureOf(spreadKnown(grid, Math.max(...z) - Math.min(...z)), unit),
    zone: figureOf(zoneKnown(grid, zone), unit),
    leastSquares: figureOf(leastSquaresOf(grid), unit),
    tiltWords: tiltWords(grid, face, unit),
    upper: isFlat ? [] : codes(zone.upper),
    lower: isFlat ? [] : codes(zone.lower),
    corners: cornersOf(grid, face).map(({ known, ...rest }) => ({ ...rest, flatness: figureOf(known, unit) })),
    meanStock: figureOf(spreadKnown(grid, meanStock), unit),
    span: span && {
      length: span.length,
      worst: figureOf(span.worst.known, unit),
      words: span.worst.words,
      points: span.worst.points,
    },
    sections: shownSections(grid, face, unit),
  };
}
