/** Gathers what the operations of a casting want to know, and the sheets that hold what was read. */
import type { BenchTable } from '../../catalogue/compute/bench-table.ts';
import { isOnPaper } from '../../catalogue/compute/bench-tables.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { CastingId, OperationId, SpotId } from '../../kernel/ids.ts';
import { openBench } from '../compute/bench.ts';
import { surveyedTables } from '../compute/deck-grid.ts';
import type { Facts } from '../compute/model.ts';
import { listNeeded, type NeededReading, type Want, type WantingOperation } from '../compute/needed.ts';
import { composeSheet } from '../compute/sheet.ts';
import type { Sheet } from '../compute/sheet-model.ts';
import { readFacts } from './facts.ts';
import { findTable, listTableCodes } from './known.ts';

/**
 * What these operations of a casting still need and how it stands, in their order.
 *
 * @param operations Live operations only; which those are is the state's to say.
 */
export function readNeeded(
  db: ReadDb,
  casting: CastingId,
  operations: readonly OperationId[],
  today: Day,
): NeededReading[] {
  if (operations.length === 0) return [];
  const facts = readFacts(db, casting, today);
  return listNeeded(openBench(facts), listWanting(db, operations), listTables(db, facts));
}

/** Every table of the casting that is for paper and in which something was read or marked, judged: what a signature freezes and paper prints. */
export function readSheets(db: ReadDb, casting: CastingId, today: Day): Sheet[] {
  const facts = readFacts(db, casting, today);
  const surveyed = surveyedTables(facts);
  return listTables(db, facts)
    .filter((table) => isOnPaper(table.code))
    .map((table) => composeSheet(facts, table))
    .filter(
      ({ table, rows }) =>
        surveyed.has(table.code) || rows.some((row) => row.cells.some((cell) => cell.reading !== null)),
    );
}

/** The tables of a casting's kind, their rows switched on and off as kept for it. */
export const listTables = (db: ReadDb, facts: Facts): BenchTable[] =>
  listTableCodes(db, facts.casting.kind as BenchTable['castingKind']).flatMap((code) => {
    const table = findTable(db, code, facts.casting.id);
    return table ? [table] : [];
  });

function listWanting(db: ReadDb, ids: readonly OperationId[]): WantingOperation[] {
  const operations = db.all(
    db.q
      .selectFrom('operation')
      .select(['id', 'operation_kind_id', 'redo_of_id'])
      .where('id', 'in', ids)
      .orderBy('position')
      .orderBy('id'),
  );
  const spots = db.all(
    db.q.selectFrom('operation_spot').select(['operation_id', 'spot_id']).where('operation_id', 'in', ids),
  );
  const kinds = [...new Set(operations.map((it) => it.operation_kind_id))];
  const wants = db.all(
    db.q
      .selectFrom('needed_reading as n')
      .innerJoin('quantity as q', 'q.id', 'n.quantity_id')
      .select(['n.operation_kind_id', 'q.code', 'n.stage', 'n.at_place', 'n.required'])
      .where('n.operation_kind_id', 'in', kinds)
      .where('n.retired_on', 'is', null)
      .orderBy('n.id'),
  );
  return operations.map((operation) => ({
    id: operation.id,
    redo: operation.redo_of_id !== null,
    spots: spots.flatMap((row): SpotId[] => (row.operation_id === operation.id ? [row.spot_id] : [])),
    wants: wants.flatMap((row): Want[] =>
      row.operation_kind_id === operation.operation_kind_id
        ? [{ quantity: row.code, stage: row.stage, where: row.at_place, required: row.required === 1 }]
        : [],
    ),
  }));
}
