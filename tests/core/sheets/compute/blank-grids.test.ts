import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import { quantity } from '#core/catalogue/compute/quantity.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { blankGrids } from '#core/sheets/compute/blank-grids.ts';
import { factsOf, limitOf, valves } from '#tests/kit/bench-facts.ts';
import { benchRow, tableOf } from '#tests/kit/measured-facts.ts';

const gridsOf = (wanted: readonly string[], tables: readonly BenchTable[], words: Partial<Facts> = {}) => {
  const facts = factsOf({ spots: valves('1E', '1I'), ...words });
  return blankGrids({
    tables: tables.map((table) => ({ table, sheet: composeSheet(facts, table) })),
    wanted: new Set(wanted),
  });
};
const seats = tableOf([benchRow('seat-width'), benchRow('margin'), benchRow('bell-mouth', { shown: false })]);

describe('blankGrids', () => {
  it('gives every shown row of a table that the work wants, by place, limits in both units', () => {
    const limits = [limitOf('margin', 'in', { low: '.047' })];

    expect(gridsOf(['margin'], [seats], { limits })).toEqual([
      {
        heading: 'Trial',
        groups: [{ title: '', spots: ['1E', '1I'] }],
        rows: [
          { label: 'Seat width, in', limit: '', other: '' },
          { label: 'Margin, in', limit: 'at least .047 in', other: '1.19 mm' },
        ],
      },
    ]);
  });

  it('gives nothing for work that measures nothing', () => {
    expect(gridsOf([], [seats])).toEqual([]);
    expect(gridsOf(['thickness'], [seats])).toEqual([]);
  });

  it('gives boxes for what a wanted figure is worked out from, and none for the figure itself', () => {
    const [grid] = gridsOf(['guide-clearance'], [tableOf([benchRow('stem'), benchRow('guide-clearance')])]);

    expect(grid?.rows.map(({ label }) => label)).toEqual(['Valve stem, in']);
  });

  it('gives found and after of a figure read once beside each other', () => {
    const table = tableOf([benchRow('thickness', { stage: 'before' }), benchRow('thickness'), benchRow('finish-ra')], {
      spotKind: null,
    });

    expect(gridsOf(['thickness'], [table])[0]?.rows).toMatchObject([
      { label: 'Thickness, in', found: true, after: true },
      { label: 'Finish Ra, µin', found: false, after: true },
    ]);
  });

  it('gives a row of two tables once', () => {
    const grids = gridsOf(['margin'], [seats, tableOf([benchRow('margin'), benchRow('stem')], { code: 'other' })]);

    expect(grids.map(({ rows }) => rows.map(({ label }) => label))).toEqual([['Seat width, in', 'Margin, in']]);
  });

  it('lays many points of one figure beside each other', () => {
    const points = Array.from({ length: 12 }, (_, n): [string, string] => [`p${n}`, `point ${n}`]);
    const relief = quantity('relief', 'relief', { fine: true, points });
    const table = tableOf(
      points.map(([point]) => benchRow('relief', { point })),
      { spotKind: null },
    );
    const grids = gridsOf(['relief'], [table], { quantities: [...QUANTITIES, relief] });

    expect(grids).toHaveLength(1);
    expect(grids[0]?.groups).toEqual([{ title: '', spots: points.map(([point]) => point) }]);
  });

  it('carries the cautions of the work', () => {
    const table = findBenchTable('insert-fits');

    expect(table && gridsOf(['insert-od'], [table])[0]?.note).toContain('eye protection');
  });
});
