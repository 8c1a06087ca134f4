/** What holds for every table of a head, whatever is read. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { BENCH_TABLES, findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Limit, Spot } from '#core/readings/compute/model.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { limitOf, valves } from '#tests/kit/bench-facts.ts';
import { inch, ports, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const table = (code: string) => findBenchTable(code) as BenchTable;
const OF_VALVES = BENCH_TABLES.filter((it) => it.spotKind === 'valve' || it.spotKind === 'port');
const SPOTS = [...valves('1E', '1I', '2I', '2E'), ...ports('1E', '1I', '2I', '2E')];

/** The limits a shop starts with, as they stand in a workspace. */
const shopLimits = (): Limit[] =>
  SHOP_LIMITS.map(({ quantity, stage, side, low, high, target, unit }) =>
    limitOf(quantity, unit, { stage, side, low, high, target, forWhat: 'shop' }),
  );
const DATA = sheet(
  ['seat-angle', '45', 'deg'],
  ['spring-load-1', '110', 'lbf'],
  ['spring-height-1', '1.700', 'in'],
  ['spring-load-2', '270', 'lbf'],
  ['spring-height-2', '1.200', 'in'],
  ['valve-lift', '0.480', 'in'],
  ['solid-height', '1.090', 'in'],
  ['seal-gap', '0.560', 'in'],
);
const WANTED = limitOf('height-with-shim', 'in', { low: '1.690', high: '1.710', target: '1.700' });
const LIMITS = [...shopLimits(), ...DATA, WANTED];

const thou = (from: number, until: number) =>
  fc.integer({ min: from, max: until }).map((it) => (it / 10_000).toFixed(4));
/** One valve as somebody may read it; a figure left out is not measured. */
const valveRead = fc.record(
  {
    'guide-id': thou(3420, 3470),
    stem: thou(3400, 3430),
    margin: thou(200, 700),
    'seat-runout': thou(0, 40),
    'tip-height': thou(19_900, 20_100),
    'installed-height': thou(16_800, 17_800),
    'seat-cut-depth': thou(0, 300),
    'face-stock': thou(0, 100),
  },
  { requiredKeys: [] },
);
type ValveRead = Partial<Record<string, string>>;
const BEFORE = ['installed-height', 'seat-cut-depth', 'face-stock'];
const typedAt = (label: string, read: ValveRead): Typed[] =>
  Object.entries(read).map(([quantity, typed = '']) => [
    quantity,
    typed,
    'in',
    { at: label, stage: BEFORE.includes(quantity) ? 'before' : 'after', point: quantity === 'guide-id' ? 'mid' : null },
  ]);
const LABELS = ['1E', '1I', '2I', '2E'];
const headOf = (read: readonly ValveRead[], spots: readonly Spot[] = SPOTS) =>
  valveBench(
    LABELS.flatMap((label, index) => typedAt(label, read[index] ?? {})),
    LIMITS,
    { spots },
  ).facts;

