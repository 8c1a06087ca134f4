/**
 * The two closest parallel planes that hold every point: what a flatness tolerance means (from memory: ISO 1101, ISO 12781).
 * Heights are upright, not square to the plane; at the slopes of a face on jacks the difference is far below any gauge.
 *
 * Linear programme: least h - l with l <= z - a x - b y <= h for every point. It is solved from the other side, where a corner
 * of the programme is two weighted sets of points, one under the upper plane and one on the lower, that balance in the same
 * place: at most four points (three and one, or two and two). The simplex method goes from one such support to a better one
 * until no point lies outside its planes, which proves that they are the closest. Everything is whole numbers of any size, so
 * nothing is lost by rounding, equal heights are seen to be equal, and the rule of the lowest number (Bland) keeps it from
 * going round in circles where points stand in line, twice in one place or on a flat face.
 */
import { divideRounded } from '../../../kernel/units.ts';

/** All whole numbers; x and y in any unit, z in the unit of the answer. */
type WholePoint = Readonly<{ x: number; y: number; z: number }>;

export type MinimumZone = Readonly<{
  zone: number;
  /** Height of each point above the lower plane. */
  heights: readonly number[];
  /** Points that lie on the upper and on the lower plane, by index. On a flat face all of them lie on both. */
  upper: readonly number[];
  lower: readonly number[];
  /** How much the zone changes when a height changes by one: the few points that decide it. */
  slopes: readonly Readonly<{ index: number; slope: number }>[];
}>;

type Row = readonly bigint[];
/** A point under the upper plane (side 0) or on the lower (side 1). */
type Column = Readonly<{ index: number; side: 0 | 1; figures: Row; height: bigint }>;

/** Steps without progress after which the lowest number goes first. */
const PATIENCE = 8;

/**
 * @param points at least one
 * @throws RangeError when a figure is not whole
 */
export function minimumZone(points: readonly WholePoint[]): MinimumZone {
  const places = placesOf(points);
  const columns = points.flatMap(({ z }, index) => columnsOf(index, places[index] ?? [], z));
  let basis = firstBasis(columns, places);
  let stalled = 0;
  for (;;) {
    const state = solve(basis);
    const isStuck = stalled > PATIENCE;
    const entering = findEntering(columns, state, isStuck);
    if (!entering) return answer(columns, basis, state);
    const next = exchange(basis, state, entering);
    stalled = next.isBetter ? 0 : stalled + 1;
    basis = next.basis;
  }
}

/** Places from the first point, in the fewest directions that tell them apart (0, 1 or 2) and without a common factor. */
function placesOf(points: readonly WholePoint[]): Row[] {
  const [first] = points;
  if (!first) throw new RangeError('no points');
  const x = shorten(points.map((it) => BigInt(it.x) - BigInt(first.x)));
  const y = shorten(points.map((it) => BigInt(it.y) - BigInt(first.y)));
  const far = points.findIndex((_, i) => x[i] !== 0n || y[i] !== 0n);
  if (far < 0) return points.map(() => []);
  const isFlat = points.every((_, i) => (x[far] ?? 0n) * (y[i] ?? 0n) === (y[far] ?? 0n) * (x[i] ?? 0n));
  if (!isFlat) return points.map((_, i) => [x[i] ?? 0n, y[i] ?? 0n]);
  const along = x[far] === 0n ? y : x;
  return along.map((it) => [it]);
}

function shorten(figures: readonly bigint[]): bigint[] {
  const common = figures.reduce((a, b) => greatestCommon(a, b < 0n ? -b : b), 0n);
  return common > 1n ? figures.map((it) => it / common) : [...figures];
}

function greatestCommon(a: bigint, b: bigint): bigint {
  let [m, n] = [a, b];
  while (n > 0n) [m, n] = [n, m % n];
  return m;
}

const columnsOf = (index: number, place: Row, z: number): Column[] => [
  { index, side: 0, figures: [1n, 0n, ...place], height: BigInt(z) },
  { index, side: 1, figures: [0n, 1n, ...place.map((it) => -it)], height: -BigInt(z) },
];

/** The first point on both planes, and one point more for each direction, with no weight yet. */
function firstBasis(columns: readonly Column[], places: readonly Row[]): Column[] {
  const directions = places[0]?.length ?? 0;
  const basis = columns.slice(0, 2);
  for (const column of columns) {
    if (basis.length === directions + 2) break;
    if (column.side === 0 && isIndependent(basis, column)) basis.push(column);
  }
  return basis;
}

/** With one direction any other place will do; with two, the second must not stand in line with the first. */
function isIndependent(basis: readonly Column[], column: Column): boolean {
  const [x, y] = column.figures.slice(2);
  const other = basis[2]?.figures.slice(2);
  if (!other) return x !== 0n || (y !== undefined && y !== 0n);
  return (other[0] ?? 0n) * (y ?? 0n) !== (other[1] ?? 0n) * (x ?? 0n);
}

