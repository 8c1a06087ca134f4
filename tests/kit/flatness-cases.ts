/** Point sets with known flatness, from tests/reference/flatness-and-plane.json, as whole numbers where a test wants them. */
import { readFileSync } from 'node:fs';
import type { Height } from '#core/readings/compute/geometry/plane.ts';

type Case = Readonly<{
  id: string;
  points_xyz: readonly (readonly [number, number, number])[];
  expected: Readonly<{ ls_plane_a_b_c: readonly [number, number, number]; ls_flatness: number; minimum_zone: number }>;
  how: string;
  theory?: number;
}>;

const file = JSON.parse(
  readFileSync(new URL('../reference/flatness-and-plane.json', import.meta.url), 'utf8'),
) as Readonly<{
  cases: readonly Case[];
  strd_pontius: Readonly<{
    data_load_deflection: readonly (readonly [number, number])[];
    certified: Readonly<{ b0: number; b1: number; b2: number; residual_sd: number; residual_ss: number }>;
  }>;
}>;

export const FLATNESS_CASES = file.cases.map((it) => ({
  ...it,
  source: it.theory === undefined ? `numpy and scipy: ${it.how}` : `Chebyshev alternation theorem: ${it.how}`,
  points: it.points_xyz.map(([x, y, z]): Height => ({ x, y, z })),
}));

export const PONTIUS = file.strd_pontius;

/** Millionths in x and y, thousand-millionths in z: every figure of the file is whole then. */
export const Z_SCALE = 1e9;
export const whole = (points: readonly Height[]): Height[] =>
  points.map(({ x, y, z }) => ({ x: Math.round(x * 1e6), y: Math.round(y * 1e6), z: Math.round(z * Z_SCALE) }));

/** Worked grid of a head 18 x 6 in, tenths of a thou; columns 4.5 in, rows 3 in apart. Invented; results exact mathematics. */
export const WORKED_GRID = [
  [0, -28, -40, -26, 6],
  [-6, -36, -52, -34, -2],
  [-8, -38, -50, -30, 8],
] as const;

export const workedPoints = (): Height[] =>
  WORKED_GRID.flatMap((row, r) => row.map((z, c): Height => ({ x: c * 4.5, y: r * 3, z })));
