/** Reads the figures of a limit as a source prints them, and compares the second unit where the source prints one too. */
import { readTyped } from '../../kernel/measure.ts';
import { otherUnit, type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import { twinsAgree } from './limit-words.ts';

export type LimitTyped = Readonly<{
  low: string | null;
  high: string | null;
  target: string | null;
  unit: UnitCode;
  secondUnitText: string | null;
}>;

type Field = 'low' | 'high' | 'target';
export type LimitFigures = Readonly<{
  low: number | null;
  high: number | null;
  target: number | null;
  /** Sentence by field where a figure cannot be read; empty when all is well. */
  faults: Readonly<Partial<Record<Field, string>>>;
  /** What a second person must look at before the limit can be called checked. */
  warnings: readonly string[];
}>;

/** Read the figures of a limit. Whole numbers stand in the unit of the limit: a printed table is not ambiguous. */
export function readLimit(typed: LimitTyped): LimitFigures {
  const faults: Partial<Record<Field, string>> = {};
  const value = (field: Field): number | null => {
    const text = typed[field];
    if (text === null) return null;
    const read = readFigure(text, typed.unit);
    if (typeof read === 'string') faults[field] = read;
    return typeof read === 'number' ? read : null;
  };
  const [low, high, target] = [value('low'), value('high'), value('target')];
  if (low !== null && high !== null && low > high) faults.low = 'The lower limit is above the upper one.';
  if (typed.low === null && typed.high === null && typed.target === null) {
    faults.low = 'Type a lower limit, an upper limit or a target.';
  }
  return { low, high, target, faults, warnings: warningsOf(typed, { low, high, target }) };
}

/** @returns the base value, or the sentence that says why not. */
function readFigure(text: string, unit: UnitCode): number | string {
  const { family } = unitShape(unit);
  const read = readTyped(`${text} ${unit}`, { family, unit, signed: true });
  if (read.kind === 'figure') return read.value;
  const again = readTyped(text, { family, unit, signed: true });
  if (again.kind === 'figure') return again.value;
  return again.kind === 'refused' ? again.message : 'Type the figure as its source prints it, for example 0.0040.';
}

/** `0.015 – 0.020 mm`, `41.99`: the figures in it, in order. */
const FIGURES = /-?\d*[.,]?\d+/g;

function warningsOf(typed: LimitTyped, first: Readonly<Record<Field, number | null>>): string[] {
  const other = otherUnit(typed.unit);
  if (typed.secondUnitText === null || other === null) return [];
  const printed = typed.secondUnitText.match(FIGURES) ?? [];
  const fields = (['low', 'high', 'target'] as const).filter((field) => typed[field] !== null);
  return fields.flatMap((field, index) => {
    const [text, value] = [typed[field] ?? '', first[field]];
    const twin = printed[index];
    const second = twin === undefined ? null : readFigure(twin, other);
    if (twin === undefined || value === null || typeof second !== 'number') return [];
    const agree = twinsAgree({ value, typed: text, unit: typed.unit }, { value: second, typed: twin, unit: other });
    return agree
      ? []
      : [`${text} ${typed.unit} and ${twin} ${other} do not agree. ${text} ${typed.unit} is kept: look again.`];
  });
}
