import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { listNeeded } from '#core/readings/compute/needed.ts';
import { readFacts } from '#core/readings/store/facts.ts';
import { listTables, readSheets } from '#core/readings/store/needed.ts';
import { type Measuring, startMeasuring } from '#tests/kit/measuring.ts';

type Row = readonly [quantity: string, label: string, stage: 'before' | 'after', typed: string, unit: string | null];

/** Keep figures by the labels of a table's columns. */
async function keep(host: Measuring, table: string, rows: readonly Row[]) {
  const { columns } = await host.table(table);
  const spotOf = (label: string) => columns.find((column) => column.label === label)?.spot ?? null;
  await host.send(
    'readings/add-readings',
    {
      casting: host.casting,
      rows: rows.map(([quantity, label, stage, typed, unit]) => ({
        quantity,
        spot: spotOf(label),
        stage,
        typed,
        unit: unit as never,
      })),
    },
    { as: 'DK' },
  );
}
const cellOf = (sheet: Awaited<ReturnType<Measuring['table']>>, quantity: string, label: string) => {
  const index = sheet.columns.findIndex((column) => column.label === label);
  return sheet.rows.find((row) => row.quantity === quantity)?.cells[index];
};
const PLAN: readonly Row[] = [
  ['installed-height', '1E', 'before', '1.500', 'in'],
  ['margin', '1E', 'before', '0.060', 'in'],
  ['seat-cut-depth', '1E', 'before', '0.010', 'in'],
  ['face-stock', '1E', 'before', '0.006', 'in'],
];

describe('readings/get-table, before cutting', () => {
  it('says what a cut will do, from the data of the head, and judges it', async () => {
    const host = await startMeasuring('LO-4');

    await keep(host, 'before-cutting', PLAN);
    const plan = await host.table('before-cutting');

    // 0.010 + 0.006 / cos 45 = 0.018485 in; 200 lbf/in; a head of 1.125 in (exact mathematics).
    expect(cellOf(plan, 'valve-rise', '1E')).toMatchObject({ text: '0.0185', state: 'planned' });
    expect(cellOf(plan, 'plan-height-with-shim', '1E')).toMatchObject({ text: '1.503', word: 'pass' });
    expect(cellOf(plan, 'plan-load-no-shim', '1E')?.text).toBe('56.3');
    expect(cellOf(plan, 'margin-left', '1E')).toMatchObject({ text: '0.052', word: 'pass' });
    expect(cellOf(plan, 'plan-chamber', '1E')?.text).toBe('0.30');
    expect(cellOf(plan, 'valve-rise', '1I')).toMatchObject({ text: '', value: null });
  });

  it('is a plan: no paper and no signature carries it, nor rows that stand in another table', async () => {
    const host = await startMeasuring('LO-4');
    await keep(host, 'before-cutting', PLAN);
    const printed = readSheets(host.db, host.casting, day('2026-03-09')).map((sheet) => sheet.table.code);

    expect(printed).toContain('heights');
    expect(printed).not.toContain('before-cutting');
    expect(printed).not.toContain('valves');
  });

  it('is not what was done: after stays not measured', async () => {
    const host = await startMeasuring('LO-4');
    await keep(host, 'before-cutting', PLAN);

    expect(cellOf(await host.table('seats'), 'valve-rise', '1E')).toMatchObject({ value: null });
  });
});

describe('readings/get-table, vacuum of ports', () => {
  it('opens with the vacuum test, a column a port, siamesed ones once', async () => {
    const host = await startMeasuring('LO-4');
    const tables = await host.send('readings/list-tables', { casting: host.casting }, { as: 'DK' });
    const { columns } = await host.table('port-vacuum');

    expect(tables.filter((it) => it.operation === 'vacuum-test').map((it) => it.code)).toEqual(['port-vacuum']);
    expect(columns.map((it) => it.label)).toEqual(['1E', '1-2I', '2-3E', '3-4I', '4E']);
  });

  it('judges the fall of each port, and the vacuum test wants it of every port', async () => {
    const host = await startMeasuring('LO-4');
    await keep(host, 'port-vacuum', [
      ['port-vacuum-start', '1E', 'after', '25', 'inHg'],
      ['port-vacuum-end', '1E', 'after', '24', 'inHg'],
      ['port-vacuum-start', '1-2I', 'after', '25', 'inHg'],
      ['port-vacuum-end', '1-2I', 'after', '14', 'inHg'],
    ]);
    const sheet = await host.table('port-vacuum');
    const facts = readFacts(host.db, host.casting, day('2026-03-09'));
    const wants = [{ quantity: 'port-vacuum-fall', stage: 'after', where: 'worked_spots', required: false }] as const;
    const needed = listNeeded(
      openBench(facts),
      [{ id: 1 as never, spots: [], redo: false, wants }],
      listTables(host.db, facts),
    );

    expect([cellOf(sheet, 'port-vacuum-fall', '1E')?.word, cellOf(sheet, 'port-vacuum-fall', '1-2I')?.word]).toEqual([
      'pass',
      'falls too fast',
    ]);
    expect(sheet.toDo).toMatchObject([{ label: '1-2I', words: 'fall in 10 s 11.0: falls too fast' }]);
    expect(needed.map((it) => it.isMet)).toEqual([true, true, false, false, false]);
    expect(
      host.db.sql<{ code: string }>(
        "SELECT q.code FROM needed_reading n JOIN quantity q ON q.id = n.quantity_id JOIN operation_kind k ON k.id = n.operation_kind_id WHERE k.code = 'vacuum-test'",
      ),
    ).toEqual([{ code: 'port-vacuum-fall' }]);
  });
});

describe('readings/get-table, lash of buckets', () => {
  it('names the nearest size of the sheet and the lash it leaves', async () => {
    const host = await startMeasuring('TW-4');
    await keep(host, 'lash', [
      ['lash-shim', '1I1', 'before', '2.70', 'mm'],
      ['lash', '1I1', 'before', '0.28', 'mm'],
    ]);
    const sheet = await host.table('lash');

    expect(cellOf(sheet, 'lash-shim-wanted', '1I1')?.text).toBe('2.780');
    expect(cellOf(sheet, 'lash-shim-chosen', '1I1')).toMatchObject({ text: '2.800', state: 'planned' });
    expect(cellOf(sheet, 'lash-with-shim', '1I1')).toMatchObject({ text: '0.18', word: 'pass' });
  });
});
