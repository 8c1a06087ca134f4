import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { findFaults } from '#core/db/copy.ts';
import { readDb } from '#core/db/query.ts';
import { findBrokenLink } from '#core/host/chain.ts';
import { sessionOf } from '#core/host/session.ts';
import { listBackups } from '#electron/wiring/backups.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { forgetQuantity } from '#tests/kit/forget-quantity.ts';
import { firstRun, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

describe('openWorkspace', () => {
  it('opens in WAL with synchronous FULL, read back after the first write, and foreign keys on', async () => {
    const workspace = openSmall(temporaryFolder());
    await firstRun(workspace);

    const { sqlite } = workspace.host();

    expect(sqlite.pragma('journal_mode', { simple: true })).toBe('wal');
    // 2 is FULL: sqlite.org/pragma.html#pragma_synchronous
    expect(sqlite.pragma('synchronous', { simple: true })).toBe(2);
    expect(sqlite.pragma('foreign_keys', { simple: true })).toBe(1);
    await workspace.close();
  });

  it('refuses a second start on the same workspace in words and leaves it as it is', async () => {
    const folder = temporaryFolder();
    const first = openSmall(folder);
    first.tell({ address: 'http://127.0.0.1:4170/', token: 'x' });

    expect(() => openSmall(folder)).toThrow(/open already at http:\/\/127\.0\.0\.1:4170\//);

    await first.close();
    const again = openSmall(folder);
    await again.close();
  });

  it('refuses a workspace of a newer program and does not touch it', async () => {
    const folder = temporaryFolder();
    const made = openSmall(folder);
    await firstRun(made);
    await made.close();
    const raw = new Sqlite(join(folder, 'benchtag.sqlite'));
    raw.pragma('user_version = 999');
    raw.close();
    const before = readFileSync(join(folder, 'benchtag.sqlite'));

    expect(() => openSmall(folder)).toThrow(expect.objectContaining({ code: 'db/newer-file' }));
    expect(readFileSync(join(folder, 'benchtag.sqlite')).equals(before)).toBe(true);
  });

  it('teaches an older workspace what this program knows before it answers, once, with the shop limits of what is new', async () => {
    const folder = temporaryFolder();
    const made = openSmall(folder);
    await firstRun(made);
    await made.close();
    const raw = new Sqlite(join(folder, 'benchtag.sqlite'));
    forgetQuantity(raw, 'spring-strength');
    // Broken off half way: the quantity was brought in, its limit not yet.
    raw.exec("DELETE FROM limit_row WHERE quantity_id = (SELECT id FROM quantity WHERE code = 'seat-runout')");
    raw.close();
    const count = (workspace: ReturnType<typeof openSmall>, table: string) =>
      workspace.host().sqlite.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number;

    const again = openSmall(folder);
    await again.answer({ name: 'tools/list-tools', input: {} }, commandLineSession(again.host(), 'AF'));

    const { sqlite } = again.host();
    const known = sqlite
      .prepare(
        "SELECT l.typed_low FROM limit_row l JOIN quantity q ON q.id = l.quantity_id WHERE q.code = 'spring-strength'",
      )
      .pluck();
    expect(known.all()).toEqual(['0.90']);
    const went = sqlite.prepare(
      "SELECT count(*) FROM limit_row l JOIN quantity q ON q.id = l.quantity_id WHERE q.code = 'seat-runout'",
    );
    expect(went.pluck().get()).toBeGreaterThan(0);
    const activities = count(again, 'activity');
    await again.close();

    const third = openSmall(folder);
    await third.answer({ name: 'tools/list-tools', input: {} }, commandLineSession(third.host(), 'AF'));
    expect(count(third, 'activity')).toBe(activities);
    await third.close();
  });

  it('says so in words when the file is no workspace, and keeps it', () => {
    const folder = temporaryFolder();
    writeFileSync(
      join(folder, 'benchtag.sqlite'),
      'this is a shopping list, not a database, and it is long enough to be read',
    );

    expect(() => openSmall(folder)).toThrow(expect.objectContaining({ code: 'db/cannot-open' }));
    expect(readFileSync(join(folder, 'benchtag.sqlite'), 'utf8')).toContain('shopping list');
  });

  it('backs up before migrating', async () => {
    const folder = temporaryFolder();
    const made = openSmall(folder);
    await firstRun(made);
    const { sqlite } = made.host();
    const version = Number(sqlite.pragma('user_version', { simple: true }));
    await made.close();
    // An older program wrote this file: the last step has not been seen. The step itself then fails on what is there
    // already, which must leave the copy behind.
    const raw = new Sqlite(join(folder, 'benchtag.sqlite'));
    raw.pragma(`user_version = ${version - 1}`);
    raw.close();

    expect(() => openSmall(folder)).toThrow();

    const copies = readdirSync(join(folder, 'backups')).filter((name) => name.endsWith('before update'));
    expect(copies).toHaveLength(1);
    expect(findFaults(join(folder, 'backups', copies[0] ?? '', 'benchtag.sqlite'))).toEqual([]);
  });
});

describe('a new shop', () => {
  it('begins with the catalogue that the program brings, without prices, and the first limits', async () => {
    const workspace = openSmall(temporaryFolder());
    await firstRun(workspace);
    const db = readDb(workspace.host().sqlite);
    const count = (table: string): number => db.sql<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)[0]?.n ?? 0;

    expect([count('operation_kind'), count('package'), count('condition_kind'), count('finding_kind')]).toEqual([
      69, 6, 28, 17,
    ]);
    expect(count('quantity')).toBeGreaterThan(80);
    expect(count('limit_row')).toBeGreaterThan(5);
    expect(count('rate')).toBe(0);
    await workspace.close();
  });
});

describe('backup/make-backup', () => {
  it('makes a copy that opens, is whole and holds the pictures', async () => {
    const folder = temporaryFolder();
    const workspace = openSmall(folder);
    await firstRun(workspace);
    const picture = readFileSync(new URL('../../fixtures/one-pixel.png', import.meta.url));
    const kept = await workspace.host().services.files.put(picture, 'image/png');

    const reply = await workspace.answer(
      { name: 'backup/make-backup', input: {} },
      commandLineSession(workspace.host(), 'AF'),
    );

    expect(reply).toMatchObject({ ok: true });
    const [backup] = listBackups(workspace.paths);
    const inside = join(folder, 'backups', backup?.file ?? '');
    expect(findFaults(join(inside, 'benchtag.sqlite'))).toEqual([]);
    expect(existsSync(join(inside, 'attachments', kept.sha256.slice(0, 2), kept.sha256))).toBe(true);
    await workspace.close();
  });

  it('is made once a day by itself', async () => {
    const workspace = openSmall(temporaryFolder(), () => new Date('2026-03-09T14:00:00.000Z'));
    await firstRun(workspace);

    await workspace.backupOfTheDay();
    await workspace.backupOfTheDay();

    expect(listBackups(workspace.paths)).toMatchObject([{ at: '2026-03-09T14:00:00.000Z', why: 'of the day' }]);
    await workspace.close();
  });
});

describe('backup/restore-backup', () => {
  it('puts the backup in place, keeps what it replaced, and says who did it', async () => {
    const folder = temporaryFolder();
    let now = new Date('2026-03-09T14:00:00.000Z');
    const workspace = openSmall(folder, () => now);
    await firstRun(workspace);
    const owner = commandLineSession(workspace.host(), 'AF');
    await workspace.answer({ name: 'backup/make-backup', input: {} }, owner);
    const [backup] = listBackups(workspace.paths);
    now = new Date('2026-03-09T15:00:00.000Z');
    await workspace.answer(
      { name: 'staff/add-person', input: { name: 'Bo Lind', initials: 'BL', roles: ['counter'] } },
      owner,
    );

    const reply = await workspace.answer({ name: 'backup/restore-backup', input: { file: backup?.file } }, owner);

    expect(reply).toMatchObject({ ok: true });
    const people = await workspace.answer(
      { name: 'staff/list-staff', input: {} },
      commandLineSession(workspace.host(), 'AF'),
    );
    expect(people).toMatchObject({ ok: true, output: { people: [{ initials: 'AF' }] } });
    const aside = readdirSync(join(folder, 'set-aside'));
    const replaced = new Sqlite(join(folder, 'set-aside', aside[0] ?? '', 'benchtag.sqlite'), { readonly: true });
    expect(replaced.prepare("SELECT count(*) AS n FROM staff WHERE initials = 'BL'").get()).toEqual({ n: 1 });
    replaced.close();
    const db = readDb(workspace.host().sqlite);
    expect(findBrokenLink(db)).toBeUndefined();
    expect(
      db.sql<{ body: string }>('SELECT body FROM activity_text ORDER BY activity_id DESC LIMIT 1')[0]?.body,
    ).toContain('Ada Ferrow');
    await workspace.close();
  });

  it('keeps attachments that are in both, brings those that are gone, and takes none away', async () => {
    const folder = temporaryFolder();
    const workspace = openSmall(folder);
    await firstRun(workspace);
    const owner = commandLineSession(workspace.host(), 'AF');
    const attachment = (name: string) => join(folder, 'attachments', 'ab', name);
    mkdirSync(join(folder, 'attachments', 'ab'), { recursive: true });
    for (const name of ['both', 'gone']) writeFileSync(attachment(name), name);
    await workspace.answer({ name: 'backup/make-backup', input: {} }, owner);
    const [backup] = listBackups(workspace.paths);
    rmSync(attachment('gone'));
    writeFileSync(attachment('later'), 'later');

    const reply = await workspace.answer({ name: 'backup/restore-backup', input: { file: backup?.file } }, owner);

    expect(reply).toMatchObject({ ok: true });
    expect(['both', 'gone', 'later'].map((name) => readFileSync(attachment(name), 'utf8'))).toEqual([
      'both',
      'gone',
      'later',
    ]);
    await workspace.close();
  });

  it('goes on with what stood there when the copy fails', async () => {
    const folder = temporaryFolder();
    const workspace = openSmall(folder);
    await firstRun(workspace);
    const owner = commandLineSession(workspace.host(), 'AF');
    await workspace.answer({ name: 'backup/make-backup', input: {} }, owner);
    const [backup] = listBackups(workspace.paths);
    // A file stands where the replaced file would be kept.
    writeFileSync(join(folder, 'set-aside'), 'in the way');

    await workspace
      .answer({ name: 'backup/restore-backup', input: { file: backup?.file } }, owner)
      .catch(() => undefined);

    const people = await workspace.answer({ name: 'staff/list-staff', input: {} }, owner);
    expect(people).toMatchObject({ ok: true, output: { people: [{ initials: 'AF' }] } });
    await workspace.close();
  });

  it('refuses a backup that is not whole and changes nothing', async () => {
    const folder = temporaryFolder();
    const workspace = openSmall(folder);
    await firstRun(workspace);
    const owner = commandLineSession(workspace.host(), 'AF');
    await workspace.answer({ name: 'backup/make-backup', input: {} }, owner);
    const [backup] = listBackups(workspace.paths);
    const file = join(folder, 'backups', backup?.file ?? '', 'benchtag.sqlite');
    const bytes = readFileSync(file);
    bytes.fill(0x5a, 8192, 40_000);
    writeFileSync(file, bytes);

    const reply = await workspace.answer({ name: 'backup/restore-backup', input: { file: backup?.file } }, owner);

    expect(reply).toMatchObject({ ok: false, error: { code: 'backup/not-whole' } });
    expect(existsSync(join(folder, 'set-aside'))).toBe(false);
    await workspace.close();
  });

  it('is done at the computer that keeps the workspace only', async () => {
    const workspace = openSmall(temporaryFolder());
    await firstRun(workspace);
    const here = commandLineSession(workspace.host(), 'AF');
    const away = sessionOf({ ...here, staff: here.staff ?? (1 as never), atTheMachine: false });

    const reply = await workspace.answer({ name: 'backup/restore-backup', input: { file: 'x' } }, away);

    expect(reply).toMatchObject({ ok: false, error: { code: 'backup/not-here' } });
    await workspace.close();
  });
});
