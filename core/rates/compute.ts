/**
 * Which price, which factors and which taxes are in force on a day. Pure and browser-safe: the host prices a line and the
 * check-in screen previews it with this same file. Nothing here rounds.
 *
 * Source of the price structure: common practice of machine shops, no source.
 */
import type { Day } from '../kernel/days.ts';
import type { BasisPoints, Cents, Factor, PriceE4 } from '../kernel/units.ts';

/** What a line is for the tax office. `combined`: labour and part on one line. */
export const TAX_CLASSES = [
  'labour_repair',
  'labour_fabrication',
  'part',
  'supplies',
  'fee',
  'core',
  'sublet',
  'freight',
  'deposit',
  'storage',
  'combined',
] as const;
export type TaxClass = (typeof TAX_CLASSES)[number];

/** Classes whose lines are labour when an operation, a package or hours carry them. */
export const LABOUR_CLASSES: readonly TaxClass[] = ['labour_repair', 'labour_fabrication', 'combined'];

/** The list every shop has; a customer's own list falls back to it. */
export const STANDARD_LIST = 'standard';

/** One price of one thing (an operation on a kind of casting, or a package on a casting type) from a day on. */
export type RateRow = Readonly<{ list: string; price: PriceE4; lineMinimum: Cents; from: Day }>;

/**
 * The price in force: the latest of the customer's list that began on or before the day, else of the standard list.
 *
 * @param rows of one thing, in any order; may be empty
 * @returns undefined when the thing has no price on that day, which means it is not sold
 */
export function rateInForce(rows: readonly RateRow[], list: string, on: Day): RateRow | undefined {
  return latest(rows, list, on) ?? (list === STANDARD_LIST ? undefined : latest(rows, STANDARD_LIST, on));
}

function latest(rows: readonly RateRow[], list: string, on: Day): RateRow | undefined {
  let best: RateRow | undefined;
  for (const row of rows) {
    if (row.list === list && row.from <= on && (!best || row.from > best.from)) best = row;
  }
  return best;
}

/** What a factor may ask about a casting. */
export const FACTOR_FACTS = ['material', 'cam_layout', 'heavy_diesel', 'close_tolerance'] as const;
export type FactorFact = (typeof FACTOR_FACTS)[number];

/** A multiplier that belongs to some operations on castings of one fact, from a day until a day (both included). */
export type FactorRow = Readonly<{
  code: string;
  factor: Factor;
  whenFact: FactorFact;
  /** A metal class, a cam layout, or `1` for the two yes-or-no facts. */
  whenValue: string;
  from: Day;
  until: Day | null;
  /** Codes of the operations and packages it touches; a factor without any touches nothing. */
  touches: readonly string[];
}>;

/** The facts of one casting that move a price. */
export type CastingFacts = Readonly<{
  /** Metal class: `iron`, `aluminium`, `other` or `not_known`. */
  metal: string;
  camLayout: string;
  heavyDiesel: boolean;
  closeTolerance: boolean;
}>;

/** The factors of one operation or package on one casting, in the order of the table. */
export function factorsInForce(
  rows: readonly FactorRow[],
  code: string,
  facts: CastingFacts,
  on: Day,
): Readonly<{ code: string; factor: Factor }>[] {
  return rows
    .filter((row) => row.touches.includes(code) && row.from <= on && (row.until === null || on <= row.until))
    .filter((row) => factValue(facts, row.whenFact) === row.whenValue)
    .map(({ code: name, factor }) => ({ code: name, factor }));
}

function factValue(facts: CastingFacts, fact: FactorFact): string {
  switch (fact) {
    case 'material':
      return facts.metal;
    case 'cam_layout':
      return facts.camLayout;
    case 'heavy_diesel':
      return facts.heavyDiesel ? '1' : '0';
    case 'close_tolerance':
      return facts.closeTolerance ? '1' : '0';
  }
}

/** One tax with its classes, from a day until a day (both included). */
export type TaxRow = Readonly<{
  code: string;
  words: string;
  bp: BasisPoints;
  from: Day;
  until: Day | null;
  classes: readonly TaxClass[];
}>;

/** The taxes of a day, one row a code (the latest begun), in the order of the table. */
export function taxesInForce(rows: readonly TaxRow[], on: Day): TaxRow[] {
  const begun = rows.filter((row) => row.from <= on && (row.until === null || on <= row.until));
  return begun.filter((row) => !begun.some((other) => other.code === row.code && other.from > row.from));
}

/**
 * Whether a tax falls on a line of this class.
 *
 * A `combined` line is taxed whole where its labour or its part is. Source: Idaho State Tax Commission, guide "Repair
 * Shops" (labour not listed apart from parts is taxed with them).
 */
export function isTaxed(row: Pick<TaxRow, 'classes'>, taxClass: TaxClass): boolean {
  if (row.classes.includes(taxClass)) return true;
  return (
    taxClass === 'combined' &&
    (['part', 'labour_repair', 'labour_fabrication'] as const).some((name) => row.classes.includes(name))
  );
}
