/**
 * The cut-off of a profilometer by the Ra that is expected, and the length it is read over: five cut-offs.
 *
 * For faces without a repeating mark. ISO 4288:1996, table for Ra; replaced by ISO 21920-3, whose Ra rows are the same as read.
 */

/** Expected Ra up to this, in picometres, and the cut-off in nanometres. */
const ROWS: readonly (readonly [upTo: number, cutOff: number])[] = [
  [20_000, 80_000],
  [100_000, 250_000],
  [2_000_000, 800_000],
  [10_000_000, 2_500_000],
  [80_000_000, 8_000_000],
];

const SAMPLES = 5;

/** @returns lengths in nanometres; null for no roughness at all, or one above the table. */
export function cutOffFor(ra: number): Readonly<{ cutOff: number; evaluation: number }> | null {
  const row = ra > 0 ? ROWS.find(([upTo]) => ra <= upTo) : undefined;
  return row ? { cutOff: row[1], evaluation: SAMPLES * row[1] } : null;
}
