/** What a cut changes for whoever builds the engine, line by line: the same figures as on the bench, for paper. */

import type { BenchRow } from '../../catalogue/compute/bench-table.ts';
import { BENCH_TABLES } from '../../catalogue/compute/bench-tables.ts';
import { withMark } from '../../kernel/measure-show.ts';
import type { Bench } from './bench.ts';
import { cellAt } from './cells.ts';
import type { VerdictName } from './model.ts';
import { placeAt } from './place.ts';

/** One line: `chamber, change`, `-1.7 cc`, `surfacing only; chamber not measured`. */
export type EffectLine = Readonly<{
  quantity: string;
  stage: BenchRow['stage'];
  words: string;
  /** With its unit; empty where it cannot be said, and `note` tells why. */
  amount: string;
  note: string;
  /** Null where nothing judges it. */
  verdict: VerdictName | null;
}>;

/** What is typed and not a consequence. */
const TABLES: Readonly<Record<string, string>> = { head: 'effects', block: 'deck-effects' };

/** Where nothing is cut nothing is claimed. */
const CUTS = ['head-drop', 'head-cut'];

/**
 * The consequences that can be said of a casting, in the order of its bench table; what only may be said in words is in. Plans
 * count: the line says so.
 *
 * @returns nothing while no cut is measured or planned, and for castings other than heads and blocks
 */
export function effectsOf(bench: Bench): readonly EffectLine[] {
  const table = BENCH_TABLES.find((it) => it.code === TABLES[bench.facts.casting.kind]);
  if (!table || !CUTS.some((cut) => bench.known(cut, null, null, 'after')?.value != null)) return [];
  return table.rows.filter((row) => row.shown).flatMap((row) => lineOf(bench, row) ?? []);
}

function lineOf(bench: Bench, row: BenchRow): EffectLine | null {
  const place = placeAt(bench, { quantity: row.quantity, spot: null, point: null, stage: row.stage });
  if (!place || place.quantity.derived === null) return null;
  const cell = cellAt(bench, place);
  if (cell.text === '' && cell.marks.length === 0) return null;
  return {
    quantity: row.quantity,
    stage: row.stage,
    words: place.quantity.words,
    amount: cell.text === '' || place.unit === null ? cell.text : withMark(cell.text, place.unit),
    note: cell.marks.join('; '),
    verdict: cell.verdict?.name ?? null,
  };
}
