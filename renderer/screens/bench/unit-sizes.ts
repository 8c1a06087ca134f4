/** How large a shown unit is in base units, only to lay out a scale. */
import { type Family, toBaseExactly, type UnitCode, unitShape } from '#core/kernel/measure-units.ts';

/** Base units in one of this unit. Temperatures count from their own zero. */
export function perUnit(unit: UnitCode): number {
  const one = toBaseExactly({ over: 1n, under: 1n }, unit);
  const zero = toBaseExactly({ over: 0n, under: 1n }, unit);
  return Number(one.over) / Number(one.under) - Number(zero.over) / Number(zero.under);
}

/** What kind of thing a unit measures: a bore gauge is not offered for a load. */
export const familyOf = (unit: UnitCode): Family => unitShape(unit).family;
