import { cleanup, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { box, field, press, type Row, showDeck as show } from '../deck-host.tsx';
import { readingOf } from '../sheets.ts';
import { BOWED, EMPTY_GRID, surveyOf } from '../surveys.ts';

beforeEach(() => {
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(cleanup);

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
});
