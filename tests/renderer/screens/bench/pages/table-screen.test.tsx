import { cleanup, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { TableScreen } from '#renderer/screens/bench/pages/table-screen.tsx';
import { type Answers, Refusal, showBench } from '../around.tsx';
import { castingOf, operationOf } from '../castings.ts';
import { cellOf, sheetOf } from '../sheets.ts';

beforeEach(() => {
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(cleanup);

const needs = { done: 0, of: 4, words: '', table: 'heights' };
const bench = castingOf([operationOf(44, 'installed height', { next: true, before: needs })]);
const FIGURE = { kind: 'figure', typed: '', unit: 'mm', value: 1, mark: 'entered' };
const looksRight = ({ typed }: { typed: string }) => ({
  read: { ...FIGURE, typed },
  becomes: '',
  doubt: null,
  cell: null,
  column: null,
  judged: null,
  sentence: `${typed} reads well`,
});

/** A host that keeps what is sent, so that the table fills. */
function show(cells = ['35.12', null, null, null], answers: Answers = {}, more: Partial<Sheet> = {}) {
  const kept = [...cells];
  let id = 5;
  return showBench(<TableScreen tag={30921} table="heights" />, {
    'floor/get-bench': bench,
    'readings/get-table': () =>
      sheetOf(
        kept.map((typed, n) => cellOf(typed, 5 + n)),
        more,
      ),
    'readings/get-preview': looksRight,
    'readings/add-readings': ({ rows }: { rows: { spot: number; typed: string }[] }) => {
      for (const row of rows) kept[row.spot - 1] = row.typed;
      id += 1;
      return { readings: [id] };
    },
    'readings/supersede-reading': ({ reading, typed }: { reading: number; typed: string }) => {
      kept[reading - 5] = typed;
      return { reading };
    },
    'readings/take-back-reading': ({ reading }: { reading: number }) => {
      kept[reading - 5] = null as never;
      return { reading };
    },
    ...answers,
  });
}

const field = (label: string) => screen.findByRole('textbox', { name: label });
const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));
const rowsSent = (inputs: readonly unknown[]) =>
  inputs.flatMap((input) =>
    (input as { rows: { spot: number; typed: string }[] }).rows.map((row) => [row.spot, row.typed]),
  );

describe('TableScreen', () => {
  it('takes figures by keyboard in the order the valves sit, as a gauge types them', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await userEvent.keyboard('35.46{Enter}35.88{Enter}34.99{Enter}');
    await waitFor(() =>
      expect(rowsSent(inputs('readings/add-readings'))).toEqual([
        [2, '35.46'],
        [3, '35.88'],
        [4, '34.99'],
      ]),
    );
    expect(inputs('readings/add-readings')[0]).toMatchObject({ casting: 1, operation: 44 });
  });

  it('takes figures by touch alone', async () => {
    const { inputs } = show();
    await field('2I, height read');
    for (const key of ['3', '5', 'decimal point', '4', '6', 'Next']) await press(key);
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toEqual([[2, '35.46']]));
    await field('1E, height read');
  });

  it('shows how a figure would read before it is kept, and asks when it is not sure', async () => {
    const ask = {
      ...looksRight({ typed: '30' }),
      read: { kind: 'ask', question: '30 can be read two ways.', choices: [{ ...FIGURE, typed: '30.00' }] },
    };
    const { inputs } = show(undefined, {
      'readings/get-preview': ({ typed }: { typed: string }) => (typed === '30' ? ask : looksRight({ typed })),
    });
    await field('2I, height read');
    await userEvent.keyboard('30{Enter}');
    expect(await screen.findByText('30 can be read two ways.')).toBeTruthy();
    expect(inputs('readings/add-readings')).toEqual([]);
    await press('Use 30.00 mm');
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toEqual([[2, '30.00 mm']]));
  });

  it('keeps the old value when a figure is corrected, and undo says and does what it undoes', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await press('1I');
    await userEvent.keyboard('35.20{Enter}');
    await waitFor(() => expect(inputs('readings/supersede-reading')).toHaveLength(1));
    expect(inputs('readings/supersede-reading')[0]).toMatchObject({ reading: 5, typed: '35.20' });
    await waitFor(() =>
      expect(screen.getByRole('row', { name: /Height read|height read/ }).textContent).toContain('35.20'),
    );
    await press('Undo 35.20');
    await waitFor(() => expect(inputs('readings/supersede-reading')[1]).toMatchObject({ reading: 5, typed: '35.12' }));
    await field('1I, height read');
  });

  it('takes a reading back so that the place reads as not measured', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await press('1I');
    await press('Take back');
    await waitFor(() => expect(inputs('readings/take-back-reading')).toEqual([{ reading: 5 }]));
  });

  it('repeats the figure before, and gives one figure to all places not read', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await press('Same as last');
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toEqual([[2, '35.12']]));
    await userEvent.keyboard('36.02');
    await press('Same for all');
    await waitFor(() =>
      expect(rowsSent(inputs('readings/add-readings')).slice(1)).toEqual([
        [3, '36.02'],
        [4, '36.02'],
      ]),
    );
  });

  it('goes on while the host is away, shows what is kept here, and sends it when the host is back', async () => {
    const view = show();
    await field('2I, height read');
    view.line.there = false;
    await userEvent.keyboard('35.46{Enter}35.88{Enter}');
    await waitFor(() => expect(view.outbox.state().entries).toHaveLength(2));
    const row = screen.getByRole('row', { name: /height read/i });
    expect(within(row).getByText('35.46')).toBeTruthy();
    view.line.there = true;
    await view.outbox.send();
    expect(rowsSent(view.inputs('readings/add-readings')).slice(-2)).toEqual([
      [2, '35.46'],
      [3, '35.88'],
    ]);
    expect(view.outbox.state().entries).toEqual([]);
  });

  it('brings a refused figure back to its place with the sentence, and lets it stand when it is right', async () => {
    const unlikely = {
      kind: 'invalid-input',
      code: 'readings/unlikely',
      message: 'Ten times the target.',
      facts: { meant: null },
    } as const;
    const { inputs } = show(undefined, {
      'readings/get-preview': () => new Refusal({ kind: 'unavailable', code: 'x', message: '' }),
      'readings/add-readings': ({ rows }: { rows: { sure: boolean }[] }) =>
        rows[0]?.sure ? { readings: [9] } : new Refusal(unlikely),
    });
    await field('2I, height read');
    await userEvent.keyboard('359.5{Enter}');
    await waitFor(() => expect(inputs('readings/add-readings')).toHaveLength(1));
    await press('2I 359.5');
    expect(await screen.findByText('Ten times the target.')).toBeTruthy();
    await press('359.5 is right');
    await waitFor(() =>
      expect(inputs('readings/add-readings')[1]).toMatchObject({ rows: [{ typed: '359.5', sure: true }] }),
    );
  });

  it('reads the columns from the rear when the head is flipped, and changes no data', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await press('Flip');
    const heads = screen.getAllByRole('columnheader').map((head) => head.textContent);
    expect(heads.filter((text) => /^\d/.test(text ?? ''))).toEqual(['2I', '1I', '2E', '1E']);
    expect(inputs('readings/add-readings')).toEqual([]);
  });

  it('types a row from paper in one go', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await press('Gauge, paper');
    await press('Type from paper');
    await userEvent.type(screen.getByLabelText('2I'), '35.46');
    await userEvent.type(screen.getByLabelText('2E'), '35.90');
    await press('Keep 2 of 3');
    await waitFor(() =>
      expect(rowsSent(inputs('readings/add-readings'))).toEqual([
        [2, '35.46'],
        [4, '35.90'],
      ]),
    );
    expect(inputs('readings/add-readings')).toHaveLength(1);
  });

  it('writes the other unit behind the figure with the unit key', async () => {
    const { inputs } = show();
    await field('2I, height read');
    await userEvent.keyboard('1.383');
    await press('type in in');
    await press('Next');
    await waitFor(() => expect(rowsSent(inputs('readings/add-readings'))).toEqual([[2, '1.383 in']]));
  });

  it('says that readings are locked after sign-off and takes none', async () => {
    const { inputs } = show(undefined, {}, { locked: true });
    await field('2I, height read');
    expect(screen.getByText(/Signed off: these readings are locked/)).toBeTruthy();
    await userEvent.keyboard('35.46{Enter}');
    expect(inputs('readings/add-readings')).toEqual([]);
  });

  it('takes a limit for this job only, with its source', async () => {
    const { inputs } = show(undefined, { 'limits/add-job-limit': { limit: 3, warnings: [] } });
    await field('2I, height read');
    await press('Gauge, paper');
    await userEvent.type(screen.getByLabelText('At least'), '34.80');
    await userEvent.type(screen.getByLabelText('At most'), '35.20');
    await userEvent.type(screen.getByLabelText('Where it comes from'), 'cam card of the customer');
    await press('Keep the limit');
    await waitFor(() =>
      expect(inputs('limits/add-job-limit')).toEqual([
        {
          casting: 1,
          quantity: 'height-with-shim',
          stage: 'after',
          unit: 'mm',
          low: '34.80',
          high: '35.20',
          target: '',
          sourceWords: 'cam card of the customer',
        },
      ]),
    );
  });
});
