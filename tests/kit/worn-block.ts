/** Facts of a worn block for the measuring computes: eight bores of tests/reference/worn-block.json, or what a test changes. */

import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import { id } from '#core/kernel/ids.ts';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Known } from '#core/readings/compute/look.ts';
import type { Facts, Limit, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import reference from '#tests/reference/worn-block.json' with { type: 'json' };

export const inch = (text: string) => measureOf(text, 'in');
export const mm = (text: string) => measureOf(text, 'mm');

/** Places of one kind, `1`, `2` and so on from the front; ids begin at `from`. */
export const placesOf = (kind: Spot['kind'], count: number, from = 1): Spot[] =>
  Array.from({ length: count }, (_, index) => ({
    id: id<'spot'>(from + index),
    kind,
    label: String(index + 1),
    benchOrder: index + 1,
    row: 1,
    bank: 'none',
    cylinder: kind === 'cylinder' ? index + 1 : null,
    side: null,
  }));

export const CYLINDERS: readonly Spot[] = placesOf('cylinder', 8);

export const cylinderOf = (label: string): Spot => {
  const found = CYLINDERS.find((it) => it.label === label);
  if (!found) throw new Error(`no cylinder ${label}`);
  return found;
};

/** The six readings of one bore, top to bottom across, then along the crank. */
export const sixOf = (spot: Spot, sizes: readonly string[], stage: Stage = 'before'): Reading[] =>
  sizes.map((typed, index) =>
    readingOf('bore', typed, 'in', { spot: spot.id, point: reference.points[index] ?? null, stage }),
  );

export const WORN: readonly Reading[] = reference.cases.flatMap((it) => sixOf(cylinderOf(it.cylinder), it.readings));

/** The set of pistons of the example, a measured size for each oversize. */
export const PISTONS: readonly Reading[] = Object.entries(reference.oversize.pistons).map(([over, typed]) =>
  readingOf('piston-offered', typed, 'in', { point: `+${over}in`, stage: 'before' }),
);

const { clearance, hone, clean_up } = reference.oversize;
export const BORING_LIMITS: readonly Limit[] = [
  limitOf('bore', 'in', { target: reference.standard, stage: 'before' }),
  limitOf('piston-clearance', 'in', { target: clearance }),
  limitOf('hone-allowance', 'in', { target: hone, stage: 'before' }),
  limitOf('clean-up', 'in', { target: clean_up, stage: 'before' }),
];

/** The worn block with its pistons measured; what a test says comes on top. */
export const wornBlock = (words: Partial<Facts> = {}): Facts =>
  factsOf({ spots: CYLINDERS, readings: [...WORN, ...PISTONS], limits: BORING_LIMITS, ...words });

type At = Readonly<{ spot?: Spot | null; stage?: Stage; unit?: UnitCode }>;

/** A quantity of a casting, with its small print. */
export const knownAt = (facts: Facts, quantity: string, { spot = null, stage = 'after' }: At = {}): Known | null =>
  openBench(facts).known(quantity, spot, null, stage);
