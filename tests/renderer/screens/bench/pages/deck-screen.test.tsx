import { cleanup, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { DeckScreen } from '#renderer/screens/bench/pages/deck-screen.tsx';
import { type Answers, showBench } from '../around.tsx';
import { CASTING_TYPE, castingOf, operationOf } from '../castings.ts';
import { readingOf } from '../sheets.ts';
import { BOWED, EMPTY_GRID, judgedOf, stageOf, surveyOf } from '../surveys.ts';

beforeEach(() => {
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(cleanup);

const needs = { done: 0, of: 2, words: '', table: 'surface' };
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

type Row = { quantity: string; point: string | null; stage: 'before' | 'after'; typed: string };
type Grid = (number | null)[][];
const copyOf = (grid: readonly (readonly (number | null)[])[]): Grid => grid.map((row) => [...row]);

/** A host that keeps what is sent, so that the grid fills. */
function show(before: readonly (readonly (number | null)[])[], more: Partial<DeckSurvey> = {}, answers: Answers = {}) {
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

const field = (label: string) => screen.findByRole('textbox', { name: label });
const box = (name: RegExp) => screen.findByRole('button', { name });
const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));
const rowsSent = (inputs: readonly unknown[]) =>
  inputs.flatMap((input) => (input as { rows: Row[] }).rows.map((row) => [row.point, row.typed]));

describe('DeckScreen', () => {
  it('takes the grid there and back as a gauge types it, each figure with its Enter', async () => {
    const { inputs } = show(EMPTY_GRID);
    await field('column 1, row 1');
    await userEvent.keyboard('0{Enter}-28{Enter}-40{Enter}-26{Enter}6{Enter}-2{Enter}');
    await waitFor(() =>
      expect(rowsSent(inputs('readings/add-readings'))).toEqual([
        ['c1r1', '0'],
        ['c2r1', '-28'],
        ['c3r1', '-40'],
        ['c4r1', '-26'],
        ['c5r1', '6'],
        ['c5r2', '-2'],
      ]),
    );
    expect(inputs('readings/add-readings')[0]).toMatchObject({
      casting: 1,
      operation: 44,
      rows: [{ quantity: 'deck-dial', point: 'c1r1', stage: 'before', unit: 'in', spot: null }],
    });
    await field('column 4, row 2');
  });

  it('takes it by touch alone, shows what a bare figure becomes, and undo says what it undoes', async () => {
    const { inputs } = show(EMPTY_GRID);
    await field('column 1, row 1');
    for (const key of ['minus', '2', '8']) await press(key);
    expect(await screen.findByText('= -28 tenths')).toBeTruthy();
    await press('Next');
    await field('column 2, row 1');
    await screen.findByText('1 of 15 points');
    await press('Undo -28');
    await waitFor(() => expect(inputs('readings/take-back-reading')).toHaveLength(1));
    await field('column 1, row 1');
  });

  it('gives the figure before once more, and one figure to every point not read', async () => {
    const { inputs } = show([[0, -28, null, null, null], ...EMPTY_GRID.slice(1)]);
    await field('column 3, row 1');
    await press('Same as last');
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toEqual([['c3r1', '-28']]));
    await field('column 4, row 1');
    await userEvent.keyboard('-30');
    await press('Same for all');
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toHaveLength(13));
  });

  it('goes on while the host is away, shows what is kept here, and sends it when the host is back', async () => {
    const view = show(EMPTY_GRID);
    await field('column 1, row 1');
    view.line.there = false;
    await userEvent.keyboard('-28{Enter}6{Enter}');
    await waitFor(() => expect(view.outbox.state().entries).toHaveLength(2));
    await box(/^column 1, row 1, \u221228/);
    view.line.there = true;
    await view.outbox.send();
    await waitFor(() => expect(view.outbox.state().entries).toHaveLength(0));
    await box(/^column 2, row 1, \+6/);
  });

  it('lies the other way after a flip: the hand starts at the other end and every figure keeps its place', async () => {
    const { inputs } = show([[0, null, null, null, null], ...EMPTY_GRID.slice(1)]);
    await field('column 2, row 1');
    await press('Flip');
    await press(/^column 5, row 3, not read/);
    await field('column 5, row 3');
    await userEvent.keyboard('8{Enter}');
    await field('column 4, row 3');
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toEqual([['c5r3', '8']]));
    expect((await box(/^column 1, row 1, 0/)).style.left).not.toBe('');
    const [first, last] = [await box(/^column 1, row 1/), await box(/^column 5, row 3/)];
    expect(Number.parseFloat(first.style.left)).toBeGreaterThan(Number.parseFloat(last.style.left));
  });

  it('shows the result once every point is read: figure, verdict, shape, touching points, cut three ways', async () => {
    show(BOWED);
    const out = within(await screen.findByRole('region', { name: 'Out of flat' }));
    expect(out.getByText((_, element) => element?.textContent === '.0056 in')).toBeTruthy();
    expect(out.getByText('HOLLOW')).toBeTruthy();
    expect(out.getByText('too much')).toBeTruthy();
    await box(/^column 3, row 2, \u221252, touches the lower plane/);
    await box(/^column 5, row 3, \+8, touches the upper plane/);
    const cut = within(screen.getByRole('region', { name: 'How much to cut' }));
    expect(cut.getByRole('row', { name: /Levelled best \.0066/ })).toBeTruthy();
    expect(cut.getByText('3.9534')).toBeTruthy();
    await userEvent.click(cut.getByRole('button', { name: 'Levelled on three corners' }));
    expect(cut.queryByText('3.9534')).toBeNull();
    expect(screen.getByRole('img', { name: /along, middle: \.0048 in hollow/ })).toBeTruthy();
  });

  it('draws the section that is touched', async () => {
    show(BOWED);
    await userEvent.click(await box(/^corner to corner/));
    expect(screen.getByRole('img', { name: /corner to corner: \.0056 in hollow/ })).toBeTruthy();
  });

  it('writes the finding down and leads to where it is kept', async () => {
    show(BOWED);
    await userEvent.click(await box(/^Ask for surface head or straighten/));
    expect(window.location.hash).toBe('#/bench/tag/30921/found');
    const kept = JSON.parse(sessionStorage.getItem('benchtag-typed-found-1') ?? '{}');
    expect(kept).toMatchObject({
      kind: 9,
      words: 'Deck .0056 in out of flat (at most .0040), hollow. Straighten before surfacing.',
    });
  });

  it('asks only for what is not on the casting yet', async () => {
    const surfaced = castingOf([operationOf(44, 'surface head', { kindCode: 'surface-head', before: needs })]);
    show(BOWED, {}, { 'floor/get-bench': surfaced });
    await box(/^Ask for straighten$/);
  });

  it('leads to what must be measured first', async () => {
    show(BOWED, { before: stageOf('before', BOWED, { measureFirst: 'cam-line' }) });
    const link = await screen.findByRole('link', { name: 'Measure cam line' });
    expect(link.getAttribute('href')).toBe('#/bench/tag/30921/table/cam-line');
    await box(/^Report it$/);
  });

  it('reports a casting at its minimum where no way of cutting leaves enough', async () => {
    const stage = stageOf('before', BOWED);
    const left = judgedOf('thickness', 'thickness left', '3.9400', 'fail', null);
    const cut = stage.cut && { ...stage.cut, ways: stage.cut.ways.map((way) => ({ ...way, left })) };
    show(BOWED, { before: { ...stage, cut } });
    await box(/^Report thickness at or under minimum$/);
  });

  it('surveys again after work and keeps the first survey beside it', async () => {
    const { inputs } = show(BOWED);
    await screen.findByRole('region', { name: 'Out of flat' });
    await press('After work');
    await field('column 1, row 1');
    await userEvent.keyboard('1{Enter}');
    await waitFor(() => expect(inputs('readings/add-readings')).toHaveLength(1));
    expect(inputs('readings/add-readings')[0]).toMatchObject({ rows: [{ point: 'c1r1', stage: 'after' }] });
    expect(screen.getByText('Before work:', { exact: false }).textContent).toContain('.0056');
  });

  it('takes straightedge gaps line by line, and where each is in one touch', async () => {
    const { inputs } = show(EMPTY_GRID);
    await field('column 1, row 1');
    await press('Straightedge');
    await field('along, intake side');
    await press('one end');
    await userEvent.keyboard('.004{Enter}');
    await waitFor(() => expect(inputs('readings/add-readings')).toHaveLength(2));
    const sent = inputs('readings/add-readings').flatMap((input) => (input as { rows: Row[] }).rows);
    expect(sent.map((row) => [row.quantity, row.point, row.typed])).toEqual([
      ['deck-gap-place', 'along-1', 'one end'],
      ['deck-gap', 'along-1', '.004'],
    ]);
    await field('along, middle');
  });

  it('takes the sizes of grid and face as ordinary readings', async () => {
    const { inputs } = show(EMPTY_GRID);
    await field('column 1, row 1');
    await press('Sizes');
    await field('columns');
    await userEvent.keyboard('7{Enter}');
    await waitFor(() => expect(inputs('readings/add-readings')).toHaveLength(1));
    expect(inputs('readings/add-readings')[0]).toMatchObject({
      rows: [{ quantity: 'deck-columns', point: null, stage: 'before', typed: '7', unit: 'count' }],
    });
  });

  it('marks a point that falls into a hole', async () => {
    const { inputs } = show(EMPTY_GRID);
    await field('column 1, row 1');
    await press('Nothing to measure here');
    await waitFor(() => expect(inputs('readings/mark-not-applicable')).toHaveLength(1));
    await field('column 2, row 1');
  });

  it('lets choose where two people read one point and do not agree', async () => {
    const survey = surveyOf(BOWED);
    const [first, ...points] = survey.before.points;
    if (!first) throw new Error('no point');
    const two = { ...first.cell, state: 'two readings' as const, choose: [readingOf(601, '0'), readingOf(602, '-4')] };
    const chosen: unknown[] = [];
    show(
      BOWED,
      { before: { ...survey.before, points: [{ ...first, cell: two }, ...points] } },
      {
        'readings/choose-reading': (input: unknown) => {
          chosen.push(input);
          return { reading: 602 };
        },
      },
    );
    await userEvent.click(await box(/^column 1, row 1/));
    await userEvent.click(await box(/^-4 DK/));
    await waitFor(() => expect(chosen).toEqual([expect.objectContaining({ reading: 602 })]));
  });

  it('is only looked at after sign-off', async () => {
    show([[0, null, null, null, null], ...EMPTY_GRID.slice(1)], { locked: true });
    await screen.findByRole('region', { name: 'Out of flat' });
    expect(screen.queryByRole('group', { name: 'Number pad' })).toBeNull();
    expect(screen.queryByRole('button', { name: 'Type readings' })).toBeNull();
  });

  it('leads to the other faces, each with how it stands', async () => {
    show(BOWED);
    const link = await screen.findByRole('link', { name: 'Intake face not measured' });
    expect(link.getAttribute('href')).toBe('#/bench/tag/30921/deck/intake-face');
  });
});
