/**
 * What a cut changes on a V engine: the heads move down along their banks, and the ports no longer meet the manifold.
 * Lengths in nanometres, leans in millionths of a degree.
 *
 * Derived with the law of sines; for any V angle. Both heads are taken to be cut alike: different cuts tip the manifold.
 */
import { radiansOf, wholeOf } from './whole.ts';

/** How the engine lies. */
export type Vee = Readonly<{
  /** A bank from vertical: half the V angle. */
  bankLean: number;
  /** The intake face from square to the deck; below zero it leans the other way. */
  faceLean: number;
}>;

/** Faces lie as good as level below this: the cosine of about 87 degrees. */
const LEVEL = 0.05;

/**
 * What must come off so that the ports meet again.
 *
 * @param cut off each head and deck, and what the gasket is thinner
 * @returns off each intake face (square to it) and off the bottom of the manifold; null where milling cannot do it: faces that
 * lie level never come nearer by moving the manifold down
 */
export function intakeCorrection(cut: number, { bankLean, faceLean }: Vee): { face: number; bottom: number } | null {
  const across = Math.cos(radiansOf(bankLean + faceLean));
  if (across < LEVEL) return null;
  return {
    face: wholeOf((cut * Math.sin(radiansOf(bankLean))) / across),
    bottom: wholeOf((cut * Math.cos(radiansOf(faceLean))) / across),
  };
}

/** How far the ports drop along their face. */
export const portDrop = (cut: number, { faceLean }: Pick<Vee, 'faceLean'>): number =>
  wholeOf(cut * Math.cos(radiansOf(faceLean)));
