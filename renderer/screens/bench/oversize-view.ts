/** The host's answer to "which oversize" as the screen shows it: what it begins with, what stops it, and what is said. */
import type {
  OversizeCandidate,
  OversizeChoice,
  OversizeRule,
  OversizeVerdict,
  SizeShown,
} from '#core/readings/compute/oversize-model.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import type { Mark } from '../../kit/mark.tsx';

/** What is done with one cylinder. */
export type Part = 'bore' | 'sleeve' | 'leave';

type SpotId = NonNullable<Sheet['columns'][number]['spot']>;

/** What is asked of the host: null for all cylinders. A sleeved one gets the size too, its wear does not count. */
export function askedOf(
  sheet: Pick<Sheet, 'columns'>,
  parts: ReadonlyMap<number, Part>,
): Readonly<{ only: SpotId[] | null; sleeves: SpotId[] }> {
  const spots = sheet.columns.flatMap(({ spot }) => (spot === null ? [] : [spot]));
  const left = spots.some((spot) => parts.get(spot) === 'leave');
  return {
    only: left ? spots.filter((spot) => parts.get(spot) !== 'leave') : null,
    sleeves: spots.filter((spot) => parts.get(spot) === 'sleeve'),
  };
}

/**
 * The rule and size to begin with: what a person chose, else the best where both rules agree. Where they do not, the
 * machinist chooses the rule first.
 */
export function sizeToBegin(
  choice: OversizeChoice,
  rule: OversizeRule | null,
): Readonly<{ rule: OversizeRule | null; code: string | null }> {
  if (rule !== null) return { rule, code: choice.rules.find((one) => one.rule === rule)?.best ?? null };
  const best = choice.rules.map((one) => one.best);
  const [first = null] = best;
  return best.every((code) => code === first)
    ? { rule: choice.rules[0]?.rule ?? null, code: first }
    : { rule: null, code: null };
}

/** The mark of a rule's word about a size: what is not enough lies under. */
export function oversizeMark(verdict: OversizeVerdict): Mark {
  switch (verdict.name) {
    case 'pass':
      return 'pass';
    case 'too close to call':
      return 'close';
    case 'fail':
      return verdict.direction === 'over' ? 'over' : 'under';
    case 'no limit known':
      return 'no-limit';
    case 'not measured':
      return 'not-measured';
  }
}

/** Why the size cannot be used yet; empty when it can. */
export function whyShut(
  choice: OversizeChoice,
  candidate: OversizeCandidate | null,
  rule: OversizeRule | null,
): string {
  if (choice.missing.length > 0) return choice.missing[0] ?? '';
  if (rule === null) return 'The two rules do not agree: touch the one to go by.';
  if (!candidate) return choice.rules.find((one) => one.rule === rule)?.why || 'Choose a size.';
  const verdict = candidate[rule];
  if (verdict.name !== 'pass') return verdict.reason;
  return stands(choice, candidate) ? 'This size stands already.' : '';
}

/** True when every cylinder asked already wants this size. */
const stands = (choice: OversizeChoice, candidate: OversizeCandidate): boolean =>
  choice.chosen.length === 1 && choice.chosen[0]?.code === candidate.code && choice.chosen[0].where === choice.which;

/** `Bore to 3.9660, hone the last .0040. Largest reading 3.9572: cylinder 3, thrust, top.` */
export function wayThere(choice: OversizeChoice, candidate: OversizeCandidate): string {
  const { boring } = candidate;
  const hone = choice.figures.find((one) => one.quantity === 'hone-allowance')?.size;
  const { largest } = choice;
  return [
    boring && `Bore to ${boring.text}${hone ? `, hone the last ${hone.text}` : ''}.`,
    largest && `Largest reading ${largest.size.text}: ${largest.words}.`,
    largest?.score && `A score of ${largest.score.text} there counts twice: ${largest.reach.text}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** A size that may be missing, as the table prints it. */
export const sizeText = (size: SizeShown | null): string => size?.text ?? '\u2013';
