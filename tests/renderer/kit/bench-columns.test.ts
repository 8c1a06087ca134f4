import { describe, expect, it } from 'vitest';
import { type ColumnSpot, groupColumns, pageGroups } from '#renderer/kit/bench-columns.ts';

const spot = (label: string, row: number, benchOrder: number): ColumnSpot => ({
  key: label,
  label,
  row,
  benchOrder,
  group: label.includes('E') ? 'EXHAUST SIDE' : 'INTAKE SIDE',
});
const twinCam = ['1I1', '1I2', '2I1', '2I2']
  .map((label, n) => spot(label, 1, n + 1))
  .concat(['1E1', '1E2', '2E1', '2E2'].map((label, n) => spot(label, 2, n + 1)));
const pushrod = ['1E', '1I', '2I', '2E'].map((label, n) => spot(label, 1, n + 1));
const labels = (groups: readonly { columns: readonly { label: string }[] }[]) =>
  groups.map((group) => group.columns.map((column) => column.label).join(' '));

describe('groupColumns', () => {
  it('names each row of a twin-cam head by its side and keeps the order in which the valves sit', () => {
    const groups = groupColumns([...twinCam].reverse(), false);
    expect(groups.map((group) => group.words)).toEqual(['INTAKE SIDE', 'EXHAUST SIDE']);
    expect(labels(groups)).toEqual(['1I1 1I2 2I1 2I2', '1E1 1E2 2E1 2E2']);
  });

  it('gives one group without a name to a row of both sides', () => {
    const [group, ...more] = groupColumns(pushrod, false);
    expect(more).toEqual([]);
    expect(group?.words).toBe('');
  });

  it('reads from the rear when the head is turned end for end', () => {
    const [group] = groupColumns(pushrod, true);
    expect(group?.columns.map((column) => column.label)).toEqual(['2E', '2I', '1I', '1E']);
    expect(group?.note).toBe('rear to front');
  });
});

describe('pageGroups', () => {
  it('keeps everything on one page while there is room', () => {
    expect(pageGroups(groupColumns(twinCam, false), 8)).toHaveLength(1);
  });
  it('shows one side at a time when there is not', () => {
    const pages = pageGroups(groupColumns(twinCam, false), 6);
    expect(pages.map((page) => page.map((group) => group.words))).toEqual([['INTAKE SIDE'], ['EXHAUST SIDE']]);
  });
  it('cuts a row that is too long in even parts and names them by their ends', () => {
    const row = Array.from({ length: 24 }, (_, n) => spot(`${n + 1}I`, 1, n + 1));
    const pages = pageGroups(groupColumns(row, false), 16);
    expect(pages.map((page) => page[0]?.columns.length)).toEqual([12, 12]);
  });
  it('has no page for no columns', () => {
    expect(pageGroups([], 16)).toEqual([]);
  });
});
