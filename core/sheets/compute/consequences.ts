/**
 * What a cut changes on a V engine: the heads move down along their banks, and the ports no longer meet the manifold.
 *
 * Both heads are taken to be cut alike; different cuts tip the manifold.
 */

/** How the engine lies, in millionths of a degree. */
export type Vee = Readonly<{
  /** A bank from vertical: half the V angle. */
  bankLean: number;
  /** The intake face from square to the deck. */
  faceLean: number;
}>;

/**
 * What must come off so that the ports meet again, derived with the law of sines.
 *
 * @param cut off each head, in nanometres
 * @returns off each intake face (square to it) and off the bottom of the manifold; null where milling cannot do it
 */
export function intakeCorrection(cut: number, { bankLean, faceLean }: Vee): { face: number; bottom: number } | null {
  const across = Math.cos(radians(bankLean + faceLean));
  // Faces that lie level never come nearer by moving the manifold down.
  if (across < 0.05) return null;
  return {
    face: Math.round((cut * Math.sin(radians(bankLean))) / across),
    bottom: Math.round((cut * Math.cos(radians(faceLean))) / across),
  };
}

const radians = (microdegrees: number): number => (microdegrees / 180_000_000) * Math.PI;
