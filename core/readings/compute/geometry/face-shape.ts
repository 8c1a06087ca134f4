/**
 * What shape a face has once its tilt is out: bowed or twisted. A bowl and a saddle are fitted to the heights, and how much of
 * the unevenness they account for says whether the shape has a name.
 */
import { leastSquares } from './least-squares.ts';
import type { Height } from './plane.ts';

export type FaceShape = Readonly<{
  /** How far the middle lies below the ends, along and across together; below 0: above them. */
  sag: number;
  /** How far two opposite corners stand above the other two. */
  twist: number;
  /** Share of what the tilt leaves that bowl and saddle account for, 0 to 1. */
  explained: number;
}>;

/** @param points x and y from -1 to 1 */
export function shapeOf(points: readonly Height[]): FaceShape {
  const z = points.map((it) => it.z);
  const columns = (of: readonly ((it: Height) => number)[]) => of.map((one) => points.map(one));
  const flat = leastSquares(columns([({ x }) => x, ({ y }) => y]), z);
  const shaped = leastSquares(
    columns([({ x }) => x, ({ y }) => y, ({ x }) => x * x, ({ y }) => y * y, ({ x, y }) => x * y]),
    z,
  );
  const [, , along = 0, across = 0, saddle = 0] = shaped.coefficients;
  const rest = squares(shaped.residuals);
  const all = squares(flat.residuals);
  return {
    sag: along * across >= 0 ? along + across : Math.abs(along) >= Math.abs(across) ? along : across,
    twist: 2 * Math.abs(saddle),
    explained: all === 0 ? 0 : 1 - rest / all,
  };
}

const squares = (figures: readonly number[]): number => figures.reduce((sum, it) => sum + it * it, 0);
