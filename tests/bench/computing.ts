/** Pure computing, without database or request: what a machinist waits for after each figure. */
import type { BenchRow, BenchTable } from '#core/catalogue/compute/bench-table.ts';
import { BENCH_TABLES } from '#core/catalogue/compute/bench-tables.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { id } from '#core/kernel/ids.ts';
import { minimumZone } from '#core/readings/compute/geometry/minimum-zone.ts';
import type { Height } from '#core/readings/compute/geometry/plane.ts';
import type { Facts, Reading, Spot } from '#core/readings/compute/model.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { factsOf, limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { measure, type Times } from './measure.ts';
import { openStream } from './seeded.ts';

export type Computing = Readonly<{ name: string; mostMs: number; run(): Promise<Times> }>;

const VALVES = 32;
const ROWS = 20;
const POINTS = 200;
const RUNS = 300;

export const COMPUTING: readonly Computing[] = [
  {
    name: `recompute a table of ${VALVES} valves and ${ROWS} rows, all read and judged`,
    mostMs: 5,
    run: () => {
      const table = tallTable();
      const facts = readFacts(table);
      return measure(RUNS, () => composeSheet(facts, table));
    },
  },
  {
    name: `minimum zone of ${POINTS} points`,
    mostMs: 20,
    run: () => {
      const surfaces = Array.from({ length: 20 }, (_, n) => roughSurface(`surface|${n}`));
      return measure(RUNS, (run) => minimumZone(surfaces[run % surfaces.length] ?? []));
    },
  },
];

/** Scattered over a head of 500 x 200 mm, heights within 0.1 mm, nothing in line: the hardest for the planes. */
function roughSurface(seed: string): Height[] {
  const stream = openStream(seed);
  const below = (most: number) => stream.below(most);
  return Array.from({ length: POINTS }, () => ({ x: below(500_000_000), y: below(200_000_000), z: below(100_000) }));
}

/** The valve tables of a head below each other, as many rows as the bench ever shows. */
function tallTable(): BenchTable {
  const rows = BENCH_TABLES.filter((table) => table.spotKind === 'valve').flatMap((table) => table.rows);
  const judged = rows.filter((row) => findQuantity(row.quantity)?.family !== 'choice');
  const shown: BenchRow[] = judged.slice(0, ROWS).map((row) => ({ ...row, shown: true }));
  return { code: 'tall', words: 'tall', castingKind: 'head', spotKind: 'valve', operation: null, rows: shown };
}

const FIGURES: Readonly<Record<string, string>> = { 'guide-id': '0.3438', stem: '0.3412', 'installed-height': '1.731' };

function readFacts(table: BenchTable): Facts {
  const spots = Array.from({ length: VALVES }, (_, n): Spot => {
    const side = n % 2 === 0 ? 'I' : 'E';
    const label = `${Math.floor(n / 4) + 1}${side}${Math.floor((n % 4) / 2) + 1}`;
    const cylinder = Math.floor(n / 4) + 1;
    return { id: id<'spot'>(n + 1), kind: 'valve', label, benchOrder: n + 1, row: 1, bank: 'none', cylinder, side };
  });
  const tool = toolOf({ uncertainty: 2540 });
  const read = table.rows.filter((row) => findQuantity(row.quantity)?.derived === null);
  const readings: Reading[] = read.flatMap(({ quantity, point, stage }) => {
    const family = findQuantity(quantity)?.family ?? 'length';
    const unit = ({ length: 'in', force: 'lbf', angle: 'deg', pressure: 'inHg' } as const)[family as 'length'] ?? 'in';
    const typed = FIGURES[quantity] ?? (family === 'length' ? '0.050' : '45.0');
    return spots.map((spot) => readingOf(quantity, typed, unit, { spot: spot.id, point, stage, tool: tool.id }));
  });
  const limits = table.rows.flatMap(({ quantity, stage }) => {
    const family = findQuantity(quantity)?.family;
    return family === 'length' ? [limitOf(quantity, 'in', { stage, low: '0.001', high: '2', target: '1.700' })] : [];
  });
  const sheet = [
    limitOf('spring-height-1', 'in', { target: '1.700' }),
    limitOf('spring-height-2', 'in', { target: '1.200' }),
    limitOf('spring-load-1', 'lbf', { target: '110' }),
    limitOf('spring-load-2', 'lbf', { target: '270' }),
    limitOf('valve-lift', 'in', { target: '0.480' }),
    limitOf('solid-height', 'in', { target: '1.090' }),
  ];
  return factsOf({ spots, readings, limits: [...limits, ...sheet], tools: [tool] });
}
