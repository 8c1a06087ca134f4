import { describe, expect, it } from 'vitest';
import { BENCH_TABLES, findBenchTable, isShopOnly } from '#core/catalogue/compute/bench-tables.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';

describe('BENCH_TABLES', () => {
  it.each(BENCH_TABLES)(
    '$code: every row is a quantity of its places, with a point where the quantity has some',
    (it) => {
      for (const row of it.rows) {
        const found = findQuantity(row.quantity);

        expect(found?.spotKind).toBe(it.spotKind);
        expect(found?.points.length === 0 ? row.point === null : found?.points.some((p) => p.code === row.point)).toBe(
          true,
        );
      }
      expect(new Set(it.rows.map((row) => `${row.quantity}|${row.point}|${row.stage}`)).size).toBe(it.rows.length);
    },
  );

  it('knows what is the shop’s own: the data of a lift and of the cutter, not the finish that a builder asks for', () => {
    expect(['lift-h', 'cutter-feed', 'spent-bath'].map(isShopOnly)).toEqual([true, true, true]);
    expect(['finish-ra', 'finish-rz', 'cam-bore-size', 'pressure-held', 'crack-result'].some(isShopOnly)).toBe(false);
  });

  it('finds one by its code', () => {
    expect(findBenchTable('heights')?.operation).toBe('installed-height');
    expect(findBenchTable('none')).toBeUndefined();
  });
});
