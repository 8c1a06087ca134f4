/**
 * What a formula is, and the arithmetic that formulas share. A formula sees one place and says what it makes of what was read
 * there; it never reads empty as zero.
 */
import { type Known, type Look, made } from '../look.ts';

/** @returns what is known, null when something is not measured yet. */
export type Formula = (look: Look) => Known | null;

/** Difference of two known figures; null when one is missing. */
export function difference(a: Known | null, b: Known | null): Known | null {
  if (a?.value == null || b?.value == null) return null;
  return made([a, b], a.value - b.value);
}

/** Largest less smallest of at least two figures. */
export function range(known: readonly Known[]): Known | null {
  const values = known.flatMap((it) => (it.value === null ? [] : [it.value]));
  return values.length < 2 ? null : made(extremes(known), Math.max(...values) - Math.min(...values));
}

/** The two figures that decide a range: only their doubt counts. */
function extremes(known: readonly Known[]): Known[] {
  const ordered = known.filter((it) => it.value !== null).toSorted((a, b) => (a.value ?? 0) - (b.value ?? 0));
  return [ordered.at(0), ordered.at(-1)].filter((it) => it !== undefined);
}

/** The figure with the greatest value; null for none. */
export const largest = (known: readonly (Known | null)[]): Known | null =>
  known.reduce<Known | null>(
    (most, it) => (it?.value != null && it.value > (most?.value ?? -Infinity) ? it : most),
    null,
  );
