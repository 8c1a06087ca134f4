/** Uncertainties as text: exact where the unit can say them, else rounded up, so that none looks smaller than it is. */
import { showExact } from '../../kernel/measure-show.ts';
import { fromBaseExactly, type UnitCode, unitShape } from '../../kernel/measure-units.ts';

/** Finest text of a figure in any unit. */
const MOST_DECIMALS = 6;

/**
 * `0.0001` exactly; `0.00015` for 0.000 141 4 with two digits.
 *
 * @param digits significant ones that are kept where it is not exact
 * @returns null for units with a zero of their own (temperatures): a doubt is a difference
 */
export function showDoubt(doubt: number, unit: UnitCode, digits = 2): string | null {
  const shape = unitShape(unit);
  if (shape.zero) return null;
  const exact = showExact(doubt, unit, 0);
  const { over, under } = fromBaseExactly(doubt, unit);
  if (isSame(exact, over, under) && significant(exact) <= MOST_SIGNIFICANT) return exact;
  const before = (over / under).toString().length;
  const decimals =
    over >= under ? Math.max(digits - before, 0) : Math.min(zerosAfterPoint(over, under) + digits, MOST_DECIMALS);
  const scale = 10n ** BigInt(decimals);
  const steps = (over * scale + under - 1n) / under;
  return decimals === 0 ? steps.toString() : pointed(steps, decimals);
}

/** What a person writes into a gauge's card. */
const MOST_SIGNIFICANT = 3;

const significant = (text: string): number => text.replace('.', '').replace(/^0+/, '').length;

const isSame = (text: string, over: bigint, under: bigint): boolean => {
  const decimals = (text.split('.')[1] ?? '').length;
  return BigInt(text.replace('.', '')) * under === over * 10n ** BigInt(decimals);
};

/** Zeros between the point and the first other digit of a fraction below one. */
function zerosAfterPoint(over: bigint, under: bigint): number {
  let zeros = 0;
  for (let scaled = over * 10n; scaled < under && zeros < MOST_DECIMALS; scaled *= 10n) zeros += 1;
  return zeros;
}

const pointed = (steps: bigint, decimals: number): string => {
  const digits = steps.toString().padStart(decimals + 1, '0');
  return `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
};
