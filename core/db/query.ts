/**
 * The narrow handles through which all SQL runs: Kysely builds and types, better-sqlite3 runs at once.
 *
 * Synchronous on purpose: one connection, one transaction at a time, nothing can slip between two statements of a request.
 * Statements are cached by their text; values always travel as parameters.
 */
import type { Database, Statement } from 'better-sqlite3';
import {
  type Compilable,
  DummyDriver,
  type Insertable,
  Kysely,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type Updateable,
} from 'kysely';
import type { Moment } from '../kernel/days.ts';
import { AppError } from '../kernel/errors.ts';
import type { StaffId } from '../kernel/ids.ts';
import type { Schema, Versioned } from './schema.ts';

const builder = new Kysely<Schema>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

/** Statements kept per connection; lists of ids make many texts, so the oldest half is let go past this many. */
const KEPT_STATEMENTS = 800;

/** Yes or no as a column keeps it. */
export const flag = (yes: boolean): 0 | 1 => (yes ? 1 : 0);

type Row = Record<string, unknown>;

/** The columns a store fills; id, moment and person are filled by the handle. */
export type NewRow<T extends keyof Schema> = Omit<Insertable<Schema[T]>, 'id' | 'created_at' | 'created_by'>;
type IdOf<T extends keyof Schema> = Schema[T] extends { id: { readonly __select__: infer I } } ? I : number;

/** Reads only. */
export type ReadDb = Readonly<{
  q: Pick<Kysely<Schema>, 'selectFrom' | 'with' | 'fn' | 'case'>;
  /** Every row, in the order of the query. */
  all<O>(query: Compilable<O>): O[];
  /** The first row, or undefined. */
  one<O>(query: Compilable<O>): O | undefined;
  /** Rows of SQL text for what a builder cannot say (fts5, window functions); `?` takes the values in order. */
  sql<O>(text: string, ...values: readonly unknown[]): O[];
  /** Which file content this handle reads: two equal answers mean that nothing was written between. Undefined while writing. */
  unwritten(): Readonly<{ connection: object; at: string }> | undefined;
}>;

/** Reads and writes, inside the request's transaction. */
export type WriteDb = Omit<ReadDb, 'q'> &
  Readonly<{
    q: Pick<Kysely<Schema>, 'selectFrom' | 'with' | 'fn' | 'case' | 'insertInto' | 'updateTable'>;
    /** Insert one row, stamped with this request's moment and person. @returns its id. */
    add<T extends keyof Schema>(table: T, row: NewRow<T>): IdOf<T>;
    /**
     * Change one row of a table that carries a version, and step the version.
     *
     * @throws AppError `conflict` `host/changed-meanwhile` when `seen` is not the stored version.
     * @returns the new version.
     */
    step<T extends Versioned>(table: T, id: number, seen: number, changes: Updateable<Schema[T]>): number;
    /** Change one row by id without a version (closing moments of facts). */
    set<T extends keyof Schema>(table: T, id: number, changes: Updateable<Schema[T]>): void;
    /** Run an update or insert built by `q`. @returns the number of rows changed. */
    run(query: Compilable<unknown>): number;
    /** Run SQL text that changes rows (search index). */
    exec(text: string, ...values: readonly unknown[]): void;
  }>;

/** Who and when of the running request; put on every inserted row. */
export type Stamp = Readonly<{ now: Moment; by: StaffId | null }>;

/** Make the read handle of a connection. */
export function readDb(sqlite: Database): ReadDb {
  const prepare = statementsOf(sqlite);
  return {
    q: builder,
    all: (query) => {
      const { sql, parameters } = query.compile();
      return prepare(sql).all(...parameters) as never;
    },
    one: (query) => {
      const { sql, parameters } = query.compile();
      return prepare(sql).get(...parameters) as never;
    },
    sql: (text, ...values) => prepare(text).all(...values) as never,
    unwritten: () => {
      // The first counts what others wrote, the second what this connection wrote.
      const others = prepare('PRAGMA data_version').get() as { data_version: number };
      const own = prepare('SELECT total_changes() AS n').get() as { n: number };
      return { connection: sqlite, at: `${others.data_version} ${own.n}` };
    },
  };
}

/** Make the write handle of a connection for one request. */
export function writeDb(sqlite: Database, stamp: Stamp): WriteDb {
  const prepare = statementsOf(sqlite);
  const run = (query: Compilable<unknown>) => {
    const { sql, parameters } = query.compile();
    return prepare(sql).run(...parameters);
  };
  const change = (table: string, changes: Row, where: string, values: readonly unknown[]) => {
    const columns = Object.keys(changes).filter((key) => changes[key] !== undefined);
    const sets = columns.map((column) => `"${column}" = ?`);
    const text = `UPDATE "${table}" SET ${sets.join(', ')} WHERE ${where}`;
    return prepare(text).run(...columns.map((column) => changes[column]), ...values);
  };
  return {
    ...readDb(sqlite),
    unwritten: () => undefined,
    q: builder,
    add: (table, row) => {
      const full: Row = { ...row, created_at: stamp.now, created_by: stamp.by };
      const columns = Object.keys(full).filter((key) => full[key] !== undefined);
      const names = columns.map((column) => `"${column}"`).join(', ');
      const text = `INSERT INTO "${table}" (${names}) VALUES (${columns.map(() => '?').join(', ')})`;
      return Number(prepare(text).run(...columns.map((column) => full[column])).lastInsertRowid) as never;
    },
    step: (table, id, seen, changes) => {
      const next = { ...(changes as Row), version: seen + 1 };
      const { changes: changed } = change(table, next, '"id" = ? AND "version" = ?', [id, seen]);
      if (changed === 0) {
        throw new AppError(
          'conflict',
          'host/changed-meanwhile',
          'Somebody else changed this while you had it open. What you typed is kept. Look at the new state, then save again.',
        );
      }
      return seen + 1;
    },
    set: (table, id, changes) => {
      const { changes: changed } = change(table, changes as Row, '"id" = ?', [id]);
      if (changed === 0) throw new RangeError(`no row ${id} in ${String(table)}`);
    },
    run: (query) => run(query).changes,
    exec: (text, ...values) => void prepare(text).run(...values),
  };
}

const caches = new WeakMap<Database, Map<string, Statement>>();

function statementsOf(sqlite: Database): (text: string) => Statement {
  let cache = caches.get(sqlite);
  if (!cache) {
    cache = new Map();
    caches.set(sqlite, cache);
  }
  const kept = cache;
  return (text) => {
    const known = kept.get(text);
    if (known) return known;
    if (kept.size >= KEPT_STATEMENTS) {
      for (const old of [...kept.keys()].slice(0, KEPT_STATEMENTS / 2)) kept.delete(old);
    }
    const made = sqlite.prepare(text);
    kept.set(text, made);
    return made;
  };
}
