/** What a person is asked about a figure before it is kept, from the preview or from a refusal. */

import type { Entry } from '../../client/outbox.ts';
import type { Preview } from './bench-casting.ts';

/** A figure as it would be kept, with its unit in the text where that is in question. */
export type Choice = Readonly<{ typed: string; words: string }>;

export type Question = Readonly<{
  words: string;
  /** Figures that may have been meant. */
  choices: readonly Choice[];
  /** What was typed, where it may be kept as it is. */
  right: Choice | null;
}>;

/** The question about what is being typed; null when it can be kept as it stands or nothing is typed. */
export function questionOf(preview: Preview, text: string): Question | null {
  const { read, doubt } = preview;
  if (read.kind === 'ask') return { words: read.question, choices: read.choices.map(choiceOf), right: null };
  if (read.kind === 'refused') return { words: read.message, choices: [], right: null };
  if (!doubt) return null;
  const choices = doubt.meant ? [choiceOf(doubt.meant)] : [];
  return { words: doubt.question, choices, right: asTyped(text) };
}

/** The same question when it came back as a refusal of an entry that was already on its way. */
export function questionOfRefusal(entry: Entry): Question | null {
  const error = entry.refused;
  if (!error) return null;
  const facts = error.facts ?? {};
  const listed = Array.isArray(facts.choices) ? facts.choices : facts.meant ? [facts.meant] : [];
  return {
    words: error.message,
    choices: listed.filter(isFigure).map(choiceOf),
    right: error.code === 'readings/unlikely' ? asTyped(entry.shown) : null,
  };
}

const asTyped = (text: string): Choice => ({ typed: text, words: `${text} is right` });

type Figure = Readonly<{ typed: string; unit: string }>;

function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'typed' in value && typeof value.typed === 'string';
}

function choiceOf({ typed, unit }: Figure): Choice {
  const whole = typed.endsWith(unit) ? typed : `${typed} ${unit}`;
  return { typed: whole, words: whole };
}
