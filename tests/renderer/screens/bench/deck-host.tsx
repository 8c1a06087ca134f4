/** A host of one deck survey that keeps what is sent, so that the grid fills, and the hand that works on its screen. */
import { screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { DeckScreen } from '#renderer/screens/bench/pages/deck-screen.tsx';
import { type Answers, showBench } from './around.tsx';
import { CASTING_TYPE, castingOf, operationOf } from './castings.ts';
import { EMPTY_GRID, surveyOf } from './surveys.ts';

export const needs = { done: 0, of: 2, words: '', table: 'surface' };
const bench = castingOf([operationOf(44, 'surface head', { next: true, before: needs })], {
  tables: [{ code: 'cam-line', words: 'Cam line' }] as never,
});
const FINDINGS = {
  findings: [
    {
      id: 9,
      code: 'deck-not-flat',
      shopWords: 'deck out of flat',
      note: null,
      offers: [
        { operation: 'surface-head', words: 'surface head', alsoNeeded: false },
        { operation: 'straighten', words: 'straighten', alsoNeeded: false },
        { operation: 'cam-bore-check', words: 'check cam line', alsoNeeded: true },
      ],
    },
    { id: 10, code: 'at-minimum-thickness', shopWords: 'thickness at or under minimum', note: null, offers: [] },
  ],
};
const looksRight = ({ typed }: { typed: string }) => ({
  read: { kind: 'figure', typed, unit: 'in', value: 1, mark: 'implied' },
  becomes: `= ${typed} tenths`,
  doubt: null,
  cell: null,
  column: null,
  judged: null,
  sentence: '',
});

export type Row = { quantity: string; point: string | null; stage: 'before' | 'after'; typed: string };
type Grid = (number | null)[][];
const copyOf = (grid: readonly (readonly (number | null)[])[]): Grid => grid.map((row) => [...row]);

/** The screen of that deck; `more` over every answered survey. */
export function showDeck(
  before: readonly (readonly (number | null)[])[],
  more: Partial<DeckSurvey> = {},
  answers: Answers = {},
) {
  const kept = { before: copyOf(before), after: copyOf(EMPTY_GRID) };
  let id = 500;
  const put = (stage: 'before' | 'after', point: string | null, step: number | null) => {
    const [, column, row] = /^c(\d+)r(\d+)$/.exec(point ?? '') ?? [];
    const line = kept[stage][Number(row) - 1];
    if (line) line[Number(column) - 1] = step;
  };
  return showBench(<DeckScreen tag={30921} face={null} />, {
    'floor/get-bench': bench,
    'operations/get-casting-type': CASTING_TYPE,
    'operations/list-findings': FINDINGS,
    'readings/get-deck-survey': () => surveyOf(kept.before, kept.after, more),
    'readings/get-preview': looksRight,
    'readings/add-readings': ({ rows }: { rows: Row[] }) => {
      for (const row of rows) put(row.stage, row.point, Number(row.typed));
      id += 1;
      return { readings: [id] };
    },
    'readings/take-back-reading': () => ({ reading: id }),
    'readings/supersede-reading': () => ({ reading: id + 1 }),
    'readings/mark-not-applicable': () => ({ readings: [id] }),
    ...answers,
  });
}

export const field = (label: string) => screen.findByRole('textbox', { name: label });
export const box = (name: RegExp) => screen.findByRole('button', { name });
export const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));
