/**
 * Guides and stems. Exact differences; the meaning of the quantities as in TM 9-2815-255-24.
 *
 * By rocking: the stem tilts until it touches opposite ends of the guide, both ways; with a swing R read e beyond a guide of
 * length L the clearance is `R / (1 + 2 e / L)` (exact geometry).
 */
import type { Stage } from '../../../catalogue/compute/bench-table.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { type Known, type Look, madeBy, unknown } from '../look.ts';
import { difference, type Formula, largest, range } from './formula.ts';

const DEPTHS = [
  ['top', 'top'],
  ['mid', 'middle'],
  ['bot', 'bottom'],
] as const;

type Read = Readonly<{ depth: string; known: Known }>;

/** Guide readings at this stage; for "before" those of an earlier step do, for "after" only new ones. */
function guideReadings(look: Look): Read[] {
  const at = (stage: Stage): Read[] =>
    DEPTHS.flatMap(([code, depth]) =>
      [code, `${code}-y`].flatMap((point) => {
        const known = look.value('guide-id', { point, stage });
        return known === null ? [] : [{ depth, known }];
      }),
    );
  const here = at(look.place.stage);
  return here.length > 0 || look.place.stage === 'after' ? here : at('after');
}

/** Where a guide was not read all the way down, the worst of what was read stands, and says so. */
function depthMarks(read: readonly Read[]): string[] {
  const depths = [...new Set(read.map((it) => it.depth))];
  return depths.length === DEPTHS.length ? [] : [`guide read at the ${depths.join(' and ')} only`];
}

function boreClearance(look: Look): Known | null {
  const read = guideReadings(look);
  const clearance = difference(largest(read.map((it) => it.known)), look.either('stem'));
  return clearance && { ...clearance, marks: [...clearance.marks, ...depthMarks(read)] };
}

function rockClearance(look: Look): Known | null {
  const swing = look.value('rock-swing');
  if (swing?.value == null) return null;
  const [reach, length] = [look.figure('rock-reach'), look.figure('guide-length')];
  if (reach?.value == null || length?.value == null || length.value <= 0)
    return unknown('how far beyond the guide, and the length of the guide, are wanted too');
  const whole = BigInt(length.value) + 2n * BigInt(reach.value);
  const value = divideRounded(BigInt(swing.value) * BigInt(length.value), whole);
  const share = length.value / Number(whole);
  return madeBy(
    [
      [swing, share],
      [reach, (2 * value) / Number(whole)],
      [length, (2 * value * reach.value) / length.value / Number(whole)],
    ],
    value,
  );
}

/** By rocking at this stage; for "before" also what an earlier step found, as with the bore. */
function rocked(look: Look): Known | null {
  const here = look.value('rock-clearance');
  return here ?? (look.place.stage === 'before' ? look.value('rock-clearance', { stage: 'after' }) : null);
}

function guideClearance(look: Look): Known | null {
  const [bore, rock] = [boreClearance(look), rocked(look)];
  if (bore?.value == null) return byRocking(rock);
  return rock?.value == null ? bore : { ...bore, marks: [...bore.marks, 'rocked too: the bore readings stand'] };
}

const byRocking = (rock: Known | null): Known | null =>
  rock?.value == null ? rock : { ...rock, marks: [...rock.marks, 'by rocking the stem in its guide'] };

export const VALVE_FORMULAS: Readonly<Record<string, Formula>> = {
  'guide-clearance': guideClearance,
  'rock-clearance': rockClearance,
  'bell-mouth': (look) => range(guideReadings(look).map((it) => it.known)),
  'stem-wear': (look) => difference(look.either('stem-unworn'), look.either('stem')),
  'guide-interference': (look) => difference(look.either('guide-od'), look.either('guide-bore-in-head')),
  'insert-interference': (look) => difference(look.either('insert-od'), look.either('counterbore-id')),
};
