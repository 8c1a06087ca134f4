/**
 * Figures that are possible but unlikely: ten times off, the wrong unit, far from everything else. They are questioned, never
 * refused, and what was typed stays until the person answers.
 */

import type { ReadFigure } from './measure.ts';
import { showValue, typedDecimals, withMark } from './measure-show.ts';
import { otherUnit, decimal as readDecimal, toBase, type UnitCode, unitShape } from './measure-units.ts';

/** What is known about the place before the figure is kept. Base values; null when not known. */
export type Expected = Readonly<{
  target: number | null;
  low: number | null;
  high: number | null;
  /** What stood in this cell, or stands beside it. */
  before: number | null;
}>;

/** A question under the field, and the figure that was probably meant. */
export type Doubt = Readonly<{ question: string; meant: Readonly<{ typed: string; unit: UnitCode }> | null }>;

/** A figure within this share of what is expected is not questioned. */
const NEAR_PERCENT = 10n;
/** A size this many times away from what is expected is questioned even without a likely cause. */
const FAR_TIMES = 3n;
/** A figure that has an upper limit only is questioned past this many times the limit. */
const PAST_LIMIT_TIMES = 10n;

/** @returns the question to ask before keeping the figure, or null when it looks right. */
export function doubtOf(figure: ReadFigure, expected: Expected): Doubt | null {
  const { words, around } = anchorOf(expected);
  if (around === null) return pastLimit(figure, expected.high);
  if (isWithin(figure.value, around)) return null;
  const shown = withMark(figureText(figure), figure.unit);
  const place = `${words}, ${withMark(showValue(around, figure.unit, typedDecimals(figure.typed)), figure.unit)}`;
  for (const cause of causesOf(figure)) {
    if (isWithin(cause.value, around)) {
      const meant = withMark(cause.typed, cause.unit);
      return { question: `${shown} is ${cause.words} ${place}. Did you mean ${meant}?`, meant: cause };
    }
  }
  const [a, b] = [BigInt(figure.value), BigInt(around)];
  if (a < b * FAR_TIMES && a * FAR_TIMES > b) return null;
  return { question: `${shown} is far from ${place}. Is it right?`, meant: null };
}

function anchorOf({ target, low, high, before }: Expected): { words: string; around: number | null } {
  const sized = (value: number | null) => value !== null && value > 0;
  if (sized(before)) return { words: 'the reading before', around: before };
  if (sized(target)) return { words: 'the target', around: target };
  if (sized(low) && sized(high)) return { words: 'the middle of the limits', around: middle(low ?? 0, high ?? 0) };
  return { words: '', around: null };
}

const middle = (low: number, high: number): number => low + Math.floor((high - low) / 2);

const isWithin = (value: number, around: number): boolean => {
  const difference = BigInt(value) - BigInt(around);
  return (difference < 0n ? -difference : difference) * 100n <= BigInt(around) * NEAR_PERCENT;
};

function pastLimit(figure: ReadFigure, high: number | null): Doubt | null {
  if (high === null || high <= 0 || BigInt(figure.value) <= BigInt(high) * PAST_LIMIT_TIMES) return null;
  const shown = withMark(figureText(figure), figure.unit);
  return { question: `${shown} is more than ten times the limit. Is it right?`, meant: null };
}

const figureText = (figure: ReadFigure): string => showValue(figure.value, figure.unit, typedDecimals(figure.typed));

type Cause = Readonly<{ words: string; typed: string; unit: UnitCode; value: number }>;

/** The figures that were perhaps meant: the point moved, or the other unit of the same family. */
function causesOf(figure: ReadFigure): Cause[] {
  const decimals = typedDecimals(figure.typed);
  const moved = (words: string, tenths: bigint, times: bigint, places: number): Cause[] => {
    const value = Number((BigInt(figure.value) * times) / tenths);
    return [{ words, typed: showValue(value, figure.unit, Math.max(places, 0)), unit: figure.unit, value }];
  };
  return [
    ...moved('ten times', 10n, 1n, decimals + 1),
    ...moved('a tenth of', 1n, 10n, decimals - 1),
    ...moved('a hundred times', 100n, 1n, decimals + 2),
    ...otherUnitOf(figure),
  ];
}

function otherUnitOf(figure: ReadFigure): Cause[] {
  const unit = otherUnit(figure.unit);
  const text = figureText(figure).replace('\u2212', '-');
  if (!unit || unitShape(unit).zero) return [];
  return [{ words: 'in another unit than', typed: text, unit, value: toBase(readDecimal(text), unit) }];
}
