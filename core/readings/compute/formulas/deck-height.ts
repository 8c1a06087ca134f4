/**
 * Decks of a block: corners, stack, how far the piston stands below, and the one height both banks are finished at. Differences
 * of what was read, exact. A corner spread of 0.002 to 0.004 in for stock and 0.001 to 0.002 in for performance, and 0.035 to
 * 0.045 in between piston and head with steel rods, are common practice, no source.
 */

import type { Stage } from '../../../catalogue/compute/bench-table.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import type { Spot } from '../model.ts';
import {
  changingAt,
  dataOf,
  type Figure,
  figureOf,
  inShort,
  missing,
  notKnown,
  overall,
  strokeOf,
  valueAt,
} from './engine-data.ts';
import { difference, type Formula, largest, range } from './formula.ts';
import { sayLength } from './say.ts';

type Corner = Readonly<{ spot: Spot; known: Figure }>;
type Bank = Readonly<{ name: Spot['bank']; corners: readonly Corner[]; lowest: Corner }>;

/** Corners that were read, bank by bank; a bank with none is left out. */
function banksOf(look: Look, stage: Stage = look.place.stage): readonly Bank[] {
  const corners = look.all('deck-height', { stage }).flatMap(({ spot, known }) => {
    const figure = figureOf(known);
    return figure ? [{ spot, known: figure }] : [];
  });
  return [...Map.groupBy(corners, ({ spot }) => spot.bank)].flatMap(([name, all]) => {
    const lowest = all.toSorted((a, b) => a.known.value - b.known.value)[0];
    return lowest ? [{ name, corners: all, lowest }] : [];
  });
}

const lowestOf = (banks: readonly Bank[]): Bank | undefined =>
  banks.toSorted((a, b) => a.lowest.known.value - b.lowest.known.value)[0];

/** `left bank 0.0200 in, right bank 0.0220 in`; nothing for a block with one bank. */
const eachBank = (look: Look, banks: readonly Bank[], of: (bank: Bank) => number): string[] =>
  banks.length < 2 ? [] : [banks.map((bank) => `${bank.name} bank ${sayLength(look, of(bank))}`).join(', ')];

function lowest(look: Look): Known | null {
  const banks = banksOf(look);
  const low = lowestOf(banks);
  if (!low) return null;
  const { known, spot } = low.lowest;
  return made([known], known.value, [
    `corner ${spot.label}`,
    ...eachBank(look, banks, (bank) => bank.lowest.known.value),
  ]);
}

function spread(look: Look): Known | null {
  const banks = banksOf(look);
  const ranges = banks.map((bank) => ({ bank, known: range(bank.corners.map((it) => it.known)) }));
  const worst = largest(ranges.map((it) => it.known));
  if (worst?.value == null) return null;
  const of = (bank: Bank) => ranges.find((it) => it.bank === bank)?.known?.value ?? 0;
  return made([worst], worst.value, eachBank(look, banks, of));
}

function bankDifference(look: Look): Known | null {
  const banks = banksOf(look);
  if (look.places('deck-height').every((spot) => spot.bank === 'none')) return unknown('one bank');
  return banks.length < 2 ? null : range(banks.map((bank) => bank.lowest.known));
}

/** Lowest corner of the bank this corner belongs to. */
const ownLowest = (look: Look): Figure | null =>
  banksOf(look).find((bank) => bank.name === look.place.spot?.bank)?.lowest.known ?? null;

function stack(look: Look): Known | null {
  const [stroke, rod, piston] = [strokeOf(look), dataOf(look, 'rod-length'), dataOf(look, 'compression-height')];
  if (!stroke || !rod || !piston) {
    return notKnown(missing({ stroke, 'rod length': rod, 'piston pin to crown': piston }));
  }
  const half = divideRounded(BigInt(stroke.value), 2n);
  return madeBy(
    [
      [stroke, 0.5],
      [rod, 1],
      [piston, 1],
    ],
    half + rod.value + piston.value,
  );
}

const stackOf = (look: Look): Figure | null => figureOf(look.either('stack'));

/** How far the piston stands below this casting's deck: of a block by its corners, of a head by what is said of its block. */
function clearance(look: Look): Known | null {
  return look.facts.casting.kind === 'block' ? blockClearance(look) : headClearance(look);
}

function blockClearance(look: Look): Known | null {
  const banks = banksOf(look);
  const low = lowestOf(banks);
  const stands = stackOf(look);
  if (low && stands) {
    const of = (bank: Bank) => bank.lowest.known.value - stands.value;
    return made([low.lowest.known, stands], of(low), eachBank(look, banks, of));
  }
  if (look.place.stage === 'after') return afterCut(look, valueAt(look, 'block-cut', 'before'));
  const highest = valueAt(look, 'highest-piston');
  if (highest) return { ...made([highest], -highest.value), marks: ['by the highest piston'] };
  return fromSheet(look) ?? (low ? look.either('stack') : notKnown(['deck height', 'stack']));
}

