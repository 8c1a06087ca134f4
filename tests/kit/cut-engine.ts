/** An invented V eight and its parts on the bench: heads and block with the data of the engine's sheet. No database. */
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import { id } from '#core/kernel/ids.ts';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { type Bench, openBench } from '#core/readings/compute/bench.ts';
import type { Known } from '#core/readings/compute/look.ts';
import type { Engine, Facts, Limit, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { asNumber } from '#tests/kit/engine-figures.ts';

/** Iron pushrod V eight, 90 degrees, intake face leaning 10. */
export const V_EIGHT: Engine = {
  words: 'NV-8',
  cylinders: 8,
  layout: 'v',
  bankLean: 45_000_000,
  faceLean: 10_000_000,
  bore: measureOf('3.950', 'in'),
  stroke: measureOf('3.400', 'in'),
};

/** Everything a ratio needs besides bore and stroke, with the area of a circle of 3.60 in. */
export const V_EIGHT_SHEET: readonly Limit[] = [
  limitOf('chamber-volume', 'cc', { target: '62.0' }),
  limitOf('piston-dish', 'cc', { target: '6.0' }),
  limitOf('gasket-bore', 'in', { target: '4.060' }),
  limitOf('gasket-thickness', 'in', { target: '0.040' }),
  limitOf('deck-clearance', 'in', { target: '0.020' }),
  limitOf('chamber-circle', 'in', { target: '3.60' }),
];

/** `['head-cut-planned', '0.010', 'in', { stage: 'before' }]`. */
export type Typed = readonly [quantity: string, typed: string, unit: UnitCode, more?: Partial<Reading>];

export const BEFORE = { stage: 'before' } as const;

type Words = Readonly<{
  readings?: readonly Typed[];
  limits?: readonly Limit[];
  engine?: Engine | null;
  casting?: Partial<Facts['casting']>;
  pair?: Facts['pair'];
  earlier?: Facts['earlier'];
  spots?: readonly Spot[];
  system?: Facts['system'];
  tools?: Facts['tools'];
  guard?: boolean;
}>;

let next = 900;

/** A place of any kind; labels as given. */
export function spotsOf(kind: Spot['kind'], ...labels: readonly (string | Partial<Spot>)[]): Spot[] {
  return labels.map((words, index) => {
    next += 1;
    const given: Partial<Spot> = typeof words === 'string' ? { label: words } : words;
    return {
      id: id<'spot'>(next),
      kind,
      label: String(index + 1),
      benchOrder: index + 1,
      row: 1,
      bank: 'none',
      cylinder: null,
      side: null,
      ...given,
    };
  });
}

/** A head of the V eight, opened for measuring. */
export function headBench({
  readings = [],
  limits = V_EIGHT_SHEET,
  engine = V_EIGHT,
  casting,
  ...rest
}: Words = {}): Bench {
  const facts = factsOf({
    engine,
    limits,
    readings: readings.map(([quantity, typed, unit, more]) => readingOf(quantity, typed, unit, more)),
    ...rest,
  });
  return openBench({ ...facts, casting: { ...facts.casting, ...casting } });
}

/** The block of the V eight, opened for measuring. */
export const blockBench = (words: Words = {}): Bench =>
  headBench({ ...words, casting: { kind: 'block', ...words.casting } });

/** What a quantity comes to. */
export const knownOf = (
  bench: Bench,
  quantity: string,
  stage: Stage = 'after',
  spot: Spot | null = null,
): Known | null => bench.known(quantity, spot, null, stage);

/** The same as a number of a unit; NaN where it cannot be said. */
export const figure = (
  bench: Bench,
  quantity: string,
  unit: UnitCode,
  stage: Stage = 'after',
  spot: Spot | null = null,
) => asNumber(knownOf(bench, quantity, stage, spot)?.value, unit);

/** The small print of a quantity in one line. */
export const marks = (bench: Bench, quantity: string, stage: Stage = 'after', spot: Spot | null = null): string =>
  (knownOf(bench, quantity, stage, spot)?.marks ?? []).join('; ');
