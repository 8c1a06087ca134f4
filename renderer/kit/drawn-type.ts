/** A casting type as the catalogue answers it, as the drawing wants it. */
import type { App } from '#core/app-contract.ts';
import type { DrawnType } from '#core/drawing/drawn-type.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type CastingTypeAnswer = OutputOf<App['operations/get-casting-type']>;

/** Counts, spots and water jacket; sizes of valves are the drawing's own. */
export const drawnTypeOf = (type: CastingTypeAnswer): DrawnType => ({
  kind: type.kind,
  counts: type.counts,
  waterJacket: type.waterJacket,
  spots: type.spots.map((spot) => ({ ...spot, side: spot.side ?? 'none' })),
});
