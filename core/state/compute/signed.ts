/** Whether a casting is signed off, and how many signatures it needs. */
import type { SignOffFact } from './facts.ts';
import type { Known } from './live.ts';

/** Two when any done operation asks for two (mains, bores), else one. */
export const signaturesNeeded = (known: Known, castingId: number): 1 | 2 =>
  known.live.some((o) => o.castingId === castingId && o.finishedAt !== null && o.kind.twoSignatures) ? 2 : 1;

/** Signatures that stand: not taken back by reopening. */
export const signaturesOf = (known: Known, castingId: number): readonly SignOffFact[] =>
  known.facts.signOffs.filter((s) => s.castingId === castingId && !s.reopened);

export function isSigned(known: Known, castingId: number): boolean {
  const places = new Set(signaturesOf(known, castingId).map((s) => s.place));
  return places.has('first') && (signaturesNeeded(known, castingId) === 1 || places.has('second'));
}
