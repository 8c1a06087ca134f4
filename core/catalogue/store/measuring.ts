/**
 * What the program knows of measuring, written into a workspace: quantities, their points, bench tables and their rows.
 *
 * These rows belong to the program: an older workspace gets what is new and what is now said or computed otherwise. Nothing
 * that was read is touched: a quantity keeps its family and the kind of its places for ever, and a row is never taken away.
 */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import { flag } from '../../kernel/flag.ts';
import type { Id } from '../../kernel/ids.ts';
import type { BenchTable } from '../compute/bench-table.ts';
import { BENCH_TABLES } from '../compute/bench-tables.ts';
import { QUANTITIES } from '../compute/quantities.ts';
import type { Quantity } from '../compute/quantity.ts';
import { findIdByCode, getIdByCode } from './codes.ts';

/** What may change of a quantity without changing what was read. */
const columnsOf = (q: Quantity) => ({
  words: q.words,
  derived: q.derived,
  side_matters: flag(q.sideMatters),
  entry_rule: q.entryRule,
  entry_digits: q.entryDigits,
  choices: q.choices.length > 0 ? q.choices.join('|') : null,
});

const listThere = (db: ReadDb) =>
  new Map(db.all(db.q.selectFrom('quantity').selectAll()).map((row) => [row.code, row]));
type Row = NonNullable<ReturnType<ReturnType<typeof listThere>['get']>>;

const isSaidSo = (row: Row, quantity: Quantity): boolean =>
  Object.entries(columnsOf(quantity)).every(([name, value]) => row[name as keyof Row] === value);

/** Whether this workspace measures as the program does: nothing is new, nothing is said or computed otherwise. */
export function isMeasuringCurrent(db: ReadDb): boolean {
  const there = listThere(db);
  const quantities = QUANTITIES.every((quantity) => {
    const row = there.get(quantity.code);
    return row !== undefined && isSaidSo(row, quantity);
  });
  return quantities && BENCH_TABLES.every((table) => hasRows(db, table));
}

function hasRows(db: ReadDb, { code, rows }: BenchTable): boolean {
  const there = db.all(
    db.q
      .selectFrom('bench_table_row as r')
      .innerJoin('bench_table as t', 't.id', 'r.bench_table_id')
      .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
      .select(['q.code', 'r.point', 'r.stage'])
      .where('t.code', '=', code)
      .orderBy('r.position')
      .orderBy('r.id'),
  );
  return rows.every((row, n) => {
    const it = there[n];
    return it?.code === row.quantity && it.point === row.point && it.stage === row.stage;
  });
}

/** Write every quantity of the program. @returns the codes of those that were not there. */
export function bringInQuantities(db: WriteDb): readonly string[] {
  const there = listThere(db);
  const added: string[] = [];
  for (const quantity of QUANTITIES) {
    const row = there.get(quantity.code);
    const columns = columnsOf(quantity);
    if (row) {
      if (!isSaidSo(row, quantity)) db.step('quantity', row.id, row.version, columns);
      addPoints(db, row.id, quantity);
    } else {
      const { code, family, spotKind } = quantity;
      addPoints(db, db.add('quantity', { code, family, spot_kind: spotKind, ...columns }), quantity);
      added.push(code);
    }
  }
  return added;
}

function addPoints(db: WriteDb, id: Id<'quantity'>, { points, pointsInCode }: Quantity): void {
  if (points.length === 0 || pointsInCode) return;
  const there = db
    .all(db.q.selectFrom('quantity_point').select('code').where('quantity_id', '=', id))
    .map((row) => row.code);
  for (const [position, point] of points.entries()) {
    if (!there.includes(point.code))
      db.add('quantity_point', { quantity_id: id, code: point.code, words: point.words, position });
  }
}

/** Write every bench table of the program. They name operations, so they come after them. */
export function bringInBenchTables(db: WriteDb): void {
  for (const table of BENCH_TABLES) {
    const id = findIdByCode(db, 'bench_table', table.code) ?? addTable(db, table);
    bringInRows(db, id, table);
  }
  releaseOldTables(db);
}

/** A table that the program no longer has keeps its rows, and leaves its operation to the one that has it now. */
function releaseOldTables(db: WriteDb): void {
  const now = new Map(BENCH_TABLES.map(({ code, operation }) => [code, operation]));
  const taken = new Set(now.values());
  const rows = db.all(
    db.q
      .selectFrom('bench_table as t')
      .innerJoin('operation_kind as k', 'k.id', 't.operation_kind_id')
      .select(['t.id', 't.code', 'k.code as operation']),
  );
  for (const { id, code, operation } of rows)
    if (!now.has(code) && taken.has(operation)) db.set('bench_table', id, { operation_kind_id: null });
}

const addTable = (db: WriteDb, { code, words, castingKind, spotKind, operation }: BenchTable): Id<'bench_table'> =>
  db.add('bench_table', {
    code,
    words,
    casting_kind: castingKind,
    spot_kind: spotKind,
    operation_kind_id: operation === null ? null : (findIdByCode(db, 'operation_kind', operation) ?? null),
  });

/** Rows in the program's order; rows that it no longer has stay below them, where their readings can be seen. */
function bringInRows(db: WriteDb, table: Id<'bench_table'>, { rows }: BenchTable): void {
  const keyOf = (quantity: number, point: string | null, stage: string) => `${quantity}|${point ?? ''}|${stage}`;
  const there = new Map(
    db
      .all(db.q.selectFrom('bench_table_row').selectAll().where('bench_table_id', '=', table).orderBy('position'))
      .map((row) => [keyOf(row.quantity_id, row.point, row.stage), row]),
  );
  for (const [position, row] of rows.entries()) {
    const quantity = getIdByCode(db, 'quantity', row.quantity);
    const key = keyOf(quantity, row.point, row.stage);
    const found = there.get(key);
    there.delete(key);
    if (!found) {
      const { point, stage } = row;
      db.add('bench_table_row', {
        bench_table_id: table,
        quantity_id: quantity,
        point,
        stage,
        position,
        shown: flag(row.shown),
      });
    } else if (found.position !== position) db.set('bench_table_row', found.id, { position });
  }
  for (const [index, old] of [...there.values()].entries()) {
    const position = rows.length + index;
    if (old.position !== position) db.set('bench_table_row', old.id, { position });
  }
}
