/**
 * Small words to write the tables of step 1 with, so that each rule (strict, stamped, indexed, append only) is said once.
 *
 * Part of a shipped step: what it makes never changes. A later step writes its own SQL.
 */

/** Text of 1 to n characters. */
export const words = (name: string, n: number): string =>
  `${name} TEXT NOT NULL CHECK (length(${name}) BETWEEN 1 AND ${n})`;
export const wordsOr = (name: string, n: number): string =>
  `${name} TEXT CHECK (${name} IS NULL OR length(${name}) BETWEEN 1 AND ${n})`;
const list = (values: readonly string[]): string => values.map((v) => `'${v}'`).join(', ');
export const choice = (name: string, values: readonly string[], first?: string): string =>
  `${name} TEXT NOT NULL ${first === undefined ? '' : `DEFAULT '${first}' `}CHECK (${name} IN (${list(values)}))`;
export const choiceOr = (name: string, values: readonly string[]): string =>
  `${name} TEXT CHECK (${name} IN (${list(values)}))`;
export const flag = (name: string, first: 0 | 1 = 0): string =>
  `${name} INTEGER NOT NULL DEFAULT ${first} CHECK (${name} IN (0, 1))`;
export const int = (name: string, first?: number): string =>
  `${name} INTEGER NOT NULL${first === undefined ? '' : ` DEFAULT ${first}`}`;
export const intOr = (name: string): string => `${name} INTEGER`;
/** A whole number that is not negative. */
export const count = (name: string, first?: number): string => `${int(name, first)} CHECK (${name} >= 0)`;
export const countOr = (name: string): string => `${name} INTEGER CHECK (${name} >= 0)`;
export const ref = (name: string, table: string): string =>
  `${name} INTEGER NOT NULL REFERENCES ${table} (id) ON DELETE RESTRICT`;
export const refOr = (name: string, table: string): string =>
  `${name} INTEGER REFERENCES ${table} (id) ON DELETE RESTRICT`;
const MOMENT = "'____-__-__T__:__:__.___Z'";
export const moment = (name: string): string => `${name} TEXT NOT NULL CHECK (${name} LIKE ${MOMENT})`;
export const momentOr = (name: string): string => `${name} TEXT CHECK (${name} LIKE ${MOMENT})`;
export const day = (name: string): string => `${name} TEXT NOT NULL CHECK (${name} LIKE '____-__-__')`;
export const dayOr = (name: string): string => `${name} TEXT CHECK (${name} LIKE '____-__-__')`;

type Options = Readonly<{
  /** The row carries a version that every change steps. */
  versioned?: boolean;
  /** Rows are inserted only. */
  append?: boolean;
  /** Columns that never change after insert. */
  fixed?: readonly string[];
  unique?: readonly string[];
  checks?: readonly string[];
}>;

/**
 * One strict table: id, the columns, created_at and created_by, an index on every reference, no delete, and triggers for
 * what may not change. `created_by` is empty only for what was made before anybody existed (the first run).
 */
export function table(name: string, columns: readonly string[], options: Options = {}): string {
  const all = [
    'id INTEGER PRIMARY KEY AUTOINCREMENT',
    ...columns,
    ...(options.versioned ? ['version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0)'] : []),
    moment('created_at'),
    refOr('created_by', 'staff'),
    ...(options.unique ?? []).map((u) => `UNIQUE (${u})`),
    ...(options.checks ?? []).map((c) => `CHECK (${c})`),
  ];
  const references = columns.filter((c) => c.includes(' REFERENCES ')).map((c) => c.split(' ')[0] ?? '');
  const indexes = [...references, 'created_by'].map((c) => `CREATE INDEX ${name}__${c} ON ${name} (${c});`);
  return [
    `CREATE TABLE ${name} (\n  ${all.join(',\n  ')}\n) STRICT;`,
    ...indexes,
    noDelete(name),
    ...(options.append ? [appendOnly(name)] : []),
    ...(options.fixed ?? []).map((column) => fixed(name, column)),
  ].join('\n');
}

const noDelete = (name: string): string => `CREATE TRIGGER ${name}__no_delete BEFORE DELETE ON ${name}
BEGIN SELECT RAISE(ABORT, '${name} rows are never deleted'); END;`;

/** Also refuses an insert with an existing id: INSERT OR REPLACE slips past a delete trigger. */
const appendOnly = (name: string): string => `CREATE TRIGGER ${name}__no_update BEFORE UPDATE ON ${name}
BEGIN SELECT RAISE(ABORT, '${name} rows are never changed'); END;
CREATE TRIGGER ${name}__no_replace BEFORE INSERT ON ${name} WHEN EXISTS (SELECT 1 FROM ${name} WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, '${name} rows are never replaced'); END;`;

const fixed = (
  name: string,
  column: string,
): string => `CREATE TRIGGER ${name}__fixed_${column} BEFORE UPDATE OF ${column} ON ${name} WHEN NEW.${column} IS NOT OLD.${column}
BEGIN SELECT RAISE(ABORT, '${name}.${column} never changes'); END;`;
