import { join } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findFaults } from '#core/db/copy.ts';
import { readDb } from '#core/db/query.ts';
import { findBrokenLink } from '#core/host/chain.ts';
import { compareAll } from '#core/state/store/projections.ts';
import { makePracticeShop } from '#demo-data/practice-shop.ts';
import { folderOfFile } from '#tests/kit/temporary-folder.ts';

/** Random by purpose: salts, hashes that depend on them, tokens. */
const SECRET = new Set(['pin_hash', 'token_hash', 'salt', 'text_digest', 'previous_hash', 'hash']);

let first: Database;
let second: Database;
let file = '';

const make = async (): Promise<string> => {
  const folder = join(folderOfFile(), 'shop');
  await makePracticeShop(folder);
  return join(folder, 'benchtag.sqlite');
};

beforeAll(async () => {
  file = await make();
  first = new Sqlite(file, { readonly: true });
  second = new Sqlite(await make(), { readonly: true });
}, 180_000);

afterAll(() => {
  first.close();
  second.close();
});

const tablesOf = (sqlite: Database): string[] =>
  (
    sqlite
      .prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND sql NOT LIKE 'CREATE VIRTUAL%' ORDER BY name",
      )
      .all() as { name: string }[]
  )
    .map((t) => t.name)
    .filter((name) => !/^find_\w+_(data|idx|content|docsize|config)$/.test(name));

const rowsOf = (sqlite: Database, table: string): unknown[] =>
  (sqlite.prepare(`SELECT * FROM ${table} ORDER BY 1`).all() as Record<string, unknown>[]).map((row) =>
    Object.fromEntries(Object.entries(row).filter(([column]) => !SECRET.has(column))),
  );

describe('makePracticeShop', () => {
  it('gives equal workspaces twice, apart from secrets', () => {
    for (const table of tablesOf(first))
      expect({ table, rows: rowsOf(second, table) }).toEqual({ table, rows: rowsOf(first, table) });
  });

  it('is made by commands only: each ticket, reading and invoice stands in an activity chain that is whole', () => {
    const count = (sql: string): number => (first.prepare(sql).get() as { n: number }).n;

    expect(findBrokenLink(readDb(first))).toBeUndefined();
    expect(findFaults(file)).toEqual([]);
    expect(
      count(
        'SELECT count(*) AS n FROM ticket WHERE id NOT IN (SELECT ticket_id FROM activity WHERE ticket_id IS NOT NULL)',
      ),
    ).toBe(0);
    expect(
      count("SELECT count(*) AS n FROM activity WHERE came_from NOT IN ('practice shop', 'first run', 'the program')"),
    ).toBe(0);
  });

  it('has a list for every word the counter needs, and each agrees with the facts', () => {
    const words = (first.prepare('SELECT DISTINCT word FROM ticket_now').all() as { word: string }[])
      .map((r) => r.word)
      .sort();

    expect(words).toEqual(
      expect.arrayContaining([
        'approved',
        'closed',
        'collected',
        'declined',
        'enquiry',
        'in work',
        'ready',
        'waiting approval',
      ]),
    );
    expect(compareAll(readDb(first))).toEqual([]);
  });

  it('keeps the bills of the stories to the cent (regression baseline: demo-data/expected.json)', () => {
    const totals = first
      .prepare(
        'SELECT t.number, i.total_cents AS total FROM invoice i JOIN ticket t ON t.id = i.ticket_id ORDER BY t.number',
      )
      .all();

    expect(totals).toEqual(
      expect.arrayContaining([
        { number: 20_417, total: 38_171 },
        { number: 20_455, total: 162_267 },
        { number: 20_496, total: 78_831 },
      ]),
    );
  });

  it('asks the customer of S02 with the figures of the story (regression baseline: demo-data/expected.json)', () => {
    const ways = first
      .prepare('SELECT letter, extra_cents AS extra, new_total_cents AS total FROM added_work_option ORDER BY letter')
      .all();

    expect(ways.slice(0, 3)).toEqual([
      { letter: 'a', extra: 32_672, total: 159_907 },
      { letter: 'b', extra: 0, total: 127_235 },
      { letter: 'c', extra: 0, total: 87_438 },
    ]);
  });
});
