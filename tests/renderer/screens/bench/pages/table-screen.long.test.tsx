import { cleanup, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { TableScreen } from '#renderer/screens/bench/pages/table-screen.tsx';
import { type Answers, showBench } from '../around.tsx';
import { boresOf } from '../bores-sheet.ts';
import { castingOf } from '../castings.ts';
import { choiceOf } from '../oversizes.ts';
import { cellOf, rowOf, sheetOf } from '../sheets.ts';

beforeEach(() => {
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(cleanup);

const FIGURE = { kind: 'figure', typed: '', unit: 'mm', value: 1, mark: 'entered' };
const DOUBT = { question: '356.1 mm is ten times the target.', meant: { typed: '35.61', unit: 'mm' } };
/** A figure of four digits before the point is in doubt; every other one is judged too tall. */
const preview = ({ typed }: { typed: string }) => ({
  read: { ...FIGURE, typed },
  becomes: '',
  doubt: /^\d{3}/.test(typed) ? DOUBT : null,
  cell: { ...cellOf(typed), verdict: { name: 'fail', direction: 'over', cannotProve: false }, word: 'too tall' },
  column: {
    ...sheetOf([cellOf(null)]).columns[1],
    verdict: { name: 'fail', direction: 'over', cannotProve: false },
    word: 'too tall',
  },
  judged: null,
  sentence: '',
});

function show(sheet: Sheet, answers: Answers = {}) {
  return showBench(<TableScreen tag={30921} table={sheet.table.code} />, {
    'floor/get-bench': castingOf([]),
    'readings/get-table': sheet,
    'readings/get-preview': preview,
    'readings/add-readings': { readings: [9] },
    ...answers,
  });
}
const heights = sheetOf([cellOf('35.12'), cellOf(null), cellOf(null), cellOf(null)]);
const field = (label: string) => screen.findByRole('textbox', { name: label });
const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));
const typedIn = (inputs: readonly unknown[]) =>
  inputs.flatMap((input) => (input as { rows: { spot: number; typed: string; sure: boolean }[] }).rows);

describe('TableScreen, entering with a keypad alone', () => {
  it('takes figures, the figure before, and a corrected digit with digits, point, Enter, plus and times', async () => {
    const { inputs } = show(heights);
    await field('2I, height read');
    await userEvent.keyboard('35.46{Enter}');
    await field('1E, height read');
    await userEvent.keyboard('+');
    await field('2E, height read');
    await userEvent.keyboard('35.7*8{Enter}');
    await waitFor(() =>
      expect(typedIn(inputs('readings/add-readings')).map((row) => [row.spot, row.typed])).toEqual([
        [2, '35.46'],
        [3, '35.46'],
        [4, '35.8'],
      ]),
    );
  });

  it('answers the question about a wild figure: times takes what was meant, plus lets it stand', async () => {
    const { inputs } = show(heights);
    await field('2I, height read');
    await userEvent.keyboard('356.1');
    await userEvent.keyboard('{Enter}');
    expect(await screen.findByText(/ten times the target/)).toBeTruthy();
    await userEvent.keyboard('*');
    await field('1E, height read');
    await userEvent.keyboard('356.1');
    await userEvent.keyboard('{Enter}');
    await screen.findByText(/ten times the target/);
    await userEvent.keyboard('+');
    await waitFor(() =>
      expect(typedIn(inputs('readings/add-readings')).map((row) => [row.typed, row.sure])).toEqual([
        ['35.61 mm', true],
        ['356.1', true],
      ]),
    );
  });

  it('chooses words by their digit, and leaves the plus to shims that are written with it', async () => {
    const words = (quantity: string, choices: string[]) =>
      rowOf(quantity, 'words', [cellOf(null), cellOf(null), cellOf(null), cellOf(null)], {
        family: 'choice',
        unit: null,
        unitMark: '',
        choices,
        limits: [],
      });
    const { inputs } = show(
      { ...heights, rows: [words('insert-state', ['stays', 'renew']), words('shims-fitted', [])] },
      {
        'readings/get-shim-choice': { label: '1I', best: null, candidates: [], advice: [] },
      },
    );
    await field('1I, words');
    await userEvent.keyboard('2{Enter}1{Enter}2{Enter}2{Enter}');
    await field('1I, words');
    await userEvent.keyboard('0.5+1.0{Enter}');
    await waitFor(() =>
      expect(typedIn(inputs('readings/add-readings')).map((row) => row.typed)).toEqual([
        'renew',
        'stays',
        'renew',
        'renew',
        '0.5+1.0',
      ]),
    );
  });

  it('says what it undid', async () => {
    show(heights, {
      'readings/supersede-reading': { reading: 5 },
    });
    await field('2I, height read');
    await press('1I');
    await userEvent.keyboard('35.20{Enter}');
    await field('2I, height read');
    await userEvent.keyboard('*');
    expect(await screen.findByText('Undone: 1I height read 35.20 taken back, 35.12 stands again.')).toBeTruthy();
  });
});

describe('TableScreen, the whole table', () => {
  it('shows the verdict of a figure as soon as it is entered, before the table has come back', async () => {
    let answer: (value: unknown) => void = () => {};
    show(heights, { 'readings/add-readings': () => new Promise((resolve) => (answer = resolve)) });
    await field('2I, height read');
    await userEvent.keyboard('35.96');
    await screen.findAllByText('too tall');
    await userEvent.keyboard('{Enter}');
    const row = screen.getByRole('row', { name: /^height read/i });
    await waitFor(() => expect(within(row).getByText(/35\.96/).textContent).toContain('too tall'));
    expect(within(screen.getByRole('row', { name: /^verdict/i })).getByText('too tall')).toBeTruthy();
    answer({ readings: [9] });
  });

  it('keeps the sums and what to do in sight whatever is open, and opens the whole list', async () => {
    const toDo = ['1I', '2I', '1E'].map((label, n) => ({
      spot: (n + 1) as never,
      label,
      words: `too tall at ${label}`,
      steps: ['New seat insert.'],
    }));
    show({ ...heights, toDo, summary: '1 pass, 3 fail' });
    await field('2I, height read');
    for (const panel of ['Gauge, paper', 'Picture']) {
      await press(panel);
      expect(screen.getByText(/1 pass, 3 fail/)).toBeTruthy();
    }
    await press('3 to do');
    const list = screen.getByRole('region', { name: 'What to do' });
    expect(within(list).getAllByText(/New seat insert/)).toHaveLength(3);
    await userEvent.click(within(list).getByRole('button', { name: '1E' }));
    await field('1E, height read');
  });

  it('shows before and after apart, and both side by side, and types what is chosen', async () => {
    show(boresOf());
    await field('2, bore');
    const heads = () => screen.getAllByRole('rowheader').map((head) => head.textContent);
    expect(heads()).toEqual([
      'thrust, top',
      'middle',
      'bottom',
      'pin axis, top',
      'middle',
      'bottom',
      'taper, in',
      'piston, in',
      'size wanted, in',
      'Verdict',
    ]);
    await userEvent.click(screen.getByRole('radio', { name: 'Both' }));
    expect(heads().slice(0, 4)).toEqual(['thrust, top before', 'after', 'middle before', 'after']);
    await userEvent.click(screen.getByRole('radio', { name: 'After' }));
    expect(screen.getByRole('rowheader', { name: 'bore after, thrust, top' })).toBeTruthy();
    expect((await screen.findByRole('row', { name: /^bore after, thrust, top/ })).dataset.current).toBe('');
  });

  it('opens the choice of an oversize where the size wanted stands, and nowhere else', async () => {
    show(boresOf(), { 'readings/get-oversize-choice': choiceOf() });
    await field('2, bore');
    await press('Oversize');
    expect(await screen.findByRole('region', { name: 'Finished size' })).toBeTruthy();
    cleanup();
    show(heights);
    await field('2I, height read');
    expect(screen.queryByRole('button', { name: 'Oversize' })).toBeNull();
  });

  it('draws the bore the hand is at, and goes back to readings', async () => {
    show(boresOf());
    await field('2, bore');
    await userEvent.click(within(screen.getByRole('table')).getByRole('button', { name: '1' }));
    await press('Picture');
    expect(screen.getByRole('img', { name: /^cylinder 1, Bore before work: thrust top 3\.9562/ })).toBeTruthy();
    await press('Back to readings');
    await field('1, bore');
  });
});
