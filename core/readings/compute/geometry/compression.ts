/**
 * Compression: from volumes to a ratio and back. Volumes in millionths of a cubic centimetre, ratios in ten-thousandths.
 *
 * Exact mathematics: (swept + clearance) / clearance.
 */
import { wholeOf } from './whole.ts';

const ONE = 10_000;

/** A ratio with how it moves when one of its volumes moves by one; the slopes are for its doubt. */
export type Ratio = Readonly<{ ratio: number; perSwept: number; perClearance: number }>;

/** @returns null when nothing is left above the piston. */
export function ratioOf(swept: number, clearance: number): Ratio | null {
  if (clearance <= 0 || swept <= 0) return null;
  return {
    ratio: wholeOf(((swept + clearance) / clearance) * ONE),
    perSwept: ONE / clearance,
    perClearance: (-ONE * swept) / (clearance * clearance),
  };
}

/** The volume above the piston that makes a ratio; null for a ratio of one or less. */
export const clearanceFor = (swept: number, ratio: number): number | null =>
  ratio <= ONE ? null : wholeOf((swept * ONE) / (ratio - ONE));

/**
 * How far the piston stands below its highest place. Exact mathematics of crank and rod, no offset of the pin.
 *
 * @param turned from top dead centre, in millionths of a degree
 * @returns null when the rod is too short to turn
 */
export function pistonDown(stroke: number, rod: number, turned: number): number | null {
  const throwLength = stroke / 2;
  if (rod <= throwLength || throwLength <= 0) return null;
  const angle = (turned / 180_000_000) * Math.PI;
  const across = throwLength * Math.sin(angle);
  return wholeOf(throwLength + rod - throwLength * Math.cos(angle) - Math.sqrt(rod * rod - across * across));
}
