import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '#core/db/open-database.ts';
import { schemaText } from '#core/db/write-schema.ts';

type Named = { name: string; sql: string };

const tablesOf = (sqlite: ReturnType<typeof openDatabase>): Named[] =>
  sqlite
    .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .all() as Named[];

describe('the tables', () => {
  it('are what core/db/schema.ts says; run `npm run schema` after a migration', () => {
    const sqlite = openDatabase(':memory:');

    expect(readFileSync(new URL('../../../core/db/schema.ts', import.meta.url), 'utf8')).toBe(schemaText(sqlite));
  });

  it('are all strict, so that no text becomes a number by itself', () => {
    const sqlite = openDatabase(':memory:');
    const loose = tablesOf(sqlite).filter(
      (t) => !/\)\s*STRICT/.test(t.sql) && !/^CREATE VIRTUAL|find_\w+_(data|idx|content|docsize|config)/i.test(t.sql),
    );

    expect(loose.map((t) => t.name)).toEqual([]);
  });

  it('have an index on every column that refers to a row', () => {
    const sqlite = openDatabase(':memory:');
    const bare = tablesOf(sqlite).flatMap(({ name }) => {
      const references = (sqlite.pragma(`foreign_key_list(${name})`) as { from: string }[]).map((r) => r.from);
      const leading = (sqlite.pragma(`index_list(${name})`) as { name: string }[]).map(
        (index) => (sqlite.pragma(`index_info(${index.name})`) as { name: string }[])[0]?.name,
      );
      const keys = (sqlite.pragma(`table_info(${name})`) as { name: string; pk: number }[])
        .filter((c) => c.pk === 1)
        .map((c) => c.name);
      return references
        .filter((column) => !leading.includes(column) && !keys.includes(column))
        .map((column) => `${name}.${column}`);
    });

    expect(bare).toEqual([]);
  });

  it.each(['reading', 'promise', 'approval', 'invoice', 'payment', 'activity', 'rate', 'estimate'])(
    'refuse every change, removal and replacement of a %s row',
    (table) => {
      const sqlite = openDatabase(':memory:');
      const triggers = (
        sqlite.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = ?").all(table) as Named[]
      ).map((t) => t.name);

      expect(triggers).toEqual(
        expect.arrayContaining([`${table}__no_update`, `${table}__no_delete`, `${table}__no_replace`]),
      );
    },
  );
});
