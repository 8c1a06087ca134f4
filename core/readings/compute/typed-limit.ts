/** Reads the figures of a limit as a source prints them, and compares the second unit where the source prints one too. */
import { readFigure, type TwinTyped, twinWarnings } from './limit-twins.ts';

export type LimitTyped = TwinTyped;

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
  return { low, high, target, faults, warnings: twinWarnings(typed) };
}
