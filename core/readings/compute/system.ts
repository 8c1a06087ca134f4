/** In which system of units a casting is worked on. */
import { systemOf } from '../../kernel/measure-units.ts';
import type { Facts } from './model.ts';

/**
 * Inch or metric work: by the first length this casting has a limit of its own for, so that an inch shop reads a metric head in
 * millimetres; else as the shop works.
 */
export function systemOfCasting({ facts }: Readonly<{ facts: Pick<Facts, 'limits' | 'system'> }>): 'inch' | 'metric' {
  const found = facts.limits.find((limit) => limit.forWhat !== 'shop' && (limit.unit === 'in' || limit.unit === 'mm'));
  return found ? systemOf(found.unit) : facts.system;
}
