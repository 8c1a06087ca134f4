import Sqlite from 'better-sqlite3';
import { describe, expect, it, vi } from 'vitest';
import { migrate, versionOf } from '#core/db/migrate.ts';
import type { Step } from '#core/db/migrations/index.ts';

const one: Step = (sqlite) =>
  void sqlite.exec('CREATE TABLE a (id INTEGER PRIMARY KEY) STRICT; INSERT INTO a VALUES (1)');
const two: Step = (sqlite) =>
  void sqlite.exec('CREATE TABLE b (id INTEGER PRIMARY KEY, a INTEGER REFERENCES a (id)) STRICT');

describe('migrate', () => {
  it('runs the missing steps only and keeps their number in the file', () => {
    const sqlite = new Sqlite(':memory:');
    migrate(sqlite, [one]);
    const before = vi.fn();

    migrate(sqlite, [one, two], before);

    expect(versionOf(sqlite)).toBe(2);
    expect(before).toHaveBeenCalledOnce();
  });

  it('asks for no backup of a new or an up-to-date file', () => {
    const sqlite = new Sqlite(':memory:');
    const before = vi.fn();

    migrate(sqlite, [one, two], before);
    migrate(sqlite, [one, two], before);

    expect(before).not.toHaveBeenCalled();
  });

  it('leaves a file as it was when a step fails', () => {
    const sqlite = new Sqlite(':memory:');
    const broken: Step = (s) => {
      s.exec('CREATE TABLE half (id INTEGER PRIMARY KEY) STRICT');
      throw new Error('power cut');
    };
    migrate(sqlite, [one]);

    expect(() => migrate(sqlite, [one, broken])).toThrow('power cut');

    expect(versionOf(sqlite)).toBe(1);
    expect(sqlite.prepare("SELECT count(*) AS n FROM sqlite_schema WHERE name = 'half'").get()).toEqual({ n: 0 });
    expect(sqlite.pragma('foreign_keys', { simple: true })).toBe(1);
  });

  it('refuses a step that leaves a reference pointing nowhere', () => {
    const sqlite = new Sqlite(':memory:');
    const dangling: Step = (s) => void s.exec('INSERT INTO b VALUES (1, 99)');

    expect(() => migrate(sqlite, [one, two, dangling])).toThrow(/1 dangling/);
    expect(versionOf(sqlite)).toBe(2);
  });

  it('refuses a file of a newer program in words', () => {
    const sqlite = new Sqlite(':memory:');
    sqlite.pragma('user_version = 7');

    expect(() => migrate(sqlite, [one])).toThrow(
      expect.objectContaining({ code: 'db/newer-file', message: expect.stringContaining('Update Benchtag') }),
    );
  });
});
