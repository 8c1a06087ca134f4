/** What is said beside the list of oversizes: what was chosen, what to mind, and at which depths the bores were read. */
import { showExact, withMark } from '../../kernel/measure-show.ts';
import type { Bench } from './bench.ts';
import type { Reading, Spot } from './model.ts';
import type { BoreFacts } from './oversize.ts';
import { cylindersOf, pistonsByCylinder, type ReadBore } from './oversize-facts.ts';
import type { OversizeCandidate, OversizeChosen } from './oversize-model.ts';
import type { Case } from './oversize-verdict.ts';

type Wanted = Readonly<{ spot: Spot; reading: Reading; value: number }>;

/** Sizes wanted as they stand, cylinder by cylinder. */
function wantedSizes(bench: Bench): readonly Wanted[] {
  return cylindersOf(bench, null).flatMap((spot) => {
    const found = (['before', 'after'] as const)
      .map((stage) => bench.rows('bore-wanted', spot, null, stage).current)
      .find((it) => it?.kind === 'number');
    return found && found.value !== null ? [{ spot, reading: found, value: found.value }] : [];
  });
}

/** Each size that is wanted now, with the cylinders that have it; empty when none is written. */
export function chosenSizes(
  bench: Bench,
  show: Case['show'],
  candidates: readonly OversizeCandidate[],
): readonly OversizeChosen[] {
  const count = cylindersOf(bench, null).length;
  return [...Map.groupBy(wantedSizes(bench), ({ value }) => value)].map(([value, here]) => {
    const candidate = candidates.find((it) => it.finished?.value === value);
    const labels = here.map(({ spot }) => spot.label);
    return {
      code: candidate?.code ?? null,
      finished: show(value),
      words: candidate?.words ?? show(value).text,
      where:
        labels.length === count
          ? `all ${count}`
          : `${labels.length === 1 ? 'cylinder' : 'cylinders'} ${labels.join(', ')}`,
      note: here.find(({ reading }) => reading.note !== null)?.reading.note ?? '',
    };
  });
}

type Told = Readonly<{
  bores: readonly ReadBore[];
  sleeves: readonly ReadBore[];
  facts: (BoreFacts & Readonly<{ standard: number }>) | null;
  show: Case['show'];
  candidates: readonly OversizeCandidate[];
}>;

/** Sentences to read before choosing, the weightiest first. */
export function oversizeWarnings(bench: Bench, told: Told): readonly string[] {
  return [
    ...oddWarnings(bench, told),
    ...sleeveWarnings(told),
    ...pistonWarnings(bench, told),
    ...startWarnings(told),
    ...wallWarnings(told),
    ...scoreWarnings(told),
  ];
}

const ODD =
  'One cylinder of another size than the others: a few engines allow it, most do not. The rule is one size for all.';

function oddWarnings(bench: Bench, { bores, sleeves }: Told): string[] {
  const count = cylindersOf(bench, null).length;
  const sizes = new Set(wantedSizes(bench).map(({ value }) => value));
  const isOddAsked = bores.length > 0 && bores.length + sleeves.length < count;
  return sizes.size > 1 || isOddAsked ? [ODD] : [];
}

const sleeveWarnings = ({ sleeves }: Told): string[] =>
  sleeves.length === 0
    ? []
    : [
        `${sleeves.map(({ label }) => label).join(', ')}: sleeved first, then finished to the size of the others. Its wear is not counted here.`,
      ];

function pistonWarnings(bench: Bench, { bores, sleeves, candidates, show }: Told): string[] {
  const set = pistonsByCylinder(
    bench,
    [...bores, ...sleeves].map(({ spot }) => spot),
  );
  return [
    ...(candidates.length > 0 && candidates.every((it) => !it.measured)
      ? ['No pistons measured. Sizes come from this set, gauged where the maker says: measure before boring.']
      : []),
    ...(set && set.apart > 0
      ? [
          `The pistons of the set lie ${show(set.apart).text} apart. The largest decides the size; the others run looser.`,
        ]
      : []),
  ];
}

const startWarnings = ({ facts, show }: Told): string[] =>
  facts === null || facts.start === facts.standard
    ? []
    : [`Wear counts from ${show(facts.start).text}, the size it was last bored to.`];

function wallWarnings({ bores, facts }: Told): string[] {
  if (facts === null || bores.length === 0) return [];
  const unknown = bores.filter((it) => it.wall === null);
  const walls =
    unknown.length === bores.length
      ? ['Wall not measured: nobody can say what will be left.']
      : unknown.map(({ label }) => `${label}: wall not measured.`);
  return [
    ...walls,
    ...(facts.leastWall === null ? ['Least wall not known: no wall is judged.'] : []),
    ...(facts.greatest === null ? ['Greatest bore not known: sizes are not judged by it.'] : []),
    ...(facts.cleanUp === null ? ['Clean-up not known: taken as nothing.'] : []),
  ];
}

const scoreWarnings = ({ bores, show }: Told): string[] =>
  bores.flatMap(({ label, score }) =>
    score === null || score === 0 ? [] : [`${label}: a score of ${show(score).text} deep counts twice.`],
  );

const USUAL_DEPTHS = 'top just under the ridge, middle, bottom below the rings';

/** `top 0.5, middle 2.0, bottom 4.5 in`; where the depths were not typed, in words. */
export function depthsWords(bench: Bench, unit: 'in' | 'mm'): string {
  const depths = [
    ['top', 'top'],
    ['mid', 'middle'],
    ['bot', 'bottom'],
  ].map(([code, words]) => {
    const value = bench.known('bore-depth', null, code ?? null, 'before')?.value ?? null;
    return value === null ? null : `${words} ${showExact(value, unit, 1)}`;
  });
  const known = depths.filter((it) => it !== null);
  return known.length === depths.length ? withMark(known.join(', '), unit) : USUAL_DEPTHS;
}
