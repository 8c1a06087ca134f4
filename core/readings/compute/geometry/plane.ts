/**
 * Planes through heights that were read on jacks: the tilt means nothing and is taken out before anything is said of flatness.
 * x, y and z are figures of the caller's own; flatness comes out in the unit of z.
 */
import { leastSquares } from './least-squares.ts';

export type Height = Readonly<{ x: number; y: number; z: number }>;

/** z = a x + b y + c, what is left of each height, and greatest less smallest of that. */
export type Plane = Readonly<{ a: number; b: number; c: number; residuals: readonly number[]; flatness: number }>;

/** Greatest less smallest; 0 for none. */
export const spreadOf = (figures: readonly number[]): number =>
  figures.length === 0 ? 0 : Math.max(...figures) - Math.min(...figures);

function planeOf(points: readonly Height[], a: number, b: number, c: number): Plane {
  const residuals = points.map(({ x, y, z }) => z - a * x - b * y - c);
  return { a, b, c, residuals, flatness: spreadOf(residuals) };
}

/** The plane with the least sum of squares. Its flatness is never less than that of the two closest planes. */
export function leastSquaresPlane(points: readonly Height[]): Plane {
  const fit = leastSquares(
    [points.map(({ x }) => x), points.map(({ y }) => y)],
    points.map(({ z }) => z),
  );
  const [a = 0, b = 0] = fit.coefficients;
  return { a, b, c: fit.constant, residuals: fit.residuals, flatness: spreadOf(fit.residuals) };
}

/** The plane on three points, as a hand levels; null when they stand in one line. */
export function planeOnThree(points: readonly Height[], three: readonly [Height, Height, Height]): Plane | null {
  const [p, q, r] = three;
  const [ux, uy, uz] = [q.x - p.x, q.y - p.y, q.z - p.z];
  const [vx, vy, vz] = [r.x - p.x, r.y - p.y, r.z - p.z];
  const area = ux * vy - uy * vx;
  if (area === 0) return null;
  const a = (uz * vy - uy * vz) / area;
  const b = (ux * vz - uz * vx) / area;
  return planeOf(points, a, b, p.z - a * p.x - b * p.y);
}
