/** Readings of a face from a few figures: a grid of dial readings in steps, straightedge lines, and what the sheet says. */
import { type FaceCode, faceQuantities, gridCode } from '#core/catalogue/compute/faces.ts';
import type { UnitCode } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { surveyOf } from '#core/readings/compute/deck-survey.ts';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import type { Facts, Limit, Reading } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { WORKED_GRID } from '#tests/kit/flatness-cases.ts';

export const DECK: FaceCode = { code: 'deck' };

/** What differs of the readings: another stage, a gauge. */
type More = Partial<Omit<Reading, 'unit'>>;

/** Rows of a grid, the first side first, in tenths of a thou or micrometres; null: not read. */
export function gridReadings(
  face: FaceCode,
  rows: readonly (readonly (number | null)[])[],
  { unit = 'in', ...more }: More & { unit?: UnitCode } = {},
): Reading[] {
  const { dial, columns, rows: rowCount } = faceQuantities(face);
  const decimals = unit === 'in' ? 4 : 3;
  const size = (quantity: string, count: number) => readingOf(quantity, String(count), 'count', { stage: 'before' });
  const read = rows.flatMap((row, r) =>
    row.flatMap((steps, c) =>
      steps === null
        ? []
        : [
            readingOf(dial, (steps / 10 ** decimals).toFixed(decimals), unit, {
              stage: 'before',
              point: gridCode(c + 1, r + 1),
              ...more,
            }),
          ],
    ),
  );
  return [size(columns, rows[0]?.length ?? 0), size(rowCount, rows.length), ...read];
}

/** The feeler that went under each line, in inches. */
export const lineReadings = (face: FaceCode, gaps: Readonly<Record<string, string>>, more: More = {}): Reading[] =>
  Object.entries(gaps).map(([point, typed]) =>
    readingOf(faceQuantities(face).gap, typed, 'in', { stage: 'before', point, ...more }),
  );

const both = (quantity: string, words: Parameters<typeof limitOf>[2]) =>
  (['before', 'after'] as const).map((stage) => limitOf(quantity, 'in', { ...words, stage }));

/** A head 18 x 6 in: 0.0040 over all, 0.0030 in any 9 in, at least 3.9520 in thick, 0.0010 for the finish. */
export const HEAD_LIMITS: readonly Limit[] = [
  ...both('deck-flatness', { high: '0.0040' }),
  ...both('deck-span', { high: '0.0030' }),
  limitOf('deck-length', 'in', { target: '18' }),
  limitOf('deck-width', 'in', { target: '6' }),
  limitOf('deck-span-length', 'in', { target: '9' }),
  limitOf('thickness', 'in', { low: '3.9520' }),
  limitOf('cut-finish', 'in', { target: '0.0010' }),
  limitOf('feeler-step', 'in', { target: '0.0005' }),
];

type HeadWords = Partial<Facts> & { camLayout?: Facts['casting']['camLayout']; kind?: string };

/** Facts of an overhead cam head with its limits. */
export const headFacts = ({ camLayout = 'dohc', kind = 'head', ...words }: HeadWords = {}): Facts => {
  const plain = factsOf({ limits: HEAD_LIMITS, ...words });
  return { ...plain, casting: { ...plain.casting, camLayout, kind } };
};

/** @throws Error when the casting has no such face */
export function survey(facts: Facts, face: string | null = null): DeckSurvey {
  const found = surveyOf(openBench(facts), face);
  if (!found) throw new Error(`no face ${face}`);
  return found;
}

/** The worked grid as it was read on the dial. */
export const workedReadings = (more: More = {}): Reading[] => gridReadings(DECK, WORKED_GRID, more);
