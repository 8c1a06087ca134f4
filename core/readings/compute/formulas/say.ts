/** Lengths in the small print of a figure, in the unit this casting is worked in. */
import { withMark } from '../../../kernel/measure-show.ts';
import type { Look } from '../look.ts';
import { showComputed } from '../row-units.ts';

/** `.0020 in` or `0.051 mm`: fine decimals of the casting's own unit. */
export function sayLength({ facts }: Look, nanometres: number): string {
  const unit = facts.system === 'inch' ? 'in' : 'mm';
  const text = showComputed(nanometres, unit, unit === 'in' ? 4 : 3);
  return withMark(unit === 'in' ? text.replace(/^(\u2212?)0\./, '$1.') : text, unit);
}