describe('composeSheet, tables of valves', () => {
  it('turning the order of the valves round changes no figure and no verdict (property)', () => {
    const turned = SPOTS.map((spot) => ({ ...spot, benchOrder: 100 - spot.benchOrder }));

    fc.assert(
      fc.property(fc.array(valveRead, { minLength: 4, maxLength: 4 }), (read) => {
        for (const one of OF_VALVES) {
          const [there, back] = [composeSheet(headOf(read), one), composeSheet(headOf(read, turned), one)];
          const said = (it: typeof there) =>
            it.columns
              .map((column, index) => ({
                label: column.label,
                verdict: column.verdict.name,
                cells: it.rows.map((row) => `${row.key} ${row.cells[index]?.text} ${row.cells[index]?.verdict?.name}`),
              }))
              .toSorted((a, b) => a.label.localeCompare(b.label));

          expect(back.columns.map((it) => it.label)).toEqual(there.columns.map((it) => it.label).toReversed());
          expect(said(back)).toEqual(said(there));
        }
      }),
      { numRuns: 12 },
    );
  });

  it('a missing reading is never a pass, in no row of no table (property)', () => {
    fc.assert(
      fc.property(fc.array(valveRead, { minLength: 4, maxLength: 4 }), (read) => {
        const cells = OF_VALVES.flatMap((one) => composeSheet(headOf(read), one).rows.flatMap((row) => row.cells));
        const absent = cells.filter((cell) => cell.value === null).map((cell) => cell.verdict?.name ?? 'not measured');

        expect([...new Set(absent)]).toEqual(['not measured']);
      }),
      { numRuns: 25 },
    );
    const empty = BENCH_TABLES.filter((it) => it.castingKind === 'head').flatMap((it) => {
      const { rows } = composeSheet(valveBench([], shopLimits(), { spots: SPOTS }).facts, it);
      return rows.flatMap((row) => row.cells.filter((cell) => cell.verdict?.name === 'pass'));
    });
    expect(empty).toEqual([]);
  });

  it('a figure read in millimetres is judged by an inch limit alike, and keeps the text as typed (property)', () => {
    const limits = [limitOf('guide-clearance', 'in', { high: '0.0040' })];

    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), (tenths) => {
        const clearance = (0.0254 * tenths) / 10;
        const inches: Typed[] = [
          ['guide-id', (0.34 + tenths / 10_000).toFixed(4), 'in', { point: 'mid' }],
          ['stem', '0.3400', 'in'],
        ];
        const metric: Typed[] = [
          ['guide-id', (8.636 + clearance).toFixed(5), 'mm', { point: 'mid' }],
          ['stem', '8.63600', 'mm'],
        ];
        const [a, b] = [valveBench(inches, limits), valveBench(metric, limits)];

        expect(b.value('guide-clearance')).toBe(a.value('guide-clearance'));
        expect(b.verdict('guide-clearance')).toBe(a.verdict('guide-clearance'));
        expect(b.facts.readings.map((it) => it.typed)).toEqual(metric.map(([, typed]) => typed));
      }),
    );
  });

  it('a plan is judged by the limits of what it plans, and shows their source', () => {
    const facts = headOf([{ 'installed-height': '1.7400', 'seat-cut-depth': '0.0700', 'face-stock': '0.0000' }]);
    const plan = composeSheet(facts, table('before-cutting'));
    const row = plan.rows.find((it) => it.quantity === 'plan-height-with-shim');

    expect(row?.limits[0]).toMatchObject({ text: '1.690 – 1.710', source: 'casting type sheet' });
    expect(row?.cells[0]).toMatchObject({ state: 'planned', text: '1.750', word: 'too tall' });
    expect(plan.columns[0]).toMatchObject({ label: '1E', word: 'too tall' });
  });

  it('U of a clearance: guide 0.0002 and stem 0.0001 in make 0.000224 in (exact mathematics)', () => {
    const tools = [
      { id: 1, uncertainty: inch('0.0002') },
      { id: 2, uncertainty: inch('0.0001') },
    ].map((it) => ({
      ...it,
      id: it.id as never,
      name: `G${it.id}`,
      kind: 'gauge',
      serial: null,
      workCentre: null,
      unit: 'in' as const,
      uncertaintyBp: null,
      nextDue: null,
      overdue: false,
      retired: false,
    }));
    const { facts } = valveBench(
      [
        ['guide-id', '0.3438', 'in', { point: 'mid', tool: 1 as never }],
        ['stem', '0.3412', 'in', { tool: 2 as never }],
      ],
      [],
      { tools },
    );
    const known = openBench(facts).known('guide-clearance', facts.spots[0] ?? null, null, 'after');

    expect(Math.abs((known?.uncertainty ?? 0) / measureOf('1', 'in') - 0.000_224)).toBeLessThanOrEqual(1e-6);
  });
});
