/** Figures of engines as the tests print them, to and from base units. */
import { fromBaseExactly, measureOf, type UnitCode } from '#core/kernel/measure-units.ts';

/** Base value of a printed figure. */
export const base = (figure: number | string, unit: UnitCode): number =>
  measureOf(typeof figure === 'string' ? figure : figure.toFixed(9).replace(/\.?0+$/, ''), unit);

/** A base value as a number of a unit, for comparison with printed figures; NaN for what is not known. */
export function asNumber(value: number | null | undefined, unit: UnitCode): number {
  if (value === null || value === undefined) return Number.NaN;
  const { over, under } = fromBaseExactly(value, unit);
  return Number((over * 1_000_000_000n) / under) / 1e9;
}
