/** How large a shown unit is in base units, only to lay out a scale. */
import { toBaseExactly, type UnitCode } from '#core/kernel/measure-units.ts';

/** Base units in one of this unit. Temperatures count from their own zero. */
export function perUnit(unit: UnitCode): number {
  const one = toBaseExactly({ over: 1n, under: 1n }, unit);
  const zero = toBaseExactly({ over: 0n, under: 1n }, unit);
  return Number(one.over) / Number(one.under) - Number(zero.over) / Number(zero.under);
}
