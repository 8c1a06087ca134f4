/** Figures of a survey as they are shown: one unit for the whole face, four decimals of an inch or three of a millimetre. */

import type { Stage } from '../../catalogue/compute/bench-table.ts';
import { withMark } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import { cellAt } from './cells.ts';
import type { Figure, JudgedFigure } from './deck-survey-model.ts';
import { showLimit } from './limit-words.ts';
import type { Known } from './look.ts';
import { rowDecimals, showComputed, showJudged } from './row-units.ts';
import { verdictWord } from './verdict.ts';

const FINE = { family: 'length', fine: true } as const;

/** A known figure as text in a unit; nothing known: empty. */
export function figureOf(known: Known | null, unit: UnitCode, decimals = rowDecimals(FINE, unit)): Figure {
  const value = known?.value ?? null;
  return {
    value,
    uncertainty: known?.uncertainty ?? null,
    text: value === null ? '' : showComputed(value, unit, decimals),
    marks: known?.marks ?? [],
  };
}

/** `0.0056 in`. */
export const saidOf = (value: number, unit: UnitCode): string =>
  withMark(showComputed(value, unit, rowDecimals(FINE, unit)), unit);

type Place = Readonly<{ quantity: string; stage: Stage; unit: UnitCode }>;

/** A figure judged by the limits of a quantity: what stands there, or what would. */
export function judgedOf(bench: Bench, { quantity: code, stage, unit }: Place, known: Known | null): JudgedFigure {
  const quantity = bench.quantity(code);
  const resolved = bench.limit(code, stage, null);
  const verdict = bench.verdict(code, stage, null, known);
  const standing = quantity && cellAt(bench, { quantity, spot: null, point: null, stage, unit });
  const isStanding = quantity?.spotKind === null && standing?.value === known?.value;
  const decimals = rowDecimals(FINE, unit);
  return {
    ...figureOf(known, unit),
    text: known?.value == null ? '' : showJudged(known.value, unit, decimals, resolved?.limit),
    quantity: code,
    words: quantity?.words ?? code,
    limit: resolved && showLimit(resolved, 'any'),
    verdict,
    word: quantity ? verdictWord(verdict, quantity) : verdict.name,
    decision: isStanding ? (standing?.decision ?? null) : null,
  };
}
