/** Queries that are built and compiled once and then run for one key after another. */
import type { Compilable } from 'kysely';
import type { ReadDb } from './query.ts';

/** Stands for the key while a query is compiled; no id and no amount is ever this. */
const KEY_MARK = -8_888_888_888_888;

type Kept = Readonly<{ sql: string; parameters: readonly unknown[] }>;

/**
 * A query by one id, for places that run it thousands of times: building it costs more than running it.
 *
 * @param build must use the key as a value only, never decide by it
 */
export function keptQuery<K extends number, O>(
  build: (q: ReadDb['q'], key: K) => Compilable<O>,
): (db: ReadDb, key: K) => O[] {
  let kept: Kept | undefined;
  return (db, key) => {
    kept ??= build(db.q, KEY_MARK as K).compile();
    return db.sql<O>(kept.sql, ...kept.parameters.map((value) => (value === KEY_MARK ? key : value)));
  };
}
