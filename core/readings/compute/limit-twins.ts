/**
 * A source that prints a limit in two units: one is kept and used, the other is compared, for printed tables do slip (0.006 in
 * beside 0.015 mm). Rule: both agree within half the last printed digit of each.
 */
import { readTyped } from '../../kernel/measure.ts';
import { otherUnit, type UnitCode, unitShape } from '../../kernel/measure-units.ts';

/** A limit as typed; figures as their source prints them. */
export type TwinTyped = Readonly<{
  low: string | null;
  high: string | null;
  target: string | null;
  unit: UnitCode;
  secondUnitText: string | null;
}>;

/** @returns the base value, or the sentence that says why not. */
export function readFigure(text: string, unit: UnitCode): number | string {
  const { family } = unitShape(unit);
  const read = readTyped(`${text} ${unit}`, { family, unit, signed: true });
  if (read.kind === 'figure') return read.value;
  const again = readTyped(text, { family, unit, signed: true });
  if (again.kind === 'figure') return again.value;
  return again.kind === 'refused' ? again.message : 'Type the figure as its source prints it, for example 0.0040.';
}

/** `0.015 – 0.020 mm`, `41.99`: the figures in it, in order. */
const FIGURES = /-?\d*[.,]?\d+/g;

/**
 * Sentences about a second unit that does not agree with the first; the first is the one that counts. Empty when the source
 * prints one unit, or when both agree.
 */
export function twinWarnings(typed: TwinTyped): string[] {
  const other = otherUnit(typed.unit);
  if (typed.secondUnitText === null || other === null) return [];
  const printed = typed.secondUnitText.match(FIGURES) ?? [];
  const fields = (['low', 'high', 'target'] as const).filter((field) => typed[field] !== null);
  return fields.flatMap((field, index) => {
    const text = typed[field] ?? '';
    const value = readFigure(text, typed.unit);
    const twin = printed[index];
    const second = twin === undefined ? null : readFigure(twin, other);
    if (twin === undefined || typeof value !== 'number' || typeof second !== 'number') return [];
    const agree = twinsAgree({ value, typed: text, unit: typed.unit }, { value: second, typed: twin, unit: other });
    return agree
      ? []
      : [`${text} ${typed.unit} and ${twin} ${other} do not agree. ${text} ${typed.unit} is kept: look again.`];
  });
}

/** Half the last printed digit of both figures together: what rounding alone explains. */
const halfStep = (typed: string): number => (typed.split(/[.,]/)[1] ?? '').length;

/**
 * Whether the second unit a source prints agrees with the first: within half the last printed digit of both.
 *
 * @param first As printed, in base units and with its text.
 * @param second Likewise in the other unit.
 */
export function twinsAgree(
  first: Readonly<{ value: number; typed: string; unit: UnitCode }>,
  second: Readonly<{ value: number; typed: string; unit: UnitCode }>,
): boolean {
  const step = (it: typeof first) => {
    const { per } = unitShape(it.unit);
    return { over: per.over, under: per.under * 2n * 10n ** BigInt(halfStep(it.typed)) };
  };
  const [a, b] = [step(first), step(second)];
  const apart = BigInt(Math.abs(first.value - second.value));
  return apart * a.under * b.under <= a.over * b.under + b.over * a.under;
}
