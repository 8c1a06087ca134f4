/**
 * Quantities that are read at several points: which were read, which are missing, and what may be said while some are.
 *
 * A range or a greatest error only grows with more readings. While some are missing it is said only when it is past its limit
 * already; otherwise nobody knows yet, and a missing reading is never a pass.
 */
import { findQuantity } from '../../../catalogue/compute/quantities.ts';
import { type Known, type Look, unknown } from '../look.ts';

export type PointRead = Readonly<{ code: string; words: string; known: Known; value: number }>;

/** @property missing words of the points that must be read and are not, in their order. */
export type PointsRead = Readonly<{ read: readonly PointRead[]; missing: readonly string[] }>;

/**
 * What was read of a quantity at this place and stage.
 *
 * @param optional Points that are nice to have: counted when read, never missed.
 */
export function readPoints(look: Look, quantity: string, optional: readonly string[] = []): PointsRead {
  const read: PointRead[] = [];
  const missing: string[] = [];
  for (const { code, words } of findQuantity(quantity)?.points ?? []) {
    const known = look.value(quantity, { point: code });
    if (known?.value != null) read.push({ code, words, known, value: known.value });
    else if (!optional.includes(code) && !look.isDash(quantity, { point: code })) missing.push(words);
  }
  return { read, missing };
}

/** Beyond a limit in force, whatever is read later. */
function isPast(look: Look, quantity: string, value: number): boolean {
  const [low, high] = [look.low(quantity), look.high(quantity)];
  return (high !== null && value > high) || (low !== null && value < low);
}

/**
 * A figure that grows with each reading, as far as it may be said.
 *
 * @param missing Words of what is not read yet.
 * @returns null when nothing was read at all.
 */
export function asFarAsRead(
  look: Look,
  quantity: string,
  known: Known | null,
  missing: readonly string[],
): Known | null {
  if (missing.length === 0) return known;
  const words = `not measured: ${missing.join('; ')}`;
  if (known?.value != null && isPast(look, quantity, known.value)) {
    return { ...known, marks: [...known.marks, `at least this much; ${words}`] };
  }
  return unknown(words);
}

/** Named apart so that a place where nothing was read stays empty instead of listing everything. */
export const unlessEmpty = ({ read }: PointsRead, known: () => Known | null): Known | null =>
  read.length === 0 ? null : known();

/** Largest and smallest by value; the first of equals. Undefined for none. */
export const most = (read: readonly PointRead[]): PointRead | undefined =>
  read.reduce<PointRead | undefined>(
    (best, it) => (best === undefined || it.value > best.value ? it : best),
    undefined,
  );
export const least = (read: readonly PointRead[]): PointRead | undefined =>
  read.reduce<PointRead | undefined>(
    (best, it) => (best === undefined || it.value < best.value ? it : best),
    undefined,
  );
