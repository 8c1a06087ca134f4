/**
 * Opens a workspace folder and answers requests for it: the same for the desktop window, the browser and the command line.
 *
 * Order of opening: take the folder, migrate with a backup before, start the drawing thread. Order of closing: last backup if
 * asked, thread, database, folder.
 */
import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Database } from 'better-sqlite3';
import { copyAndCheck } from '#core/db/copy.ts';
import { openDatabase } from '#core/db/open-database.ts';
import { readDb } from '#core/db/query.ts';
import { writeActivity } from '#core/host/activity.ts';
import { dispatch } from '#core/host/dispatch.ts';
import { makeFiles } from '#core/host/files.ts';
import type { Announcement, Host } from '#core/host/host.ts';
import { makePins } from '#core/host/pins.ts';
import { features, project } from '#core/host/registry.ts';
import type { Reply, Request } from '#core/host/reply.ts';
import { everything, type Session } from '#core/host/session.ts';
import { moment } from '#core/kernel/days.ts';
import { startDrawer } from '#core/paper/drawer.ts';
import { shopContract } from '#core/shop/contract.ts';
import { makePinCheck } from '#core/staff/handlers/sessions.ts';
import { checkBackup, listBackups, makeBackup, putInPlace } from './backups.ts';
import { openLog } from './log.ts';
import { type Running, takeOwnership } from './owner-lock.ts';
import { bringUpToDate } from './program-catalogue.ts';
import { clockOf } from './shop-clock.ts';
import { pathsOf, type WorkspacePaths } from './workspace-folder.ts';

export type Workspace = Readonly<{
  paths: WorkspacePaths;
  /** The host of the moment: after a restore it is another one. */
  host(): Host;
  /** Answer one request. Never throws. */
  answer(request: Request, session: Session): Promise<Reply>;
  /** Hear what was done, after it is on disk. Returns the end. */
  onChange(listener: (what: Announcement) => void): () => void;
  /** Make the day's backup unless there is one of today. */
  backupOfTheDay(): Promise<void>;
  tell(running: Omit<Running, 'pid'>): void;
  close(): Promise<void>;
}>;

type Options = Readonly<{
  clock?: () => Date;
  appVersion?: string;
  /** scrypt cost, for the practice shop's loader and tests. */
  pinCost?: number;
}>;

const FONTS = fileURLToPath(new URL('../../assets/fonts', import.meta.url));
const RESTORE = 'backup/restore-backup';
const FIRST_RUN = 'shop/first-run';

/** @throws AppError in words when the folder is open elsewhere, cannot be written, is damaged or of a newer program. */
export function openWorkspace(folder: string, options: Options = {}): Workspace {
  const paths = pathsOf(folder);
  mkdirSync(paths.folder, { recursive: true });
  const computer = options.clock ?? (() => new Date());
  let clock = computer;
  const lock = takeOwnership(paths);
  const log = openLog(paths.log);
  const listeners = new Set<(what: Announcement) => void>();
  const drawer = startDrawer({ worker: new URL('./paper-worker.ts', import.meta.url), fonts: FONTS });
  const services: Host['services'] = {
    files: makeFiles(paths.attachments),
    pins: makePins(options.pinCost),
    draw: drawer.draw,
    backup: (why) => makeBackup(paths, why, clock()),
    backups: { list: () => listBackups(paths), check: (file) => checkBackup(paths, file) },
  };
  let sqlite: Database;
  try {
    sqlite = openFile(paths, computer);
  } catch (error) {
    lock.release();
    throw error;
  }
  let host = makeHost(sqlite);

  function makeHost(opened: Database): Host {
    clock = options.clock ?? clockOf(opened);
    return {
      sqlite: opened,
      features,
      services,
      appVersion: options.appVersion ?? '0.1.0',
      clock: () => clock(),
      timeZone: () => timeZoneOf(opened),
      secret: () => randomBytes(32).toString('hex'),
      project,
      announce: (what) => {
        for (const listener of listeners) listener(what);
      },
      checkPinAgain: makePinCheck({ sqlite: opened, services }),
      log,
    };
  }

  const asTheProgram = (name: string, input: unknown): Promise<Reply> =>
    dispatch(host, { name, input }, everything('the program'));

  /**
   * A new shop begins with the catalogue that the program brings, and an older workspace learns what is new, before anything is
   * answered. What fails, a full disk for example, is tried again at the next request.
   */
  async function learn(): Promise<void> {
    try {
      if (hasShop(host.sqlite)) await bringUpToDate(asTheProgram);
    } catch (error) {
      learnt = undefined;
      log('error', { catalogue: String(error) });
    }
  }
  let learnt: Promise<void> | undefined;

  let dayBackup: Promise<void> | undefined;
  async function makeDayBackup(): Promise<void> {
    const today = clock().toISOString().slice(0, 10);
    if (listBackups(paths).some((b) => b.at.startsWith(today))) return;
    const made = await makeBackup(paths, 'of the day', clock());
    log('info', { backup: made.file, bytes: made.bytes, seconds: made.seconds });
  }

  function restore(file: string, session: Session): void {
    host.sqlite.close();
    let aside: string;
    try {
      aside = putInPlace(paths, file, clock());
    } finally {
      // Also when it failed: what stood there before is there again.
      host = makeHost(openFile(paths, computer));
    }
    const now = moment(clock().toISOString());
    const line = { subject: ['backup', 1] as const, words: `Restored ${file}; what it replaced lies in ${aside}` };
    const entry = shopContract[RESTORE];
    // The person may not exist in the older file, so the row names nobody and the words say who.
    const by = { ...session, staff: null, device: null };
    host.sqlite.transaction(() =>
      writeActivity(host, {
        lines: [{ ...line, words: `${line.words} (${session.name})` }],
        session: by,
        now,
        command: RESTORE,
        input: { file },
        entry,
      }),
    )();
    host.announce({ name: RESTORE, touched: [] });
  }

  return {
    paths,
    host: () => host,
    async answer(request, session) {
      learnt ??= learn();
      await learnt;
      const reply = await dispatch(host, request, session);
      if (reply.ok && request.name === FIRST_RUN) {
        learnt = learn();
        await learnt;
      }
      if (reply.ok && request.name === RESTORE) {
        restore((reply.output as { file: string }).file, session);
        learnt = undefined;
      }
      return reply;
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    backupOfTheDay() {
      // Two at a time would write the same folder; whoever asks meanwhile waits for the one under way.
      dayBackup ??= makeDayBackup().finally(() => {
        dayBackup = undefined;
      });
      return dayBackup;
    },
    tell: (running) => lock.tell({ pid: process.pid, ...running }),
    async close() {
      await drawer.stop();
      host.sqlite.close();
      lock.release();
    },
  };
}

/** Before a migration the file is copied as it is; without that copy nothing is changed. */
function openFile(paths: WorkspacePaths, clock: () => Date): Database {
  return openDatabase(paths.database, {
    beforeMigrating() {
      const name = `${clock().toISOString().replaceAll(':', '-')} before update`;
      mkdirSync(`${paths.backups}/${name}`, { recursive: true });
      copyAndCheck(paths.database, `${paths.backups}/${name}/benchtag.sqlite`);
    },
  });
}

function hasShop(sqlite: Database): boolean {
  const db = readDb(sqlite);
  return db.one(db.q.selectFrom('shop_setting').select('id')) !== undefined;
}

function timeZoneOf(sqlite: Database): string {
  const db = readDb(sqlite);
  return (
    db.one(db.q.selectFrom('shop_setting').select('time_zone'))?.time_zone ??
    Intl.DateTimeFormat().resolvedOptions().timeZone
  );
}
