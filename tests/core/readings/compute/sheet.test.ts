import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { BENCH_TABLES, findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { quantity } from '#core/catalogue/compute/quantity.ts';
import { id } from '#core/kernel/ids.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { factsOf, limitOf, readingOf, toolOf, valves } from '#tests/kit/bench-facts.ts';
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

describe('composeSheet', () => {
  const inches = { '1E': '1.518', '1I': '1.503' };

  it('shows places in bench order with what a person calls them, and one row per quantity', () => {
    const sheet = heights(practiceHead('LO-4', inches));

    expect(sheet.columns.map((column) => column.label).join(' ')).toBe('1E 1I 2I 2E 3E 3I 4I 4E');
    expect(sheet.columns[0]).toMatchObject({ words: 'cylinder 1, exhaust', group: '', side: 'E' });
    expect(sheet.rows.map((row) => row.words).slice(0, 3)).toEqual(['height read', 'shims', 'with shims']);
    expect(sheet.rows[0]).toMatchObject({ unit: 'in', decimals: 3, entry: { rule: 'last_digits', digits: 3 } });
    expect(sheet.rows[2]?.limits[0]).toMatchObject({ text: '1.490 – 1.510', targetText: '1.500' });
  });

  it('groups a head with a row for each side', () => {
    const groups = heights(practiceHead('TW-4')).columns.map((column) => `${column.label} ${column.group}`);

    expect(groups[0]).toBe('1I1 INTAKE SIDE');
    expect(groups.at(-1)).toBe('4E2 EXHAUST SIDE');
    expect(heights(practiceHead('TW-4')).columns.at(-1)?.words).toBe('cylinder 4, rear exhaust');
  });

  it('never shows a valve that is not read as pass, and says how many there are of each', () => {
    const sheet = heights(practiceHead('LO-4', inches));

    expect(sheet.columns.slice(2).every((column) => column.verdict.name === 'not measured')).toBe(true);
    expect(sheet.summary).toBe('2 pass, 6 not measured');
    expect(sheet.pickingText).toBe('1 × 0.015');
  });

  it('reversing the order of valves changes no verdict (property of the rule, every practice head)', () => {
    const facts = practiceHead('BV-6', { '1I1': '37.74', '1I2': '38.42', '2I1': '39.76', '3E2': '38.05' });
    const turned = { ...facts, spots: facts.spots.map((spot) => ({ ...spot, benchOrder: -spot.benchOrder })) };
    const verdicts = (it: Facts) =>
      Object.fromEntries(heights(it).columns.map((column) => [column.label, [column.word, column.shims?.typed]]));

    expect(heights(turned).columns[0]?.label).not.toBe(heights(facts).columns[0]?.label);
    expect(verdicts(turned)).toEqual(verdicts(facts));
  });

  it('marks a load from the sheet as nominal, and takes the line of a spring that was tested', () => {
    const facts = practiceHead('LO-4', inches);
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const tested = [
      readingOf('spring-load-1', '52', 'lbf', { spot }),
      readingOf('spring-load-2', '126', 'lbf', { spot }),
    ];

    const nominal = heights(facts);
    const own = heights({ ...facts, readings: [...facts.readings, ...tested] });

    expect(cell(nominal, 'seat-load||after', '1E')?.marks).toContain('calculated, nominal spring');
    expect(cell(own, 'seat-load||after', '1E')?.marks).toContain('calculated, this spring as tested');
    expect(cell(own, 'seat-load||after', '1E')?.text).not.toBe(cell(nominal, 'seat-load||after', '1E')?.text);
  });

  it('never lets a weak spring pass on height', () => {
    const facts = practiceHead('LO-4', inches);
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const weak = {
      ...facts,
      limits: [...facts.limits, limitOf('spring-strength', 'ratio', { low: '0.90', forWhat: 'shop' })],
      readings: [...facts.readings, readingOf('spring-load-1', '53', 'lbf', { spot })],
    };

    const sheet = heights(weak);

    expect(cell(sheet, 'height-with-shim||after', '1E')?.word).toBe('pass');
    expect(sheet.columns[0]).toMatchObject({ word: 'weak', because: 'of its load' });
    expect(sheet.toDo[0]).toMatchObject({ label: '1E', words: 'of its load 0.88: weak' });
  });

  it('says what to do about too short and too tall, in order', () => {
    const sheet = heights(practiceHead('CF-4', { '1E': '39.70', '1I': '41.80' }));

    expect(sheet.toDo.map((it) => `${it.label} ${it.words}`)).toEqual([
      '1E too short without a shim: locks, cup and valve first',
      '1I too tall for 1.5 of shims: seat insert',
    ]);
    expect(sheet.toDo[0]?.steps.at(-1)).toContain('only with the lead');
    expect(sheet.pickingText).toBe('');
  });

  it('judges the height as it will be from what was written as fitted, not from what was chosen', () => {
    const facts = practiceHead('LO-4', inches);
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const planned = heights(facts);
    const fitted = heights({
      ...facts,
      readings: [...facts.readings, readingOf('shims-fitted', '0.030', null, { spot })],
    });

    expect(cell(planned, 'height-with-shim||after', '1E')).toMatchObject({ state: 'planned', text: '1.503' });
    expect(cell(fitted, 'height-with-shim||after', '1E')).toMatchObject({
      state: 'computed',
      text: '1.488',
      word: 'too short',
    });
  });

  it('does not count an old shim twice', () => {
    const facts = practiceHead('LO-4', inches);
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const readings = [
      readingOf('installed-height', '1.503', 'in', { spot, stage: 'before', readOn: 'cup_and_shim' }),
      readingOf('old-shim', '0.015', 'in', { spot, stage: 'before' }),
    ];

    const without = heights({ ...facts, readings: readings.slice(0, 1) });
    const sheet = heights({ ...facts, readings });

    expect(cell(without, 'height-with-shim||after', '1E')).toMatchObject({
      state: 'not measured',
      word: 'not measured',
    });
    expect(cell(without, 'height-with-shim||after', '1E')?.marks).toContain(
      'Read on cup and shim: measure the old shim.',
    );
    expect(sheet.columns[0]?.shims?.typed).toBe('0.015');
  });

  it('takes the customer’s cam for the lift, and says so', () => {
    const sheet = heights({ ...practiceHead('LO-4', inches), valveLift: measureOf('0.400', 'in') });

    expect(cell(sheet, 'open-load||after', '1E')?.marks).toContain('lift as the customer says');
    expect(cell(sheet, 'coil-bind-clearance||after', '1E')?.text).toBe('0.123');
  });

  it('claims no load past the shortest point the spring was measured at', () => {
    const sheet = heights({ ...practiceHead('LO-4', inches), valveLift: measureOf('0.500', 'in') });

    expect(cell(sheet, 'open-load||after', '1E')).toMatchObject({ state: 'not measured', text: '' });
    expect(cell(sheet, 'open-load||after', '1E')?.marks[0]).toContain('shorter than the spring was ever measured');
  });

  it('keeps the guard band of the gauge, and says when no gauge is named', () => {
    const facts = practiceHead('LO-4');
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const gauge = toolOf({ uncertainty: measureOf('0.004', 'in') });
    const read = (tool: typeof gauge.id | null) =>
      heights({
        ...facts,
        guard: true,
        tools: [gauge],
        readings: [readingOf('installed-height', '1.508', 'in', { spot, stage: 'before', tool })],
      });

    expect(read(gauge.id).columns[0]).toMatchObject({ word: 'too close' });
    expect(cell(read(null), 'height-with-shim||after', '1E')?.marks).toContain('tool not named: no guard kept');
  });

  it('shows both people’s figures where they do not agree, and counts neither', () => {
    const facts = practiceHead('LO-4', inches);
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const other = readingOf('installed-height', '1.530', 'in', { spot, stage: 'before', by: 'DK' });

    const sheet = heights({ ...facts, readings: [...facts.readings, other] });

    expect(cell(sheet, 'installed-height||before', '1E')).toMatchObject({ state: 'two readings', text: '' });
    expect(cell(sheet, 'installed-height||before', '1E')?.choose.map((it) => it.by)).toEqual(['TV', 'DK']);
    expect(sheet.columns[0]?.word).toBe('not measured');
    expect(sheet.toDo[0]?.words).toContain('read twice');
  });

  it('warns of an overdue gauge that was used, and still judges', () => {
    const facts = practiceHead('LO-4');
    const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
    const gauge = toolOf({ name: 'G11', overdue: true, nextDue: '2026-02-01' as never });

    const sheet = heights({
      ...facts,
      tools: [gauge],
      readings: [readingOf('installed-height', '1.500', 'in', { spot, stage: 'before', tool: gauge.id })],
    });

    expect(sheet.notes[0]).toContain('G11: check was due 2026-02-01');
    expect(sheet.columns[0]?.word).toBe('pass');
  });

  it('keeps the surfacing record: taken off, left above the minimum (exact arithmetic: 3.9600 - 0.0061 = 3.9539 in)', () => {
    const facts = practiceHead('NV-8');
    const readings = [
      readingOf('thickness', '3.9600', 'in', { stage: 'before' }),
      readingOf('thickness', '3.9539', 'in', { stage: 'after' }),
    ];

    const sheet = composeSheet({ ...facts, readings }, table('surface'));
    const text = (row: string) => sheet.rows.find((it) => it.key === row)?.cells[0]?.text;

    expect(text('stock-removed||after')).toBe('0.0061');
    expect(text('thickness-left||after')).toBe('0.0059');
    expect(sheet.rows.find((it) => it.key === 'thickness||after')?.cells[0]?.word).toBe('pass');
  });

  it('finds an added quantity in table, verdict and summary: one row of data, no other change', () => {
    const spring = quantity('seal-lip', 'seal lip', { spotKind: 'valve', fine: true, over: 'too proud' });
    const facts = factsOf({
      quantities: [...factsOf().quantities, spring],
      spots: valves('1E', '1I'),
      limits: [limitOf('seal-lip', 'in', { high: '0.0100' })],
      readings: [readingOf('seal-lip', '0.0120', 'in', { spot: id<'spot'>(1) })],
    });
    const added: BenchTable = {
      code: 'lips',
      words: 'Seal lips',
      castingKind: 'head',
      spotKind: 'valve',
      operation: null,
      rows: [{ quantity: 'seal-lip', point: null, stage: 'after', shown: true }],
    };

    const sheet = composeSheet(facts, added);

    expect(sheet.rows[0]).toMatchObject({ words: 'seal lip', decimals: 4, unitMark: 'in' });
    expect(sheet.columns.map((column) => column.word)).toEqual(['too proud', 'not measured']);
    expect(sheet.toDo[0]?.words).toBe('seal lip 0.0120: too proud');
  });

  it('composes every table of the catalogue for a head and for nothing read', () => {
    for (const it of BENCH_TABLES.filter((one) => one.castingKind === 'head')) {
      const sheet = composeSheet(practiceHead('TW-4'), it);

      const fitting = it.rows.filter(({ quantity }) => findQuantity(quantity)?.onlyFor !== 'pushrods');

      expect(sheet.counts.pass).toBe(0);
      // Of the rows for some engines only those of an overhead cam stay.
      expect(sheet.rows.length).toBeLessThanOrEqual(fitting.length);
      expect(sheet.rows.length).toBeGreaterThanOrEqual(
        fitting.filter(({ quantity }) => findQuantity(quantity)?.onlyFor === null).length,
      );
    }
  });
});
