import { cleanup, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { holdsFigures, RowSwitches, rowGroups } from '#renderer/screens/bench/parts/row-switches.tsx';
import { showBench } from '../around.tsx';
import { boresOf } from '../bores-sheet.ts';

afterEach(cleanup);

const bores = boresOf();
const sheet = { ...bores, rows: bores.rows.map((row) => ({ ...row, shown: row.stage === 'before' })) };

describe('rowGroups', () => {
  it('keeps the points of a quantity together, before and after apart, and the rest in one group', () => {
    expect(rowGroups(sheet).map((group) => [group.words, group.rows.length])).toEqual([
      ['read or computed once', 4],
      ['bore, before work', 6],
      ['bore, after work', 6],
    ]);
  });
});

describe('RowSwitches', () => {
  const show = () =>
    showBench(<RowSwitches sheet={sheet} onClose={() => {}} />, { 'readings/show-row': { shown: true } });

  it('switches a row on and another off, for this casting', async () => {
    const { inputs } = show();
    const [after] = screen.getAllByRole('button', { name: /^taper, after work/ });
    if (!after) throw new Error('no row');
    expect(after.getAttribute('aria-pressed')).toBe('false');
    await userEvent.click(after);
    await userEvent.click(screen.getByRole('button', { name: /^piston, before work/ }));
    await waitFor(() =>
      expect(inputs('readings/show-row')).toEqual([
        { casting: 1, table: 'bores', quantity: 'bore-taper', point: null, stage: 'after', shown: true },
        { casting: 1, table: 'bores', quantity: 'piston-size', point: null, stage: 'before', shown: false },
      ]),
    );
  });

  it('keeps a row in sight in which something is read', async () => {
    const { inputs } = show();
    const [read] = screen.getAllByRole('button', { name: /^thrust, top/ });
    if (!read) throw new Error('no row');
    expect(sheet.rows[0] && holdsFigures(sheet.rows[0])).toBe(true);
    await userEvent.click(read);
    expect(inputs('readings/show-row')).toEqual([]);
  });
});
