/**
 * The height of a surface between the points where it was read, as filled bands and contour lines.
 *
 * Between four neighbours the surface is taken as the simplest one through them (bilinear): the picture adds no bump and no
 * hollow that nobody measured. Where one of the four is missing nothing is drawn. Pure and browser-safe; only for looking
 * at, no figure comes from here.
 */

/** A rectangle in drawing units. */
export type Frame = Readonly<{ left: number; top: number; width: number; height: number }>;

/**
 * Heights row by row from the top of the picture, each row from its left; null where nothing was read.
 * At least two columns and two rows make a surface.
 */
export type HeightGrid = Readonly<{ columns: number; heights: readonly (number | null)[] }>;

/** Heights from `from` up to `to` and where they lie, as SVG path text (M, L, Z); empty when nowhere. */
export type Band = Readonly<{ from: number; to: number; d: string }>;

type Corner = readonly [x: number, y: number, z: number];
type Cell = readonly [Corner, Corner, Corner, Corner];

/** Smaller squares a cell is cut into, each way. */
const STEPS = 6;
/** Smallest step between levels that is told apart from no slope at all. */
const LEAST = 1e-9;

/** Bands between neighbouring levels, lowest first; what lies below the first level or above the last is in the end bands. */
export function reliefBands(grid: HeightGrid, levels: readonly number[], frame: Frame): Band[] {
  const triangles = cellsOf(grid, frame).flatMap(trianglesOf);
  return levels.slice(1).map((to, n) => {
    const from = levels[n] ?? to;
    const low = n === 0 ? Number.NEGATIVE_INFINITY : from;
    const high = n === levels.length - 2 ? Number.POSITIVE_INFINITY : to;
    return { from, to, d: triangles.map((corners) => polygonOf(between(corners, low, high))).join('') };
  });
}

/** The line along which the surface stands at this height, as SVG path text (M, L); empty when nowhere. */
export function contourLine(grid: HeightGrid, level: number, frame: Frame): string {
  return cellsOf(grid, frame)
    .flatMap(trianglesOf)
    .map((corners) => {
      const cut = crossings(corners, level);
      return cut.length === 2 ? pathOf(cut) : '';
    })
    .join('');
}

/** Round heights from `low` to `high` with at most `most` bands between: a step of 1, 2 or 5 with zeros, in `unit`. */
export function levelsBetween(low: number, high: number, unit: number, most = 6): number[] {
  const height = Math.max(high - low, 0);
  if (height < LEAST) return [low, low + unit];
  let step = unit;
  for (let n = 0; Math.ceil(height / step - LEAST) > most; n += 1) step *= n % 3 === 1 ? 2.5 : 2;
  const count = Math.max(1, Math.ceil(height / step - LEAST));
  return Array.from({ length: count + 1 }, (_, n) => low + n * step);
}

function cellsOf({ columns, heights }: HeightGrid, frame: Frame): Cell[] {
  const rows = Math.floor(heights.length / columns);
  if (columns < 2 || rows < 2) return [];
  const corner = (column: number, row: number): Corner | null => {
    const z = heights[row * columns + column];
    if (z === null || z === undefined) return null;
    return [frame.left + (frame.width * column) / (columns - 1), frame.top + (frame.height * row) / (rows - 1), z];
  };
  const cells: Cell[] = [];
  for (let row = 0; row < rows - 1; row += 1) {
    for (let column = 0; column < columns - 1; column += 1) {
      const [a, b, c, d] = [
        corner(column, row),
        corner(column + 1, row),
        corner(column + 1, row + 1),
        corner(column, row + 1),
      ];
      if (a && b && c && d) cells.push([a, b, c, d]);
    }
  }
  return cells;
}

type Triangle = readonly [Corner, Corner, Corner];

function trianglesOf(cell: Cell): Triangle[] {
  const [a, , c] = cell;
  const at = (u: number, v: number): Corner => [
    a[0] + (c[0] - a[0]) * u,
    a[1] + (c[1] - a[1]) * v,
    heightIn(cell, u, v),
  ];
  const triangles: Triangle[] = [];
  for (let row = 0; row < STEPS; row += 1) {
    for (let column = 0; column < STEPS; column += 1) {
      const [u0, v0, u1, v1] = [column, row, column + 1, row + 1].map((n) => n / STEPS) as [
        number,
        number,
        number,
        number,
      ];
      const [p, q, r, s] = [at(u0, v0), at(u1, v0), at(u1, v1), at(u0, v1)];
      triangles.push([p, q, r], [p, r, s]);
    }
  }
  return triangles;
}

const heightIn = ([a, b, c, d]: Cell, u: number, v: number): number =>
  a[2] * (1 - u) * (1 - v) + b[2] * u * (1 - v) + c[2] * u * v + d[2] * (1 - u) * v;

/** The part of a flat piece whose height lies between the two. */
const between = (corners: readonly Corner[], low: number, high: number): Corner[] =>
  clip(
    clip(corners, (z) => z - low),
    (z) => high - z,
  );

/** The part where `over` is not below zero. */
function clip(corners: readonly Corner[], over: (z: number) => number): Corner[] {
  const kept: Corner[] = [];
  corners.forEach((here, n) => {
    const before = corners[(n + corners.length - 1) % corners.length] ?? here;
    const [hereOver, beforeOver] = [over(here[2]), over(before[2])];
    if (hereOver >= 0 !== beforeOver >= 0) kept.push(along(before, here, beforeOver / (beforeOver - hereOver)));
    if (hereOver >= 0) kept.push(here);
  });
  return kept;
}

/** Where a level crosses the sides; two places, or none. */
function crossings(corners: Triangle, level: number): Corner[] {
  return corners.flatMap((here, n) => {
    const before = corners[(n + 2) % 3] ?? here;
    const [a, b] = [before[2] - level, here[2] - level];
    return a >= 0 === b >= 0 ? [] : [along(before, here, a / (a - b))];
  });
}

const along = (a: Corner, b: Corner, share: number): Corner => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
];

const place = ([x, y]: Corner): string => `${Math.round(x)} ${Math.round(y)}`;
const pathOf = (corners: readonly Corner[]): string => `M${corners.map(place).join('L')}`;
/** Nothing for what shrank to a line. */
function polygonOf(corners: readonly Corner[]): string {
  const places = new Set(corners.map(place));
  return places.size < 3 ? '' : `${pathOf(corners)}Z`;
}
