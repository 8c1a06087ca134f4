import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import { cellKey, groupByCell, settleCell } from '#core/readings/compute/current.ts';
import type { Reading } from '#core/readings/compute/model.ts';
import { readingOf } from '#tests/kit/bench-facts.ts';

const read = (typed: string, words: Partial<Reading> = {}) => readingOf('installed-height', typed, 'in', words);
const never = () => false;
const always = () => true;

describe('settleCell', () => {
  it('lets the row stand that nobody supersedes, and keeps the old value', () => {
    const first = read('1.712');
    const second = read('1.721', { supersedes: first.id });

    expect(settleCell([first, second], never)).toMatchObject({ current: second, choose: [], earlier: [first] });
  });

  it('reads a taken-back cell as not measured', () => {
    const first = read('1.712');
    const back = { ...read('1.712', { supersedes: first.id }), kind: 'taken_back' as const, value: null };

    const settled = settleCell([first, back], never);

    expect(settled.current).toBeNull();
    expect(settled.earlier).toEqual([back, first]);
  });

  it('lets nothing stand while two people’s figures disagree', () => {
    const [one, two] = [read('1.712'), read('1.725')];

    expect(settleCell([one, two], never)).toMatchObject({ current: null, choose: [one, two] });
  });

  it('lets the later one stand where they agree, and keeps both', () => {
    const [one, two] = [read('1.712'), read('1.713')];

    expect(settleCell([one, two], always)).toMatchObject({ current: two, earlier: [one] });
  });

  it('keeps the first set of a redo as history', () => {
    const first = read('1.712', { operation: id<'operation'>(7) });
    const redo = read('1.730', { operation: id<'operation'>(9) });

    expect(settleCell([first, redo], never)).toMatchObject({ current: redo, earlier: [first] });
  });

  it('takes a row of no operation for what was under way', () => {
    const before = read('1.700');
    const first = read('1.712', { operation: id<'operation'>(7) });
    const loose = read('1.730');

    expect(settleCell([before, first], never).current).toBe(first);
    expect(settleCell([first, loose], never).choose).toEqual([first, loose]);
  });

  it('is empty where nothing was written', () => {
    expect(settleCell(undefined, never)).toEqual({ current: null, choose: [], earlier: [] });
  });
});

describe('groupByCell', () => {
  it('tells quantity, spot, point and stage apart', () => {
    const rows = [read('1.712'), read('1.713', { stage: 'before' }), read('1.714', { spot: id<'spot'>(3) })];

    expect(groupByCell(rows).size).toBe(3);
    expect(cellKey(rows[2] ?? read('0'))).toBe('installed-height|3||after');
  });
});
