/** Lifting by hand: what the casting weighs, how much the published equation allows, and the share of it this lift takes. */
import { liftWords, weightClassOf } from '../../../castings/compute.ts';
import { divideRounded, type Grams } from '../../../kernel/units.ts';
import {
  COUPLINGS,
  type Coupling,
  coupling,
  DURATIONS,
  type Duration,
  frequency,
  liftLimit,
} from '../geometry/lifting.ts';
import { fromSheet, type Known, type Look, made, unknown } from '../look.ts';
import type { Formula } from './formula.ts';

/** Weight of the casting, with the shop's class of it. */
function weight(look: Look): Known | null {
  const { weight: grams } = look.facts.casting;
  return grams === null
    ? null
    : fromSheet(grams, `weight of the casting as known: ${liftWords(weightClassOf(grams as Grams))}`);
}

const words = (look: Look, quantity: string): string | null =>
  look.words(quantity, 'after') ?? look.words(quantity, 'before');

const oneOf = <T extends string>(list: readonly T[], word: string | null): T | null =>
  list.find((it) => it === word) ?? null;

const NEEDED = [
  ['lift-h', 'hands in front'],
  ['lift-v', 'hands above the floor'],
  ['lift-a', 'body turned by (0 for not at all)'],
] as const;

/** How far it goes up or down: as typed, else from the two heights of the hands. */
function travelOf(look: Look): number | null {
  const [d, from, to] = [look.either('lift-d'), look.either('lift-v'), look.either('lift-v-end')];
  if (d?.value != null) return d.value;
  return from?.value == null || to?.value == null ? null : Math.abs(to.value - from.value);
}

/** Everything the equation wants that is not there yet. */
function missingFor(look: Look, grip: Coupling | null): string[] {
  return [
    ...NEEDED.flatMap(([code, said]) => (look.either(code)?.value == null ? [said] : [])),
    ...(travelOf(look) === null ? ['lifted up or down by'] : []),
    ...(grip === null ? ['grip'] : []),
  ];
}

type Hands = Readonly<{ h: number; v: number; a: number }>;

function limitAt(look: Look, hands: Hands, grip: Coupling): number {
  const span: Duration = oneOf(DURATIONS, words(look, 'lift-duration')) ?? DURATIONS[0];
  return liftLimit({
    ...hands,
    d: travelOf(look) ?? 0,
    frequency: frequency(look.either('lift-count')?.value ?? 0, span, hands.v),
    coupling: coupling(grip, hands.v),
  });
}

/** The lower of start and end counts where it must be set down with care: that is when the end is described. */
function recommended(look: Look): Known | null {
  const [h, v, a] = NEEDED.map(([code]) => look.either(code));
  if ([h, v, a].every((it) => it?.value == null)) return null;
  const grip = oneOf(COUPLINGS, words(look, 'lift-coupling'));
  const missing = missingFor(look, grip);
  if (h?.value == null || v?.value == null || a?.value == null || grip === null || missing.length > 0) {
    return unknown(`still needed: ${missing.join(', ')}`);
  }
  const start = { h: h.value, v: v.value, a: a.value };
  const [endH, endV, endA] = ['lift-h-end', 'lift-v-end', 'lift-a-end'].map((code) => look.either(code));
  const isPlaced = endH?.value != null;
  const end = { h: endH?.value ?? start.h, v: endV?.value ?? start.v, a: endA?.value ?? start.a };
  const limits = [limitAt(look, start, grip), ...(isPlaced ? [limitAt(look, end, grip)] : [])];
  const least = Math.min(...limits);
  return made([], least, [
    ...(least === 0 ? ['do not lift by hand'] : []),
    ...(isPlaced ? ['the lower of start and end'] : []),
    ...(look.either('lift-count') === null ? ['lifted seldom'] : []),
  ]);
}

function index(look: Look): Known | null {
  const [load, most] = [look.value('lift-weight'), look.value('lift-limit')];
  if (load?.value == null || most?.value == null) return null;
  if (most.value === 0) return unknown('do not lift by hand');
  return made([], divideRounded(BigInt(load.value) * 10_000n, BigInt(most.value)), load.marks);
}

export const LIFTING_FORMULAS: Readonly<Record<string, Formula>> = {
  'lift-weight': weight,
  'lift-limit': recommended,
  'lift-index': index,
};