type State = Readonly<{
  /** Above 0; everything else here is over it. */
  under: bigint;
  inverse: readonly Row[];
  weights: Row;
  /** Upper height, less the lower height, slopes. */
  planes: Row;
}>;

const minor = (rows: readonly Row[], r: number, c: number): Row[] =>
  rows.filter((_, i) => i !== r).map((row) => row.filter((_, j) => j !== c));

function determinant(rows: readonly Row[]): bigint {
  const [first] = rows;
  if (!first) return 1n;
  if (first.length === 1) return first[0] ?? 0n;
  return first.reduce(
    (sum, it, c) => (it === 0n ? sum : sum + (c % 2 === 0 ? it : -it) * determinant(minor(rows, 0, c))),
    0n,
  );
}

const times = (a: Row, b: Row): bigint => a.reduce((sum, it, i) => sum + it * (b[i] ?? 0n), 0n);

/** Weights and planes of a support, by its whole-number inverse. */
function solve(basis: readonly Column[]): State {
  // Rows of the system are figures, its columns the points; the inverse is turned accordingly.
  const rows = basis.map((_, r) => basis.map((column) => column.figures[r] ?? 0n));
  const found = determinant(rows);
  const sign = found < 0n ? -1n : 1n;
  const inverse = basis.map((_, r) =>
    basis.map((__, c) => ((r + c) % 2 === 0 ? sign : -sign) * determinant(minor(rows, c, r))),
  );
  const heights = basis.map(({ height }) => height);
  return {
    under: found * sign,
    inverse,
    // The right side is one for each plane and nothing for the directions.
    weights: inverse.map((row) => (row[0] ?? 0n) + (row[1] ?? 0n)),
    planes: basis.map((_, c) =>
      times(
        heights,
        inverse.map((row) => row[c] ?? 0n),
      ),
    ),
  };
}

/** By how much a point lies outside the planes, over `under`; 0 or less: it does not. */
const outsideBy = (column: Column, { under, planes }: State): bigint =>
  column.height * under - times(column.figures, planes);

/** The point farthest outside, or the first one when there was no progress; undefined: the planes hold all of them. */
function findEntering(columns: readonly Column[], state: State, isFirst: boolean): Column | undefined {
  let most = 0n;
  let found: Column | undefined;
  for (const column of columns) {
    const outside = outsideBy(column, state);
    if (outside <= most) continue;
    if (isFirst) return column;
    most = outside;
    found = column;
  }
  return found;
}

const numberOf = ({ index, side }: Column): number => index * 2 + side;

/** Put a point in and take out the one whose weight reaches nothing first; of several, the one with the lowest number. */
function exchange(basis: readonly Column[], { inverse, weights }: State, entering: Column) {
  const moves = inverse.map((row) => times(row, entering.figures));
  let leaving = -1;
  for (const [r, move] of moves.entries()) {
    if (move <= 0n) continue;
    if (leaving < 0) leaving = r;
    else {
      const here = (weights[r] ?? 0n) * (moves[leaving] ?? 1n);
      const best = (weights[leaving] ?? 0n) * move;
      const isLower = here === best && numberAt(basis, r) < numberAt(basis, leaving);
      if (here < best || isLower) leaving = r;
    }
  }
  return {
    basis: basis.map((column, r) => (r === leaving ? entering : column)),
    isBetter: (weights[leaving] ?? 0n) > 0n,
  };
}

const numberAt = (basis: readonly Column[], r: number): number => {
  const column = basis[r];
  return column ? numberOf(column) : 0;
};

function answer(columns: readonly Column[], basis: readonly Column[], state: State): MinimumZone {
  const { under, weights, planes } = state;
  // h less l: the second figure is l with its sign turned.
  const zone = (planes[0] ?? 0n) + (planes[1] ?? 0n);
  const above = columns.filter(({ side }) => side === 1).map((column) => -outsideBy(column, state));
  const slopes = new Map<number, number>();
  for (const [r, { index, side }] of basis.entries()) {
    const weight = Number(weights[r] ?? 0n) / Number(under);
    slopes.set(index, (slopes.get(index) ?? 0) + (side === 0 ? weight : -weight));
  }
  return {
    zone: divideRounded(zone, under),
    heights: above.map((it) => divideRounded(it, under)),
    upper: above.flatMap((it, index) => (it === zone ? [index] : [])),
    lower: above.flatMap((it, index) => (it === 0n ? [index] : [])),
    slopes: [...slopes].flatMap(([index, slope]) => (slope === 0 ? [] : [{ index, slope }])),
  };
}
