/**
 * What the bench calls the shape of a face, and what hands do first. Words and steps are common practice, no source.
 *
 * Rule for a grid, in this order; F is the flatness (two closest planes):
 * 1. `flat`: F is no more than half a thou, which no feeler shows.
 * 2. Without one of the points that decide it F is no more than half: `low corner`, `local dip` or `high spot`.
 * 3. An end column or side row (of four or more) lies lower, and without it F is no more than a third: `step`.
 * 4. Bowl and saddle account for half of the unevenness or more: `twisted` where the saddle is the greater, else `hollow`
 *    (middle low) or `crowned` (middle high).
 * 5. Else `uneven`.
 *
 * Rule for straightedge lines: `flat` below the same half thou; `twisted` where one diagonal gaps twice as much as the other;
 * else the place of the worst line.
 */
import type { GapPlace } from '../../catalogue/compute/faces.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import { saidOf } from './deck-figures.ts';
import { type FaceGrid, FEWEST_POINTS, type GridRead } from './deck-grid.ts';
import type { Pattern, PatternWord } from './deck-survey-model.ts';
import { shapeOf } from './geometry/face-shape.ts';
import { type MinimumZone, minimumZone } from './geometry/minimum-zone.ts';
import { wholeOf } from './geometry/whole.ts';

/** 0.0005 in, the thinnest step of feelers. */
export const NO_FEELER_SHOWS = 12_700;

const STEPS: Readonly<Record<PatternWord, readonly string[]>> = {
  flat: [],
  hollow: [],
  crowned: ['Lift the straightedge: does it rock on a burr or on dirt?'],
  twisted: ['Clamped or standing on four points? Read it again on three.'],
  'low corner': ['Wear, corrosion or an old hand-held grinder: look before cutting.'],
  step: ['A worn land or an edge of an old cut: run a nail over it.'],
  'local dip': ['A pit, a fire-ring groove or weld between chambers: measure its depth.'],
  'high spot': ['A burr, dirt or a dowel: stone the face and read again.'],
  uneven: ['Clean, stone and read again before anything is cut.'],
};

const pattern = (word: PatternWord, because: string): Pattern => ({ word, because, steps: STEPS[word] });

/** Whether a few points account for the unevenness: what is left without them. */
function zoneWithout(grid: FaceGrid, out: (point: GridRead) => boolean): number | null {
  const rest = grid.points.filter((it) => !out(it));
  return rest.length < FEWEST_POINTS
    ? null
    : minimumZone(rest.map(({ column, row, z }) => ({ x: column, y: row, z }))).zone;
}

const isCorner = ({ columns, rows }: FaceGrid, { column, row }: GridRead): boolean =>
  (column === 1 || column === columns) && (row === 1 || row === rows);

function onePoint(grid: FaceGrid, zone: MinimumZone, unit: UnitCode): Pattern | null {
  // Without any other point the zone is what it was: these few hold it open.
  const found = zone.slopes.flatMap(({ index, slope }) => {
    const point = grid.points[index];
    const rest = point && zoneWithout(grid, (it) => it === point);
    return point && rest != null ? [{ point, rest, isLow: slope < 0 }] : [];
  });
  const least = found.toSorted((a, b) => a.rest - b.rest)[0];
  if (!least || least.rest * 2 > zone.zone) return null;
  const { point, rest, isLow } = least;
  const word = isLow ? (isCorner(grid, point) ? 'low corner' : 'local dip') : 'high spot';
  return pattern(word, `without column ${point.column}, row ${point.row} it is flat to ${saidOf(rest, unit)}`);
}

const mean = (figures: readonly number[]): number => figures.reduce((sum, it) => sum + it, 0) / figures.length;

function lowEdge(grid: FaceGrid, zone: MinimumZone, unit: UnitCode): Pattern | null {
  const edges = [
    ...(grid.columns >= 4
      ? [1, grid.columns].map((n) => ({ words: `column ${n}`, is: (it: GridRead) => it.column === n }))
      : []),
    ...(grid.rows >= 4 ? [1, grid.rows].map((n) => ({ words: `row ${n}`, is: (it: GridRead) => it.row === n })) : []),
  ];
  for (const { words, is } of edges) {
    const rest = zoneWithout(grid, is);
    if (rest === null || rest * 3 > zone.zone) continue;
    const heights = grid.points.map((it, n) => ({ isEdge: is(it), height: zone.heights[n] ?? 0 }));
    const of = (isEdge: boolean) => mean(heights.filter((it) => it.isEdge === isEdge).map((it) => it.height));
    if (of(true) < of(false)) return pattern('step', `without ${words} it is flat to ${saidOf(rest, unit)}`);
  }
  return null;
}

function bowedOrTwisted(grid: FaceGrid, unit: UnitCode): Pattern {
  const from = (n: number, most: number) => (2 * (n - 1)) / (most - 1) - 1;
  const shape = shapeOf(
    grid.points.map(({ column, row, z }) => ({ x: from(column, grid.columns), y: from(row, grid.rows), z })),
  );
  if (shape.explained < 0.5) return pattern('uneven', 'neither bowed nor twisted as a whole');
  const said = (figure: number) => saidOf(wholeOf(Math.abs(figure)), unit);
  if (shape.twist > Math.abs(shape.sag))
    return pattern('twisted', `opposite corners differ by about ${said(shape.twist)}`);
  return shape.sag > 0
    ? pattern('hollow', `the middle lies about ${said(shape.sag)} below the ends`)
    : pattern('crowned', `the middle stands about ${said(shape.sag)} above the ends`);
}

/** The shape of a grid with its zone. */
export function patternOfGrid(grid: FaceGrid, zone: MinimumZone, unit: UnitCode): Pattern {
  if (zone.zone <= NO_FEELER_SHOWS) return pattern('flat', `within ${saidOf(NO_FEELER_SHOWS, unit)}`);
  return onePoint(grid, zone, unit) ?? lowEdge(grid, zone, unit) ?? bowedOrTwisted(grid, unit);
}

export type LineRead = Readonly<{
  code: string;
  words: string;
  kind: 'along' | 'across' | 'diagonal';
  gap: number;
  place: GapPlace | null;
}>;

const BY_PLACE: Readonly<Record<GapPlace, PatternWord>> = {
  middle: 'hollow',
  'both ends, it rocks': 'crowned',
  'one end': 'low corner',
  'at the edge': 'step',
  'one spot': 'local dip',
};

/** The shape by straightedge; null where no line was laid, or nobody wrote where the worst one gaps. */
export function patternOfLines(lines: readonly LineRead[]): Pattern | null {
  const worst = lines.toSorted((a, b) => b.gap - a.gap)[0];
  if (!worst) return null;
  if (worst.gap <= NO_FEELER_SHOWS) return pattern('flat', 'no feeler goes under');
  const corners = lines.filter(({ kind }) => kind === 'diagonal').map(({ gap }) => gap);
  if (corners.length === 2 && Math.max(...corners) > 2 * Math.min(...corners) && worst.kind === 'diagonal')
    return pattern('twisted', 'the diagonals disagree');
  return worst.place === null ? null : pattern(BY_PLACE[worst.place], `${worst.words}: ${worst.place}`);
}
