/** In which unit and with how many decimals a row is shown, and how bare digits typed into it are read. */
import type { Quantity } from '../../catalogue/compute/quantity.ts';
import type { EntryRule } from '../../kernel/measure.ts';
import { showExact, showValue } from '../../kernel/measure-show.ts';
import { decimal, toBaseExactly, type UnitCode, unitShape, usualUnit } from '../../kernel/measure-units.ts';

type Shown = Pick<
  Quantity,
  'family' | 'fine' | 'unit' | 'derived' | 'orTyped' | 'entryRule' | 'entryDigits' | 'countsSteps'
>;

/**
 * The unit of a row's head: of its limit, else of what was read, else of the quantity, else by the shop's or the table's
 * system. Null for words.
 */
export function rowUnit(
  quantity: Shown,
  limitUnits: readonly UnitCode[],
  readUnits: readonly UnitCode[],
  system: 'inch' | 'metric',
): UnitCode | null {
  return limitUnits[0] ?? readUnits[0] ?? quantity.unit ?? usualUnit(quantity.family, system);
}

/** Decimals shown: four of an inch, three of a millimetre and two of a degree or a cc for fine work, else one fewer; other units their own. */
export function rowDecimals(quantity: Pick<Shown, 'family' | 'fine'>, unit: UnitCode | null): number {
  if (unit === 'in') return quantity.fine ? 4 : 3;
  if (unit === 'mm') return quantity.fine ? 3 : 2;
  if (unit === 'deg' || unit === 'cc') return quantity.fine ? 2 : 1;
  return unit === null ? 0 : unitShape(unit).decimals;
}

/** How bare digits become a figure in this row; null where nothing is typed as a figure. */
export function entryRuleOf(quantity: Shown, unit: UnitCode | null): EntryRule | null {
  if ((quantity.derived !== null && !quantity.orTyped) || unit === null) return null;
  const decimals = rowDecimals(quantity, unit);
  if (quantity.countsSteps) return { rule: 'steps', decimals };
  if (quantity.entryRule === 'implied') return { rule: 'implied', decimals };
  if (quantity.entryRule === 'last_digits') return { rule: 'last_digits', digits: quantity.entryDigits, decimals };
  return { rule: 'none' };
}

/** Figures finer than the row by this many decimals are still shown whole, so that none looks as if it met a limit. */
const FINER = 2;

/** A computed figure with the decimals of its row, or with a few more where the row would hide what decides. */
export function showComputed(value: number, unit: UnitCode, decimals: number): string {
  if (unitShape(unit).family !== 'length') return showValue(value, unit, decimals);
  const whole = showExact(value, unit, decimals);
  const isShort = whole.length <= showValue(value, unit, decimals + FINER).length;
  return isShort && isWhole(whole, value, unit) ? whole : showValue(value, unit, decimals);
}

type Bounds = Readonly<{ low: number | null; high: number | null }> | null | undefined;

/** A computed figure beside its limit: with more decimals where it would read like a limit that it is not. */
export function showJudged(value: number, unit: UnitCode, decimals: number, limit: Bounds): string {
  const text = showComputed(value, unit, decimals);
  const isAlike = [limit?.low, limit?.high].some(
    (it) =>
      it != null && it !== value && isClose(it - value, unit, decimals) && showComputed(it, unit, decimals) === text,
  );
  return isAlike ? showValue(value, unit, decimals + FINER) : text;
}

/** Less than one step of the last decimal: only then can two figures read alike. Cheap, for every cell asks. */
function isClose(difference: number, unit: UnitCode, decimals: number): boolean {
  const { over, under } = unitShape(unit).per;
  return BigInt(Math.abs(difference)) * under * 10n ** BigInt(decimals) < over;
}

/** What comes of angles and circles has no last decimal. */
function isWhole(text: string, value: number, unit: UnitCode): boolean {
  const { over, under } = toBaseExactly(decimal(text.replace('\u2212', '-')), unit);
  return over === BigInt(value) * under;
}
