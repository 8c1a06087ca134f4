import { describe, expect, it } from 'vitest';
import { keptQuery } from '#core/db/kept-query.ts';
import { openDatabase } from '#core/db/open-database.ts';
import { readDb } from '#core/db/query.ts';

describe('keptQuery', () => {
  it('builds once and runs for each key, on any connection', () => {
    let built = 0;
    const kindOf = keptQuery((q, id: number) => {
      built += 1;
      return q
        .selectFrom('sequence')
        .select(['series', 'next'])
        .where('next', '>', 5)
        .where('id', '=', id as never);
    });
    for (const next of [10, 20]) {
      const sqlite = openDatabase(':memory:');
      const insert = sqlite.prepare(
        "INSERT INTO sequence (series, next, created_at) VALUES (?, ?, '2026-03-09T14:00:00.000Z')",
      );
      insert.run('ticket', next);
      insert.run('tag', next + 1);
      const db = readDb(sqlite);
      expect([kindOf(db, 1), kindOf(db, 2), kindOf(db, 3)]).toEqual([
        [{ series: 'ticket', next }],
        [{ series: 'tag', next: next + 1 }],
        [],
      ]);
      sqlite.close();
    }
    expect(built).toBe(1);
  });
});
