/** A casting type as the catalogue answers it, as the drawing wants it. */
import type { App } from '#core/app-contract.ts';
import { type CastingPosition, engineLabel } from '#core/catalogue/compute/spot-labels.ts';
import type { DrawnType } from '#core/drawing/drawn-type.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type CastingTypeAnswer = OutputOf<App['operations/get-casting-type']>;

/** Where a casting sits in its engine: its places are called as the engine counts. */
export type Seat = Readonly<{ position: CastingPosition; numbering: string | null }>;

/** Counts, spots and water jacket; sizes of valves are the drawing's own. Without a seat the casting counts for itself. */
export const drawnTypeOf = (type: CastingTypeAnswer, seat?: Seat): DrawnType => ({
  kind: type.kind,
  counts: type.counts,
  waterJacket: type.waterJacket,
  spots: spotsIn(type, seat).map((spot) => ({ ...spot, side: spot.side ?? 'none' })),
});

/** The spots with the labels that a person reads on this casting. */
export const spotsIn = (type: CastingTypeAnswer, seat?: Seat): CastingTypeAnswer['spots'] =>
  seat
    ? type.spots.map((spot) => ({
        ...spot,
        label: engineLabel(spot, { kind: type.kind, position: seat.position }, seat.numbering),
      }))
    : type.spots;
