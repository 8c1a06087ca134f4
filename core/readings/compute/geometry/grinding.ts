/**
 * What a slope does: stock taken square to a face, a width measured flat, the ring a sunk valve head leaves. Angles are counted
 * from the plane of the head, in millionths of a degree, above 0 and below 90; the caller sees to that.
 */
import { radiansOf, wholeOf } from './whole.ts';

/** Length along the axis of what is ground off square to a face at this angle: `n / cos`. */
export const axialOf = (stock: number, angle: number): number => wholeOf(stock / Math.cos(radiansOf(angle)));

/** Width along a seat of a width measured flat, `w / cos`. */
export const alongOf = (flat: number, angle: number): number => wholeOf(flat / Math.cos(radiansOf(angle)));

/** How much either of them changes with its length. */
export const slopeOfLength = (angle: number): number => 1 / Math.cos(radiansOf(angle));

/** How much either of them changes with one millionth of a degree, in the unit of the length. */
export function slopeOfAngle(length: number, angle: number): number {
  const radians = radiansOf(angle);
  return ((length * Math.sin(radians)) / Math.cos(radians) ** 2) * radiansOf(1);
}

/** Nanometres cubed in a millionth of a cubic centimetre. */
const CUBED = 1e15;

/** Volume a valve head leaves when it sinks, in millionths of a cubic centimetre: `pi / 4 d2 depth`. */
export const sunkVolume = (diameter: number, depth: number): number =>
  wholeOf(((Math.PI / 4) * diameter ** 2 * depth) / CUBED);

/** How much that volume changes with the depth and with the diameter. */
export const sunkSlopes = (diameter: number, depth: number) => ({
  depth: ((Math.PI / 4) * diameter ** 2) / CUBED,
  diameter: ((Math.PI / 2) * diameter * depth) / CUBED,
});
