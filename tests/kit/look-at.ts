/** What a quantity comes to at a place of a casting, from a few words: for tests of formulas. */
import { openBench } from '#core/readings/compute/bench.ts';
import type { Known } from '#core/readings/compute/look.ts';
import type { Facts, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, readingOf } from '#tests/kit/bench-facts.ts';

/** `[quantity, typed, unit]`; words when the unit is null. */
export type Typed = readonly [quantity: string, typed: string, unit: Reading['unit'], more?: Partial<Reading>];

/** A casting of a metal with these readings, all at one place. */
export const castingWith = (
  readings: readonly Typed[],
  {
    spot = null,
    material = 'iron_grey',
    ...more
  }: Partial<Facts> & Readonly<{ spot?: Spot | null; material?: string }> = {},
): Facts => {
  const facts = factsOf({ ...(spot && { spots: [spot] }), ...more });
  const at = (quantity: string) =>
    facts.quantities.find((it) => it.code === quantity)?.spotKind == null ? null : (spot?.id ?? null);
  return {
    ...facts,
    casting: { ...facts.casting, material },
    readings: readings.map(([code, typed, unit, given]) => readingOf(code, typed, unit, { spot: at(code), ...given })),
  };
};

/** What is known of a quantity after work; null when it is not measured. */
export const lookAt = (facts: Facts, quantity: string, spot: Spot | null = null): Known | null =>
  openBench(facts).known(quantity, spot, null, 'after');

/** A place of a casting. */
export const spotOf = (kind: Spot['kind'], id: number, label: string, more: Partial<Spot> = {}): Spot => ({
  id: id as Spot['id'],
  kind,
  label,
  benchOrder: id,
  row: 1,
  bank: 'none',
  cylinder: null,
  side: null,
  ...more,
});
