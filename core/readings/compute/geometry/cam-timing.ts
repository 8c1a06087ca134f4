/**
 * What moving an overhead cam nearer to its crank does to its timing. Lengths in nanometres, angles in millionths of a degree.
 *
 * Exact to first order for two sprockets whose head moves along the line between them: what the chain wraps changes by as much
 * on both and cancels. Not for a guide or tensioner in the pulling run, for gears, nor for a run that is not parallel.
 */
import { wholeOf } from './whole.ts';

export type CamDrive = Readonly<{
  /** Pitch diameter of the cam sprocket. */
  cam: number;
  /** Pitch diameter of the crank sprocket, and the distance between both centres; null for the quick form. */
  other: Readonly<{ crank: number; centres: number }> | null;
}>;

/**
 * How late the cam comes.
 *
 * @param drop how much nearer the cam is to the crank; below zero it comes early
 * @returns in degrees of cam and of crank, and how the cam's angle moves per nanometre; null for sizes that cannot be
 */
export function camRetard(
  drop: number,
  { cam, other }: CamDrive,
): Readonly<{ cam: number; crank: number; perDrop: number }> | null {
  const sine = other === null ? 0 : (cam - other.crank) / 2 / other.centres;
  if (cam <= 0 || !(Math.abs(sine) < 1)) return null;
  const perDrop = ((180_000_000 / Math.PI) * Math.sqrt(1 - sine * sine)) / (cam / 2);
  return { cam: wholeOf(perDrop * drop), crank: wholeOf(2 * perDrop * drop), perDrop };
}
