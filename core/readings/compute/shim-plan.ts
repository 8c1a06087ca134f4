/** Shims of a whole head: what goes under each spring, what to fetch, and how far the finished heights lie apart. */
import { showExact, withMark } from '../../kernel/measure-show.ts';
import type { Bench } from './bench.ts';
import type { Placed } from './columns.ts';
import { shimTaskOf } from './formulas/springs.ts';
import type { ShimStock, Spot } from './model.ts';
import type { Column, Pick, SheetRow, ShimPlan } from './sheet-model.ts';
import { chooseShims, pickList, readStack, stackText } from './shims.ts';

/** The shims written for a valve, else the ones to fit; null when the height or the target is not known. */
export function shimPlanOf(bench: Bench, spot: Spot | null): ShimPlan | null {
  const look = bench.look({ spot, stage: 'after' });
  const stock = look.stock();
  if (!stock) return null;
  const written = look.words('shims-fitted', 'after');
  const fitted = written === null ? null : readStack(written, bench.facts.shims);
  const task = shimTaskOf(look);
  const thicknesses = fitted ?? (task ? chooseShims(task).stack.thicknesses : null);
  if (thicknesses === null) return null;
  return { text: stackText(thicknesses, stock), typed: stackText(thicknesses, stock, '+'), thicknesses };
}

/** Valves whose chosen shims are not written yet: their height is read and passes with them, or nobody can say. */
export function listShimsToFit(bench: Bench): readonly Readonly<{ spot: Spot; typed: string }>[] {
  return bench.facts.spots.flatMap((spot) => {
    if (spot.kind !== 'valve') return [];
    const { current, choose } = bench.rows('shims-fitted', spot, null, 'after');
    const plan = shimPlanOf(bench, spot);
    const isOpen = current === null && choose.length === 0 && heightVerdict(bench, spot) !== 'fail';
    return plan && isOpen ? [{ spot, typed: plan.typed }] : [];
  });
}

/** What to fetch for the whole head. A valve that fails whatever is put under it takes none. */
export function pickingOf(
  columns: readonly Column[],
  stocks: readonly ShimStock[],
  bench: Bench,
  places: readonly Placed[],
): readonly Pick[] {
  const used = columns.flatMap((column, index) => {
    const verdict = heightVerdict(bench, places[index]?.spot ?? null);
    return column.shims && verdict !== 'fail' ? [column.shims.thicknesses] : [];
  });
  const first = places[0] && bench.look({ spot: places[0].spot, stage: 'after' }).stock();
  const stock = first ?? stocks[0];
  return stock ? pickList(used, stock) : [];
}

function heightVerdict(bench: Bench, spot: Spot | null): string {
  const known = bench.known('height-with-shim', spot, null, 'after');
  return bench.verdict('height-with-shim', 'after', spot?.side ?? null, known).name;
}

/** Greatest less smallest finished height, with its unit; null with fewer than two. */
export function spreadOf(rows: readonly SheetRow[]): string | null {
  const row = rows.find((it) => it.quantity === 'height-with-shim');
  const values = (row?.cells ?? []).flatMap((cell) => (cell.value === null ? [] : [cell.value]));
  if (!row || row.unit === null || values.length < 2) return null;
  return withMark(showExact(Math.max(...values) - Math.min(...values), row.unit, row.decimals), row.unit);
}
