/** Lengths in the small print of a figure, in the unit this casting is worked in. */
import { showValue, withMark } from '../../../kernel/measure-show.ts';
import type { Look } from '../look.ts';
import { showComputed } from '../row-units.ts';

const dress = (text: string, unit: 'in' | 'mm'): string =>
  withMark(unit === 'in' ? text.replace(/^(\u2212?)0\./, '$1.') : text, unit);
const unitOf = ({ facts }: Look) => (facts.system === 'inch' ? ('in' as const) : ('mm' as const));
const decimalsOf = (unit: 'in' | 'mm') => (unit === 'in' ? 4 : 3);

/** `.0020 in` or `0.051 mm`: fine decimals of the casting's own unit, more where the figure has them. */
export function sayLength(look: Look, nanometres: number): string {
  const unit = unitOf(look);
  return dress(showComputed(nanometres, unit, decimalsOf(unit)), unit);
}

/** The same, rounded: for a rule of thumb, which is not exact. */
export function sayAbout(look: Look, nanometres: number): string {
  const unit = unitOf(look);
  return dress(showValue(nanometres, unit, decimalsOf(unit)), unit);
}
