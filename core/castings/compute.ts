/** Words and classes of a casting: kind, side, metal, weight, title. Pure and browser-safe. */
import { type Material, METAL_OUTLINES, METAL_WORDS, metalClassOf } from '../catalogue/compute/fit.ts';
import type { Moment } from '../kernel/days.ts';
import { type FormatSettings, formatWeight } from '../kernel/format.ts';
import type { Grams } from '../kernel/units.ts';

export type Kind =
  | 'head'
  | 'block'
  | 'intake_manifold'
  | 'exhaust_manifold'
  | 'crank'
  | 'rod_set'
  | 'flywheel'
  | 'cover';
export type Position = 'left' | 'right' | 'front_bank' | 'rear_bank' | 'single' | 'not_known';
export type WeightClass = 'one' | 'one_careful' | 'two' | 'hoist';

export const KIND_WORDS: Readonly<Record<Kind, string>> = {
  head: 'Head',
  block: 'Block',
  intake_manifold: 'Intake manifold',
  exhaust_manifold: 'Exhaust manifold',
  crank: 'Crank',
  rod_set: 'Rod set',
  flywheel: 'Flywheel',
  cover: 'Cover',
};

const POSITION_WORDS: Readonly<Record<Position, string>> = {
  left: 'left',
  right: 'right',
  front_bank: 'front bank',
  rear_bank: 'rear bank',
  single: 'single',
  not_known: 'side not known',
};
export const positionWords = (position: Position): string => POSITION_WORDS[position];

/** "Head 1 of 2, left"; a single casting has no count, a single position no side. */
export function titleOf(kind: Kind, piece: number, of: number, position: Position): string {
  const count = of > 1 ? ` ${piece} of ${of}` : '';
  const side = position === 'single' || (position === 'not_known' && of <= 1) ? '' : `, ${positionWords(position)}`;
  return `${KIND_WORDS[kind]}${count}${side}`;
}

/** The metal as tags, benches and papers print it. */
export function metalView(material: Material, confirmedAt: Moment | null) {
  const metal = metalClassOf(material);
  return { word: METAL_WORDS[metal], class: metal, outline: METAL_OUTLINES[metal], confirmedAt };
}

/** Printed across tag and traveller; null for iron. Hot caustic dissolves aluminium (any safety data sheet, from memory). */
export function metalWarning(material: Material): string | null {
  const metal = metalClassOf(material);
  if (metal === 'aluminium') return 'ALUMINIUM - NO CAUSTIC';
  if (metal === 'other') return 'OTHER METAL - NO CAUSTIC, ASK A LEAD';
  return metal === 'not_known' ? 'METAL NOT KNOWN - NO WASH BEFORE IT IS CONFIRMED' : null;
}

/** Up to 15 kg one person, 25 with care, 45 two, above a hoist. Common practice, no source; local rules of lifting come first. */
export function weightClassOf(weight: Grams | null): WeightClass {
  if (weight === null || weight <= 15_000) return 'one';
  if (weight <= 25_000) return 'one_careful';
  return weight <= 45_000 ? 'two' : 'hoist';
}

const LIFT_WORDS: Readonly<Record<WeightClass, string>> = {
  one: 'one person',
  one_careful: 'one person, lift with care',
  two: 'two people',
  hoist: 'use a hoist',
};

/** `two people`: how a class is lifted. */
export const liftWords = (weightClass: WeightClass): string => LIFT_WORDS[weightClass];

/** "24 kg, one person, lift with care"; the class alone when the weight is not known. */
export const weightWords = (
  weight: Grams | null,
  weightClass: WeightClass,
  settings: Pick<FormatSettings, 'language'>,
): string =>
  weight === null ? LIFT_WORDS[weightClass] : `${formatWeight(weight, settings)}, ${LIFT_WORDS[weightClass]}`;

/** Letters of containers in order: A..Z, AA, AB ... */
export function letterAfter(used: number): string {
  let rest = used;
  let text = '';
  do {
    text = String.fromCharCode(65 + (rest % 26)) + text;
    rest = Math.floor(rest / 26) - 1;
  } while (rest >= 0);
  return text;
}

const SEVERITY: Readonly<Record<number, string>> = { 1: 'slight', 2: 'plain', 3: 'bad' };
/** The word of a severity; null where none was given. */
export const severityWords = (severity: number | null): string | null =>
  severity === null ? null : (SEVERITY[severity] ?? null);

/** Arrival conditions lock at the signature; on a ticket left unsigned at the first operation. */
export function conditionLock(
  facts: Readonly<{ signedHow: 'drawn' | 'on_paper' | 'left_unsigned' | null; workBegun: boolean }>,
): string | null {
  if (facts.signedHow === 'drawn' || facts.signedHow === 'on_paper') {
    return 'The customer signed this list. Add it as a finding.';
  }
  if (!facts.workBegun) return null;
  return facts.signedHow === 'left_unsigned'
    ? 'Left unsigned, and work has begun: the list is locked. Add it as a finding.'
    : 'Work has begun: the list is locked. Add it as a finding.';
}