function headClearance(look: Look): Known | null {
  if (look.place.stage === 'before') return fromSheet(look) ?? notKnown(['piston below the deck']);
  return afterCut(look, figureOf(look.either('block-deck-cut')));
}

const fromSheet = (look: Look) => look.targetKnown('deck-clearance', 'piston below the deck from the sheet');

/** As found less what comes off the deck; as found where nothing is said of a cut. */
function afterCut(look: Look, cut: Figure | null): Known | null {
  const found = valueAt(look, 'deck-clearance', 'before');
  if (!found) return look.value('deck-clearance', { stage: 'before' });
  const known = made([overall(found), cut && overall(cut)], found.value - (cut?.value ?? 0));
  return cut ? known : { ...known, marks: [...known.marks, 'no deck cut entered'] };
}

/** Cut at the lowest corner that leaves the wanted clearance; below zero where the deck is too low already. */
function cutWanted(look: Look): Known | null {
  const [low, stands, goal] = [valueAt(look, 'deck-lowest'), stackOf(look), dataOf(look, 'clearance-wanted')];
  if (!low || !goal) return null;
  if (!stands) return look.either('stack');
  const cut = low.value - stands.value - goal.value;
  return made([overall(low), stands], cut, cut < 0 ? ['the deck is too low already: a thicker gasket'] : []);
}

/** What the whole deck needs to clean up: typed, else as far as it is not flat. */
function cleanUp(look: Look): Known | null {
  const found = (part: string) =>
    largest(['deck', 'left-deck', 'right-deck'].map((deck) => look.either(`${deck}-${part}`)));
  const cut = found('cut-best');
  if (cut) return made([cut], cut.value ?? 0, ['least cut of the survey']);
  const flat = found('flatness');
  return flat
    ? made([flat], flat.value ?? 0, ['as far as the deck is not flat'])
    : unknown('least cut not known: survey the deck');
}

/** The cut to set, at the lowest corner of all: what is wanted, never less than what cleans up. */
function cutToMake(look: Look): Known | null {
  const [goal, clean] = [valueAt(look, 'block-cut-wanted'), valueAt(look, 'block-clean-up')];
  if (!goal && !clean) return null;
  const [least, most] = [clean?.value ?? 0, goal?.value ?? 0];
  const marks = clean ? [] : ['least cut not known'];
  const cut = Math.max(least, most, 0);
  const decides =
    goal && goal.value < cut ? [`cleaning up decides, the clearance asks for ${sayLength(look, goal.value)}`] : [];
  const part = cut === most ? goal : clean;
  const height = lowestOf(banksOf(look));
  const finish = height ? height.lowest.known.value - cut : null;
  const banks = finish === null ? [] : eachBank(look, banksOf(look), (bank) => bank.lowest.known.value - finish);
  return { ...made([part], cut), marks: [...marks, ...decides, ...banks], planned: true };
}

/** The height both banks are finished at. */
function finishedHeight(look: Look): Known | null {
  const [low, cut] = [valueAt(look, 'deck-lowest'), valueAt(look, 'block-cut')];
  if (!low || !cut) return null;
  const stands = stackOf(look);
  const height = low.value - cut.value;
  const marks = stands ? [`piston then ${sayLength(look, height - stands.value)} below the deck`] : [];
  return { ...made([low, cut], height), marks, planned: true };
}

/** What comes off at this corner. */
function cornerCut(look: Look): Known | null {
  const [here, finish] = [valueAt(look, 'deck-height'), valueAt(look, 'deck-finished')];
  return here && finish && { ...made([here, finish], here.value - finish.value), marks: [], planned: true };
}

function pistonToHead(look: Look): Known | null {
  if (look.facts.casting.fuel === 'diesel') return unknown('diesel: the highest piston chooses the gasket');
  const [deck, gasket] = [valueAt(look, 'deck-clearance'), changingAt(look, 'gasket-thickness', 'gasket thickness')];
  if (!deck || !gasket) return notKnown(missing({ 'piston below the deck': deck, 'gasket thickness': gasket }));
  return made([overall(deck), gasket], deck.value + gasket.value, ['usual with steel rods: 0.035 to 0.045 in']);
}

export const DECK_FORMULAS: Readonly<Record<string, Formula>> = {
  'deck-lowest': lowest,
  'deck-spread': spread,
  'bank-difference': bankDifference,
  'corner-over-lowest': (look) => difference(valueAt(look, 'deck-height'), ownLowest(look)),
  'corner-clearance': (look) => difference(valueAt(look, 'deck-height'), stackOf(look)),
  'corner-cut': cornerCut,
  'deck-removed': (look) =>
    difference(look.value('deck-height', { stage: 'before' }), look.value('deck-height', { stage: 'after' })),
  stack: inShort(stack),
  'deck-clearance': inShort(clearance),
  'block-cut-wanted': inShort(cutWanted),
  'block-clean-up': cleanUp,
  'block-cut': cutToMake,
  'deck-finished': finishedHeight,
  'piston-to-head': inShort(pistonToHead),
};
