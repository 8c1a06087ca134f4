/** Finds catalogue rows by the code people know them by. */
import type { ReadDb } from '../../db/query.ts';
import { AppError } from '../../kernel/errors.ts';
import type { Id } from '../../kernel/ids.ts';

export type CodedTable =
  | 'work_centre'
  | 'operation_kind'
  | 'finding_kind'
  | 'condition_kind'
  | 'package'
  | 'engine_type'
  | 'casting_type'
  | 'rack_place'
  | 'stock_item'
  | 'quantity'
  | 'bench_table';

/** The id of the row with this code, or undefined. */
export const findIdByCode = <T extends CodedTable>(db: ReadDb, table: T, code: string): Id<T> | undefined =>
  db.sql<{ id: Id<T> }>(`SELECT id FROM ${table} WHERE code = ?`, code)[0]?.id;

/** @throws AppError `not-found` `operations/no-such-code` naming the code. */
export function getIdByCode<T extends CodedTable>(db: ReadDb, table: T, code: string): Id<T> {
  const id = findIdByCode(db, table, code);
  if (id === undefined)
    throw new AppError(
      'not-found',
      'operations/no-such-code',
      `The catalogue has no ${table.replace('_', ' ')} "${code}".`,
    );
  return id;
}
