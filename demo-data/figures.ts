/** Turns the decimal texts of the practice files into the program's whole numbers; exact, without floats. */
import { isUnitCode, measureOf } from '#core/kernel/measure-units.ts';
import { nanometres } from '#core/kernel/units.ts';

/** `"295.00"` with 2 digits becomes 29500. @throws RangeError when the text is no decimal, or finer than that. */
function wholeOf(text: string, digits: number): number {
  const found = /^([+-]?)(\d+)(?:\.(\d+))?$/.exec(text.trim());
  const decimals = found?.[3] ?? '';
  if (!found || decimals.length > digits) throw new RangeError(`not a decimal with ${digits} digits: ${text}`);
  const size = Number(`${found[2]}${decimals.padEnd(digits, '0')}`);
  return found[1] === '-' ? -size : size;
}

export const centsOf = (text: string): number => wholeOf(text, 2);
export const priceOf = (text: string): number => wholeOf(text, 4);
/** Percent to basis points. */
export const percentOf = (text: string): number => wholeOf(text, 2);
export const factorOf = (text: string): number => wholeOf(text, 4);
export const gramsOf = (kilograms: number | string): number => wholeOf(String(kilograms), 3);

type Size = Readonly<{ value: string; unit: string }>;

/** A length with its unit to nanometres; null stays null. */
export function lengthOf(size: Size | null): number | null {
  if (size === null) return null;
  if (!isUnitCode(size.unit)) throw new RangeError(`no such unit: ${size.unit}`);
  return nanometres(measureOf(size.value, size.unit));
}
