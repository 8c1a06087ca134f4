/** The blank grids on a traveller's back: what the live operations want, to be written by hand and typed row by row. */
import type { OperationId } from '../../kernel/ids.ts';
import { openBench } from '../../readings/compute/bench.ts';
import { composeSheet } from '../../readings/compute/sheet.ts';
import { blankGrids } from '../compute/blank-grids.ts';
import { blankFaces } from '../compute/face-surveys.ts';
import type { TravellerPaper } from '../contract/papers.ts';
import type { PrintedCasting } from './castings.ts';
import { readTables } from './measured.ts';
import type { Scene } from './scene.ts';

type Want = Readonly<{ code: string; words: string /** Worked out from others. */; computed: boolean }>;

/** What an operation wants to know, by its id, each quantity once. */
export type Wanted = ReadonlyMap<OperationId, readonly Want[]>;

/** Quantities that these operations want, in the order of the catalogue. */
export function readWanted({ db }: Scene, operations: readonly OperationId[]): Wanted {
  if (operations.length === 0) return new Map();
  const rows = db.all(
    db.q
      .selectFrom('operation as o')
      .innerJoin('needed_reading as n', 'n.operation_kind_id', 'o.operation_kind_id')
      .innerJoin('quantity as q', 'q.id', 'n.quantity_id')
      .select(['o.id', 'q.code', 'q.words', 'q.derived'])
      .where('o.id', 'in', operations)
      .where('n.retired_on', 'is', null)
      .orderBy('n.id'),
  );
  const byOperation = Map.groupBy(rows, ({ id }): OperationId => id);
  return new Map(
    [...byOperation].map(([id, all]) => [
      id,
      [...new Map(all.map(({ code, words, derived }) => [code, { code, words, computed: derived !== null }])).values()],
    ]),
  );
}

/** Codes of all of them. */
export const codesOf = (wanted: Wanted): ReadonlySet<string> =>
  new Set([...wanted.values()].flatMap((all) => all.map(({ code }) => code)));

/** Empty when nothing is measured in this work. */
export function readGrids(scene: Scene, casting: PrintedCasting, wanted: Wanted): TravellerPaper['grids'] {
  if (wanted.size === 0) return [];
  const { facts, tables } = readTables(scene, casting);
  const codes = codesOf(wanted);
  const sheets = tables.map((table) => ({ table, sheet: composeSheet(facts, table) }));
  return [...blankGrids({ tables: sheets, wanted: codes }), ...blankFaces(openBench(facts), codes)];
}
