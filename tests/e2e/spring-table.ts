/** What the table of installed heights must show, valve by valve, once all heights are read; then the shims go in. */
import type { BenchHand } from './bench-steps.ts';

type Shims = Readonly<{
  unit: string;
  spread: string;
  pickingList: Readonly<Record<string, number>>;
  valves: readonly Readonly<{
    shims: readonly string[];
    final: string;
    verdict: string;
    seatLoad: string;
    openLoad: string;
    bindClearance: string;
  }>[];
}>;

/** Decimals with which a load stands in the table: pounds-force to a tenth, newtons whole. */
const LOAD_DECIMALS: Readonly<Record<string, number>> = { in: 1, mm: 0 };

/** Compare every computed row, what is to be fetched and the spread, and fit the shims as chosen. */
export async function fitShims(bench: BenchHand, told: Shims): Promise<void> {
  const { valves, unit, spread } = told;
  const load = (text: string) => Number(text).toFixed(LOAD_DECIMALS[unit]);
  const rows: readonly (readonly [string, readonly string[]])[] = [
    ['With shims', valves.map((one) => one.final)],
    ['Seat load', valves.map((one) => load(one.seatLoad))],
    ['Open load', valves.map((one) => load(one.openLoad))],
    ['Coil bind clearance', valves.map((one) => one.bindClearance)],
    ['Verdict', valves.map((one) => one.verdict)],
  ];
  for (const [row, texts] of rows) await bench.rowReads(row, texts);
  const toFetch = Object.entries(told.pickingList).toSorted(([a], [b]) => Number(a) - Number(b));
  const words = toFetch.map(([size, count]) => `${count} × ${size}`).join(', ');
  await bench.page.getByText(`To fetch: ${words}. ${valves.length} pass`).waitFor();
  await bench.page.getByText(`from shortest to tallest ${spread} ${unit}`).waitFor();
  await bench.cell('Shims', '1E');
  await bench.tap('All as chosen');
  await bench.rowReads(
    'Shims',
    valves.map(({ shims }) => (shims.length === 0 ? 'none' : shims.join(' + '))),
  );
}
