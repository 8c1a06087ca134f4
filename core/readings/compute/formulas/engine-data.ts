/**
 * The engine's own data as the formulas of its volumes ask for it, and the words they share: what was read at this stage, what
 * does not change with work, what the sheets say. Missing data is named, never taken as nothing.
 */
import type { Stage } from '../../../catalogue/compute/bench-table.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { fromSheet, type Known, type Look, madeBy, unknown } from '../look.ts';

/** A figure with a value; null for what is not known, even where it tells why. */
export type Figure = Known & Readonly<{ value: number }>;

/** A known figure, or null. */
export const figureOf = (known: Known | null): Figure | null =>
  known === null || known.value === null ? null : { ...known, value: known.value };

/** A reading or a computed quantity with a value, at this stage or the one asked for. */
export const valueAt = (look: Look, quantity: string, stage: Stage = look.place.stage): Figure | null =>
  figureOf(look.value(quantity, { stage }));

/** What was read at either stage, else what the sheet says. */
export const dataOf = (look: Look, quantity: string): Figure | null => figureOf(look.figure(quantity));

const WORDS_OF_SHEET = 'from the sheet';

/** Many figures of a sheet in one line of small print: `from the sheet: gasket bore, gasket thickness, piston dish`. */
function condensed<K extends Known>(known: K): K {
  const named = known.marks.filter((mark) => mark.endsWith(` ${WORDS_OF_SHEET}`));
  const lists = known.marks.filter((mark) => mark.startsWith(`${WORDS_OF_SHEET}: `));
  if (named.length + lists.length < 2) return known;
  const of = [
    ...lists.flatMap((mark) => mark.slice(WORDS_OF_SHEET.length + 2).split(', ')),
    ...named.map((mark) => mark.slice(0, -WORDS_OF_SHEET.length - 1)),
  ];
  const rest = known.marks.filter((mark) => !named.includes(mark) && !lists.includes(mark));
  return { ...known, marks: [...rest, `${WORDS_OF_SHEET}: ${[...new Set(of)].join(', ')}`] };
}

/**
 * What work may change: a gasket, a bore, a deck. Before: as read, else by the sheet, else as it is after. After: as read, else as
 * it was before, else by the sheet.
 *
 * @param engine what stands on the engine's own sheet, where no limit names it
 */
export function changingAt(look: Look, quantity: string, words: string, engine: Figure | null = null): Figure | null {
  const [before, after] = [valueAt(look, quantity, 'before'), valueAt(look, quantity, 'after')];
  const sheet = figureOf(look.targetKnown(quantity, `${words} ${WORDS_OF_SHEET}`)) ?? engine;
  return look.place.stage === 'before' ? (before ?? sheet ?? after) : (after ?? before ?? sheet);
}

/** Bore of this engine: as finished where it was bored, else as read or by a sheet. */
export function boreOf(look: Look): Figure | null {
  const finished =
    look.place.stage === 'after' && look.facts.casting.kind === 'block'
      ? meanOf(
          look.all('bore', { stage: 'after', point: 'mid-x' }).map((it) => it.known),
          'bore as finished, mean of all',
        )
      : null;
  const engine = sheetOf(look.facts.engine?.bore, 'bore of the engine from the sheet');
  return finished ?? changingAt(look, 'cylinder-bore', 'bore', engine);
}

/** Stroke of this engine. */
export const strokeOf = (look: Look): Figure | null =>
  dataOf(look, 'stroke') ?? sheetOf(look.facts.engine?.stroke, 'stroke of the engine from the sheet');

/** Lean of a bank from vertical, half the V angle. */
export const bankLeanOf = (look: Look): Figure | null =>
  dataOf(look, 'bank-lean') ?? sheetOf(look.facts.engine?.bankLean, 'bank lean of the engine from the sheet');

/** Lean of the intake face from square to the deck. */
export const faceLeanOf = (look: Look): Figure | null =>
  dataOf(look, 'face-lean') ?? sheetOf(look.facts.engine?.faceLean, 'face lean of the engine from the sheet');

const sheetOf = (value: number | null | undefined, words: string): Figure | null =>
  value === null || value === undefined ? null : figureOf(fromSheet(value, words));

/** Mean of figures; null for none. */
export function meanOf(known: readonly Known[], ...marks: readonly string[]): Figure | null {
  const figures = known.flatMap((it) => figureOf(it) ?? []);
  if (figures.length === 0) return null;
  const sum = figures.reduce((total, it) => total + BigInt(it.value), 0n);
  const value = divideRounded(sum, BigInt(figures.length));
  return figureOf(
    madeBy(
      figures.map((it) => [it, 1 / figures.length] as const),
      value,
      marks,
    ),
  );
}

/** Without what is said of each bank or corner: it belongs to the deck and not to what is reckoned from it. */
export const overall = (found: Figure): Figure => ({
  ...found,
  marks: found.marks.filter((mark) => !OF_A_PART.test(mark)),
});
const OF_A_PART = /^(left bank|right bank|corner) /;

const NOT_KNOWN = 'not known: ';

/** Why something that needs all of these cannot be said: what is missing is named once, in one sentence. */
export function because(...parts: readonly (Known | null)[]): Known {
  const marks = parts.flatMap((it) => (it !== null && it.value === null ? it.marks : []));
  const names = marks.flatMap((mark) => (mark.startsWith(NOT_KNOWN) ? mark.slice(NOT_KNOWN.length).split('; ') : []));
  const others = marks.filter((mark) => !mark.startsWith(NOT_KNOWN));
  const named = names.length === 0 ? [] : [`${NOT_KNOWN}${[...new Set(names)].join('; ')}`];
  return { ...unknown(''), marks: [...new Set([...named, ...others])] };
}

/** @param names what is missing, as it is called in a sentence */
export const notKnown = (names: readonly string[]): Known => unknown(`${NOT_KNOWN}${names.join('; ')}`);

/** A formula whose small print names the sheets once. */
export const inShort =
  (formula: (look: Look) => Known | null) =>
  (look: Look): Known | null => {
    const known = formula(look);
    return known && condensed(known);
  };

/** What is named in a sentence when it is missing. */
export const missing = (wanted: Readonly<Record<string, Known | null>>): string[] =>
  Object.entries(wanted).flatMap(([words, known]) => (known?.value == null ? [words] : []));
