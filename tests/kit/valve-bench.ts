/** A head with a few readings and limits, opened: what is known at a valve or a port, and how it is judged. No database. */
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import { id } from '#core/kernel/ids.ts';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Known } from '#core/readings/compute/look.ts';
import type { Facts, Limit, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf, valves } from '#tests/kit/bench-facts.ts';

/** `['stem', '0.3412', 'in']`; at the first place, after, unless `more` says else. A null unit is a word. */
export type Typed = readonly [
  quantity: string,
  typed: string,
  unit: UnitCode | null,
  more?: Readonly<Omit<Partial<Reading>, 'at'> & { at?: string }>,
];

/** `['seat-angle', '45', 'deg']` is a target. */
export const sheet = (...targets: readonly (readonly [quantity: string, target: string, unit: UnitCode])[]): Limit[] =>
  targets.map(([quantity, target, unit]) => limitOf(quantity, unit, { target }));

/** The ports of a head, called `1I` and so on, with ids of their own. */
export const ports = (...labels: readonly string[]): Spot[] =>
  valves(...labels).map((spot) => ({ ...spot, id: id<'spot'>(spot.id + 100), kind: 'port' }));

export type ValveBench = Readonly<{
  facts: Facts;
  known(quantity: string, at?: string | null, stage?: Stage): Known | null;
  value(quantity: string, at?: string | null, stage?: Stage): number | null;
  verdict(quantity: string, at?: string | null, stage?: Stage): string;
}>;

/** @param words spots (one exhaust valve when left out) and any other facts */
export function valveBench(
  typed: readonly Typed[],
  limits: readonly Limit[] = [],
  words: Readonly<Partial<Facts>> = {},
): ValveBench {
  const spots = words.spots ?? valves('1E');
  const find = (label: string | undefined | null) =>
    label === null ? null : (spots.find((spot) => label === undefined || spot.label === label) ?? null);
  const readings = typed.map(([quantity, text, unit, { at, ...more } = {}]) =>
    readingOf(quantity, text, unit, { spot: find(at)?.id ?? null, ...more }),
  );
  const facts = factsOf({ spots, limits, readings, ...words });
  const bench = openBench(facts);
  const known: ValveBench['known'] = (quantity, at, stage = 'after') => {
    const isOnce = bench.quantity(quantity)?.spotKind === null;
    return bench.known(quantity, isOnce ? null : find(at), null, stage);
  };
  return {
    facts,
    known,
    value: (quantity, at, stage) => known(quantity, at, stage)?.value ?? null,
    verdict: (quantity, at, stage = 'after') =>
      bench.verdict(quantity, stage, find(at)?.side ?? null, known(quantity, at, stage)).name,
  };
}

export const inch = (text: string): number => measureOf(text, 'in');
export const mm = (text: string): number => measureOf(text, 'mm');
