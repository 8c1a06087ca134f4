import { cleanup, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { castingOf, operationOf } from '../castings.ts';
import { box, needs, press, showDeck as show } from '../deck-host.tsx';
import { BOWED, EMPTY_GRID, judgedOf, stageOf } from '../surveys.ts';

beforeEach(() => {
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(cleanup);

describe('DeckScreen, the result', () => {
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

  it('draws the relief in bands with a line at each height of its scale, and takes it away', async () => {
    const { container } = show(BOWED);
    await box(/^Relief$/);
    // Six bands of ten tenths from the lowest point to sixty above it: five heights between them.
    await waitFor(() => expect(container.querySelectorAll('.contour')).toHaveLength(5));
    expect([...container.querySelectorAll('.bands b')].map((one) => one.textContent)).toEqual([
      '10',
      '20',
      '30',
      '40',
      '50',
      '60',
      '0',
    ]);
    await press('Relief');
    expect(container.querySelectorAll('.contour')).toHaveLength(0);
    // The lines of the straightedge instead.
    expect(container.querySelectorAll('.edge')).toHaveLength(2);
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
