/**
 * What a place is called. A spot counts the cylinders of its own casting from the front; the label a person reads counts the
 * engine's, so that the right head of a V6 does not read 1-2-3. The place on the bench never changes with it.
 */

/** Where the casting sits in the engine, as kept on the casting. */
export type CastingPosition = 'left' | 'right' | 'front_bank' | 'rear_bank' | 'single' | 'not_known';

type Placed = Readonly<{ kind: string; label: string; cylinder: number | null }>;

/**
 * Cylinder number of the engine.
 *
 * @param numbering As in the engine type: `L:1,3,5,7 R:2,4,6,8` by bank front to back, or `1,2,3,4`.
 * @returns the casting's own number where the bank or the numbering is not known.
 */
export function engineCylinder(cylinder: number, numbering: string | null, position: CastingPosition): number {
  const bank = BANK[position];
  const found = bank && new RegExp(`\\b${bank}:([\\d,]+)`).exec(numbering ?? '');
  const number = Number(found?.[1]?.split(',')[cylinder - 1] ?? Number.NaN);
  return Number.isInteger(number) && number > 0 ? number : cylinder;
}

const BANK: Readonly<Partial<Record<CastingPosition, 'L' | 'R'>>> = {
  left: 'L',
  right: 'R',
  front_bank: 'L',
  rear_bank: 'R',
};

/** The label a person reads: `3E1` on the right head of a V6 numbered 4, 5, 6 is `6E1`. A block counts the engine already. */
export function engineLabel(
  spot: Placed,
  casting: Readonly<{ kind: string; position: CastingPosition }>,
  numbering: string | null,
): string {
  if (spot.cylinder === null || casting.kind !== 'head') return spot.label;
  const number = engineCylinder(spot.cylinder, numbering, casting.position);
  return spot.label.replace(new RegExp(`(^|^[A-Z])${spot.cylinder}(?!\\d)`), `$1${number}`);
}
