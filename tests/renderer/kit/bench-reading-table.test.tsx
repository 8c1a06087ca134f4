import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ReadingTable, type ReadingTableProps } from '#renderer/kit/bench-reading-table.tsx';

afterEach(cleanup);

const props: ReadingTableProps = {
  label: 'Installed height of 30921',
  thing: 'Valve',
  groups: [
    {
      key: 'i',
      words: 'INTAKE SIDE',
      note: 'front to rear',
      columns: [
        { key: '1I1', label: '1I1' },
        { key: '1I2', label: '1I2' },
      ],
    },
  ],
  rows: [
    {
      key: 'h',
      label: 'Height read',
      kind: 'read',
      limits: '34.75 – 35.25',
      cells: { '1I1': { lines: ['35.12'], struck: '36.12' } },
    },
    { key: 'v', label: 'Verdict', kind: 'verdict', cells: { '1I1': { lines: [], mark: 'pass', markWords: 'pass' } } },
  ],
  current: { column: '1I2', row: 'h' },
  typing: '35.4',
  onChoose: () => {},
};

describe('ReadingTable', () => {
  it('has heads for rows and columns, says not measured in words, and shows what is being typed in its cell', () => {
    render(<ReadingTable {...props} />);
    expect(screen.getAllByRole('columnheader').map((head) => head.textContent)).toContain('1I2');
    const [height, verdict] = ['Height read', 'Verdict'].map((name) =>
      screen.getByRole('row', { name: new RegExp(name) }),
    );
    if (!height || !verdict) throw new Error('row missing');
    expect(within(height).getByText('35.4')).toBeTruthy();
    expect(within(verdict).getByText('not measured')).toBeTruthy();
  });

  it('keeps the old value struck beside the one that stands', () => {
    render(<ReadingTable {...props} />);
    expect(screen.getByText('36.12').tagName).toBe('S');
    expect(screen.getByText('35.12').tagName).not.toBe('S');
  });

  it('chooses a column by its head and a cell by touch', async () => {
    const onChoose = vi.fn();
    render(<ReadingTable {...props} onChoose={onChoose} />);
    await userEvent.click(screen.getByRole('button', { name: '1I1' }));
    await userEvent.click(screen.getByText('35.12'));
    expect(onChoose.mock.calls).toEqual([
      ['1I1', null],
      ['1I1', 'h'],
    ]);
  });
});
