import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keptRead } from '#core/db/kept-read.ts';
import { openDatabase } from '#core/db/open-database.ts';
import { type ReadDb, readDb, writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';

type File = ReturnType<typeof openDatabase>;

let folder: string;
let mine: File;
let others: File;
let reads: number;

/** How many series the file holds, counting how often it was really asked. */
const series = keptRead((db: ReadDb) => {
  reads += 1;
  return db.sql<{ n: number }>('SELECT COUNT(*) AS n FROM sequence')[0]?.n;
});

const add = (file: File, name: 'receipt') =>
  file.prepare("INSERT INTO sequence (series, next, created_at) VALUES (?, 1, '2026-03-09T14:00:00.000Z')").run(name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kept-read-'));
  mine = openDatabase(join(folder, 'shop.db'));
  others = openDatabase(join(folder, 'shop.db'));
  reads = 0;
});

afterEach(() => {
  mine.close();
  others.close();
  rmSync(folder, { recursive: true });
});

describe('keptRead', () => {
  it('reads once while nothing is written', () => {
    const db = readDb(mine);
    const first = series(db);
    expect([series(db), series(readDb(mine))]).toEqual([first, first]);
    expect(reads).toBe(1);
  });

  it('reads anew after this connection wrote', () => {
    const before = series(readDb(mine)) ?? 0;
    add(mine, 'receipt');
    expect(series(readDb(mine))).toBe(before + 1);
  });

  it('reads anew after another connection wrote', () => {
    const before = series(readDb(mine)) ?? 0;
    add(others, 'receipt');
    expect(series(readDb(mine))).toBe(before + 1);
  });

  it('does not keep what a command saw that is then undone', () => {
    const before = series(readDb(mine)) ?? 0;
    mine.exec('BEGIN');
    add(mine, 'receipt');
    const stamp = { now: moment('2026-03-09T14:00:00.000Z'), by: null };
    expect(series(writeDb(mine, stamp))).toBe(before + 1);
    mine.exec('ROLLBACK');
    expect(series(readDb(mine))).toBe(before);
  });
});
