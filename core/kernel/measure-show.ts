/**
 * Figures on screen and paper: the typed one as it was typed, a computed one with the decimals of its quantity, and the
 * other unit beside it, always computed from the exact value and never from a rounded figure.
 */
import { decimal, fromBaseExactly, isUnitCode, otherUnit, type UnitCode, unitShape } from './measure-units.ts';

/** Real minus, as printed. */
const MINUS = '\u2212';

/** How a figure is dressed. */
export type Dress = Readonly<{
  /** Shown with a plus where the sign matters. */
  sign?: boolean;
  /** `.0058` instead of `0.0058`: inch figures in bench tables. */
  bareInch?: boolean;
  /** `.` unless the shop writes a comma. */
  point?: string;
}>;

/** A base value in a unit with a fixed number of decimals, rounded once, half away from zero: `1.700`. */
export function showValue(value: number, unit: UnitCode, decimals: number, dress: Dress = {}): string {
  const { over, under } = fromBaseExactly(value, unit);
  const negative = over < 0n;
  const scaled = (negative ? -over : over) * 10n ** BigInt(decimals);
  const steps = (2n * scaled + under) / (2n * under);
  const digits = steps.toString().padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  const rest = decimals === 0 ? '' : `${dress.point ?? '.'}${digits.slice(digits.length - decimals)}`;
  const body = (dress.bareInch && unit === 'in' && whole === '0' && rest !== '' ? '' : whole) + rest;
  if (steps === 0n) return body;
  return negative ? `${MINUS}${body}` : dress.sign ? `+${body}` : body;
}

/** Decimals of a typed figure: 3 for `1.700` and `0,775`, 0 for a whole one, 5 for thirty-seconds. */
export function typedDecimals(typed: string): number {
  const found = /\d*[.,](\d+)/.exec(typed);
  if (found) return found[1]?.length ?? 0;
  const under = /\/\s*(\d+)/.exec(typed)?.[1];
  // A half has one decimal, a quarter two: as many as the power of two.
  return under ? POWERS.indexOf(under) + 1 : 0;
}

const POWERS = ['2', '4', '8', '16', '32', '64'];

/**
 * A typed figure without its unit mark: decimals as they were typed with all trailing zeros, fractions as they stand; thou
 * become decimals of an inch.
 */
export function showTyped(typed: string, value: number, unit: UnitCode, dress: Dress = {}): string {
  if (typed.includes('/')) return typed.replace(/\s*(in|inch|")\s*$/u, '');
  const scale = /thou\s*$/iu.test(typed) || (unit === 'mm' && /[uµ]m\s*$/u.test(typed)) ? 3 : 0;
  return showValue(value, unit, typedDecimals(typed) + scale, dress);
}

/** The decimals that show a value of one unit in the other about as finely: one fewer in mm than in inches. */
export const otherDecimals = (unit: UnitCode, decimals: number): number => {
  if (unit === 'in') return Math.max(decimals - 1, 0);
  if (unit === 'mm') return decimals + 1;
  const other = otherUnit(unit);
  return other ? unitShape(other).decimals : decimals;
};

/** A figure in the chosen unit and, beside it, in the other one: `3.9700 in` and `100.838 mm`. */
export type BothUnits = Readonly<{ first: string; second: string | null }>;

/** Both units of a value; the second is null where inch and metric shops use the same unit. */
export function showBoth(value: number, unit: UnitCode, decimals: number, dress: Dress = {}): BothUnits {
  const other = otherUnit(unit);
  const first = withMark(showValue(value, unit, decimals, dress), unit);
  if (!other) return { first, second: null };
  return { first, second: withMark(showValue(value, other, otherDecimals(unit, decimals), dress), other) };
}

/** `1.700` and `in` make `1.700 in`; a degree sign stands close. */
export const withMark = (figure: string, unit: UnitCode): string => {
  const { mark } = unitShape(unit);
  if (mark === '') return figure;
  return mark === '°' ? `${figure}${mark}` : `${figure} ${mark}`;
};

/** Printed mark of a unit kept as text; the text itself when it is none of ours. */
export const markOfUnit = (unit: string): string => (isUnitCode(unit) ? unitShape(unit).mark : unit);

/** The shortest decimal text of a base value in a unit it is exact in, for example a shim `0.5`; with at least `decimals`. */
export function showExact(value: number, unit: UnitCode, decimals: number): string {
  for (let more = decimals; more <= 6; more += 1) {
    const text = showValue(value, unit, more);
    const { over, under } = fromBaseExactly(value, unit);
    const read = decimal(text.replace(MINUS, '-'));
    if (read.over * under === over * read.under) return text;
  }
  return showValue(value, unit, 6);
}
