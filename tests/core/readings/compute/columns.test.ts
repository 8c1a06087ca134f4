import { describe, expect, it } from 'vitest';
import { columnsOf } from '#core/readings/compute/columns.ts';
import type { Spot } from '#core/readings/compute/model.ts';
import { valves } from '#tests/kit/bench-facts.ts';

describe('columnsOf', () => {
  it('calls valves by cylinder and side, twins front and rear', () => {
    const columns = columnsOf(valves('1I1', '1E1', '1E2', '2I'), 'valve');

    expect(columns.map((it) => it.words)).toEqual([
      'cylinder 1, intake',
      'cylinder 1, front exhaust',
      'cylinder 1, rear exhaust',
      'cylinder 2, intake',
    ]);
  });

  it('goes by row and bench order, banks in groups', () => {
    const bore = (label: string, bank: Spot['bank'], row: number, benchOrder: number): Spot => ({
      ...(valves('1E')[0] as Spot),
      kind: 'cylinder',
      label,
      bank,
      row,
      benchOrder,
      cylinder: Number(label),
      side: null,
    });

    const columns = columnsOf([bore('2', 'right', 2, 1), bore('3', 'left', 1, 2), bore('1', 'left', 1, 1)], 'cylinder');

    expect(columns.map((it) => `${it.label} ${it.group}`)).toEqual(['1 LEFT BANK', '3 LEFT BANK', '2 RIGHT BANK']);
    expect(columns[0]?.words).toBe('cylinder 1');
  });

  it('has one column for figures read once, and none for places the casting has not', () => {
    expect(columnsOf(valves('1E'), null)).toEqual([{ spot: null, label: '', words: 'whole casting', group: '' }]);
    expect(columnsOf(valves('1E'), 'main')).toEqual([]);
  });
});
