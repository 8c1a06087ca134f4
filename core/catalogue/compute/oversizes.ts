/**
 * Sizes of pistons over standard that are made: common practice, no source. Not every engine has every size; a size that is
 * not made for an engine is marked as not applicable where its pistons are measured.
 */
import { measureOf } from '../../kernel/measure-units.ts';

export type Oversize = Readonly<{
  /** Point of the quantity `piston-offered`. */
  code: string;
  /** Over standard, in nanometres. */
  over: number;
  unit: 'in' | 'mm';
  /** `.020`, `0.50`, `standard`. */
  text: string;
  /** `.020 in over`, `standard size`. */
  words: string;
}>;

const inches = (text: string): Oversize => ({
  code: `+${text}in`,
  over: measureOf(text, 'in'),
  unit: 'in',
  text,
  words: `${text} in over`,
});

const millimetres = (text: string): Oversize => ({
  code: `+${text}mm`,
  over: measureOf(text, 'mm'),
  unit: 'mm',
  text,
  words: `${text} mm over`,
});

/** The size the engine was made with; in inch and in metric work alike. */
export const STANDARD: Oversize = { code: 'std', over: 0, unit: 'in', text: 'standard', words: 'standard size' };

/** Smallest first within a unit; standard first of all. */
export const OVERSIZES: readonly Oversize[] = [
  STANDARD,
  ...['.010', '.020', '.030', '.040', '.060'].map(inches),
  ...['0.25', '0.50', '0.75', '1.00'].map(millimetres),
];
