/**
 * How a formula sees one place of a casting: what was read there, what was computed from it, what the limits and the sheet
 * say. Every figure carries its doubt and its small print along, so that no formula has to remember them.
 */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import type { Facts, ReadOn, ShimStock, Spot } from './model.ts';
import { combineUncertainty } from './verdict.ts';

/** A figure with what must be said of it. */
export type Known = Readonly<{
  /** Null: it cannot be said, and `marks` tells why. */
  value: number | null;
  /** U (k = 2); null when a tool was not named. */
  uncertainty: number | null;
  marks: readonly string[];
  /** True for what would be, once the chosen shims are in. */
  planned: boolean;
}>;

export type Place = Readonly<{ spot: Spot | null; stage: Stage }>;

/** What a formula may ask. All answers are for the same spot; the stage is the place's unless said. */
export type Look = Readonly<{
  place: Place;
  /** A reading or a computed quantity; null when not measured. */
  value(quantity: string, at?: Readonly<{ stage?: Stage; point?: string }>): Known | null;
  /** At this stage, else at the other: for what work does not change. */
  either(quantity: string): Known | null;
  /**
   * What was read at either stage; else the target of the limit in force, marked "<words of the quantity> from the sheet".
   * For data of the engine that a person may also measure: rod length, gasket, chamber.
   */
  figure(quantity: string): Known | null;
  /** The quantity at each place of its kind, in bench order; a place where it is not known is left out. */
  all(
    quantity: string,
    at?: Readonly<{ stage?: Stage; point?: string }>,
  ): readonly Readonly<{ spot: Spot; known: Known }>[];
  /** Every place of its kind in bench order, read or not; empty for what is read once. */
  places(quantity: string): readonly Spot[];
  /** True where a person said that there is nothing to measure. */
  isDash(quantity: string, at?: Readonly<{ stage?: Stage; point?: string; spot?: Spot }>): boolean;
  readOn(quantity: string, stage: Stage): ReadOn | null;
  /** Words kept in a cell, for example the shims fitted. */
  words(quantity: string, stage: Stage): string | null;
  /** Target of the limit in force, at this stage or else at the other. */
  target(quantity: string): number | null;
  /** The target as a figure that is not measured, with the words that say so. */
  targetKnown(quantity: string, words: string): Known | null;
  /** Lower limit in force. */
  low(quantity: string): number | null;
  /** Upper limit in force. */
  high(quantity: string): number | null;
  /** Casting, engine, pair and earlier visits; `system` is inch or metric work of this casting. */
  facts: Pick<Facts, 'casting' | 'engine' | 'pair' | 'earlier' | 'system'>;
  /** Valve lift: of the customer's cam as the ticket says, else of the type. */
  lift(): Known | null;
  /** The shims that fit the unit of this job; null when the shop has none. */
  stock(): ShimStock | null;
  stocks(): readonly ShimStock[];
}>;

/** A figure made from others: doubts combine, small print is kept once, planned stays planned. */
export function made(from: readonly (Known | null)[], value: number, marks: readonly string[] = []): Known {
  const parts = from.filter((it) => it !== null);
  return {
    value,
    uncertainty: parts.length === 0 ? null : combineUncertainty(parts.map((it) => it.uncertainty)),
    marks: [...new Set([...parts.flatMap((it) => it.marks), ...marks])],
    planned: parts.some((it) => it.planned),
  };
}

/**
 * A figure made by a function of others: each doubt counts with the slope of the function at its part (root of the sum of
 * squares, rounded up).
 *
 * @param parts each figure with how much the result changes when it changes by one
 */
export function madeBy(
  parts: readonly (readonly [Known | null, number])[],
  value: number,
  marks: readonly string[] = [],
): Known {
  const doubts = parts.map(([known, slope]) =>
    known?.uncertainty == null ? null : Math.ceil(Math.abs(slope) * known.uncertainty),
  );
  return {
    ...made(
      parts.map(([known]) => known),
      value,
      marks,
    ),
    uncertainty: combineUncertainty(doubts),
  };
}

/** A figure of a sheet: exact as far as the bench is concerned. */
export const fromSheet = (value: number, words: string): Known => ({
  value,
  uncertainty: 0,
  marks: [words],
  planned: false,
});

/** It cannot be said, and why. */
export const unknown = (why: string): Known => ({ value: null, uncertainty: null, marks: [why], planned: false });
