/** Invented data: a regression baseline of the practice shop, not an outside proof of the formulas. */
import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import expected from '#demo-data/expected.json' with { type: 'json' };
import { practiceHead } from '#tests/kit/practice-head.ts';

function table(code: string): BenchTable {
  const found = findBenchTable(code);
  if (!found) throw new Error(`no table ${code}`);
  return found;
}
const heights = (facts: Facts): Sheet => composeSheet(facts, table('heights'));
const cell = (sheet: Sheet, row: string, label: string) => {
  const index = sheet.columns.findIndex((column) => column.label === label);
  return sheet.rows.find((it) => it.key === row)?.cells[index];
};

describe('composeSheet, heights of the practice shop', () => {
  type Valve = {
    valve: string;
    measured: string;
    shims: string[];
    final: string;
    verdict: string;
    seatLoad: string;
    openLoad: string;
    bindClearance: string;
  };
  type Head = {
    unit: UnitCode;
    forceUnit: UnitCode;
    valves: Valve[];
    pickingList: Record<string, number>;
    spread: string;
  };
  const stories = expected.stories as unknown as Record<string, Record<string, Head>>;
  const heads = [
    ['S01', 'shims', 'LO-4'],
    ['S02', 'shimsLeft', 'BV-6'],
    ['S02', 'shimsRight', 'BV-6'],
    ['S04', 'shims', 'CF-4'],
    ['S12', 'heightsFirst', 'BG-2'],
    ['S12', 'heightsAfterInserts', 'BG-2'],
  ].map(([story = '', key = '', type = '']) => ({
    name: `${story} ${key}`,
    type,
    head: stories[story]?.[key] as Head,
  }));
  const all = heads.flatMap(({ name, type, head }) => head.valves.map((valve) => ({ name, type, head, ...valve })));
  const sheetOf = (type: string, head: Head) =>
    heights(practiceHead(type, Object.fromEntries(head.valves.map((valve) => [valve.valve, valve.measured]))));
  const near = (text: string | undefined, other: string, unit: UnitCode) =>
    expect(Math.abs(measureOf((text ?? '').replace('\u2212', '-'), unit) - measureOf(other, unit)));

  it('regression baseline: 48 valves, invented data', () => {
    expect(all).toHaveLength(48);
  });

  it.each(all)('regression baseline, $name: valve $valve read $measured', (valve) => {
    const sheet = sheetOf(valve.type, valve.head);
    const column = sheet.columns.find((it) => it.label === valve.valve);
    const { unit, forceUnit } = valve.head;
    const text = (row: string) => cell(sheet, row, valve.valve)?.text;

    expect(column?.shims?.typed).toBe(valve.shims.length === 0 ? 'none' : valve.shims.join('+'));
    near(text('height-with-shim||after'), valve.final, unit).toBe(0);
    near(text('seat-load||after'), valve.seatLoad, forceUnit).toBeLessThanOrEqual(
      measureOf(forceUnit === 'lbf' ? '0.05' : '0.5', forceUnit) + 1,
    );
    near(text('open-load||after'), valve.openLoad, forceUnit).toBeLessThanOrEqual(
      measureOf(forceUnit === 'lbf' ? '0.05' : '0.5', forceUnit) + 1,
    );
    near(text('coil-bind-clearance||after'), valve.bindClearance, unit).toBe(0);
    expect(`${column?.verdict.name}${column?.verdict.name === 'fail' ? `: ${column.word}` : ''}`).toBe(valve.verdict);
  });

  it.each(heads)('regression baseline, $name: spread and shims to fetch, failing valves left out', ({ type, head }) => {
    const sheet = sheetOf(type, head);
    const passing = head.valves.filter((valve) => valve.verdict === 'pass').flatMap((valve) => valve.shims);

    expect(sheet.spread?.split(' ')[0]).toBe(head.spread);
    expect(Object.fromEntries(sheet.picking.map(({ text, count }) => [text, count]))).toEqual(
      Object.fromEntries([...new Set(passing)].map((size) => [size, passing.filter((it) => it === size).length])),
    );
  });

  it.each(expected.shimEdgeCases)('regression baseline, edge: $castingType read $measured', (edge) => {
    const facts = practiceHead(
      edge.castingType,
      edge.castingType === 'LO-4' ? { '1E': edge.measured } : { '1I1': edge.measured },
    );
    const sheet = heights(facts);
    const label = edge.castingType === 'LO-4' ? '1E' : '1I1';
    const column = sheet.columns.find((it) => it.label === label);

    expect(column?.shims?.typed).toBe(edge.shims.length === 0 ? 'none' : edge.shims.join('+'));
    near(
      cell(sheet, 'height-with-shim||after', label)?.text,
      edge.final,
      edge.castingType === 'LO-4' ? 'in' : 'mm',
    ).toBe(0);
    expect(`${column?.verdict.name}${column?.verdict.name === 'fail' ? `: ${column.word}` : ''}`).toBe(edge.verdict);
  });
});
