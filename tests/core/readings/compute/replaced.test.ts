import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { isReplaced } from '#core/readings/compute/replaced.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import type { SheetRow } from '#core/readings/compute/sheet-model.ts';
import { factsOf, limitOf, readingOf, valves } from '#tests/kit/bench-facts.ts';

const TABLE: BenchTable = {
  code: 'margins',
  words: 'Margins',
  castingKind: 'head',
  spotKind: 'valve',
  operation: null,
  rows: (['before', 'after'] as const).map((stage) => ({ quantity: 'margin', point: null, stage, shown: true })),
};
const spots = valves('1E', '1I');
const limits = (['before', 'after'] as const).map((stage) => limitOf('margin', 'mm', { stage, low: '1.00' }));
const read = (typed: string, stage: 'before' | 'after') =>
  readingOf('margin', typed, 'mm', { spot: spots[0]?.id ?? null, stage });
const sheetOf = (...readings: ReturnType<typeof read>[]) => composeSheet(factsOf({ spots, readings, limits }), TABLE);

describe('isReplaced', () => {
  it('lets a place pass that failed before work and passes after it (common sense, no source)', () => {
    const failed = sheetOf(read('0.80', 'before'));
    expect([failed.columns[0]?.verdict.name, failed.toDo.length]).toEqual(['fail', 1]);
    const mended = sheetOf(read('0.80', 'before'), read('1.20', 'after'));
    expect([mended.columns[0]?.verdict.name, mended.toDo]).toEqual(['pass', []]);
    expect(mended.rows[0]?.cells[0]?.verdict?.name).toBe('fail');
  });

  it('never lets a place pass that fails after work, nor one that was good and is not read after', () => {
    expect(sheetOf(read('1.20', 'before'), read('0.80', 'after')).columns[0]?.verdict.name).toBe('fail');
    expect(sheetOf(read('0.80', 'before')).columns[1]?.verdict.name).toBe('not measured');
  });

  it('counts only what is there after work: not another point, not another place, not what is planned', () => {
    const cell = (value: number | null, state: string) => ({ value, state });
    const row = (stage: 'before' | 'after', point: string | null, cells: unknown[]): SheetRow =>
      ({ quantity: 'bore', stage, point, cells }) as unknown as SheetRow;
    const before = row('before', 'top-x', [cell(5, 'read'), cell(5, 'read')]);
    const isGone = (after: SheetRow, column = 0) => isReplaced([before, after], before, column);
    expect(isGone(row('after', 'top-x', [cell(4, 'read'), cell(null, 'not measured')]))).toBe(true);
    expect(isGone(row('after', 'top-x', [cell(4, 'read'), cell(null, 'not measured')]), 1)).toBe(false);
    expect(isGone(row('after', 'mid-x', [cell(4, 'read')]))).toBe(false);
    expect(isGone(row('after', 'top-x', [cell(4, 'planned')]))).toBe(false);
    expect(isReplaced([before], before, 0)).toBe(false);
  });
});
