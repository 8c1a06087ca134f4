/**
 * A whole host on a real migrated in-memory database, with the practice shop's people, catalogue, prices and customers, and
 * a clock that stands at 2026-03-09 14:00 UTC until a test moves it. Nothing is mocked but the backup.
 */
import { randomBytes } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import type { App, RequestName } from '#core/app-contract.ts';
import { openDatabase } from '#core/db/open-database.ts';
import { type ReadDb, readDb } from '#core/db/query.ts';
import { dispatch } from '#core/host/dispatch.ts';
import { makeFiles } from '#core/host/files.ts';
import type { Announcement, Host } from '#core/host/host.ts';
import { makePins } from '#core/host/pins.ts';
import { features, project } from '#core/host/registry.ts';
import type { Reply, ReplyError } from '#core/host/reply.ts';
import { everything, type Session, sessionOf } from '#core/host/session.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import type { DeviceId } from '#core/kernel/ids.ts';
import { makePinCheck } from '#core/staff/handlers/sessions.ts';
import { listPeople } from '#core/staff/store.ts';
import { compareAll } from '#core/state/store/projections.ts';
import { loadShop } from '#demo-data/load-shop.ts';

export const TEST_NOW = '2026-03-09T14:00:00.000Z';
/** Small, so that a template is made in a moment; still the real scrypt. */
const TEST_COST = 2 ** 4;

type Who = string | Session;
type Options = Readonly<{
  /** Initials, or a session; the owner when left out. */
  as?: Who;
  pin?: string;
  key?: string;
}>;

export type TestHost = Readonly<{
  host: Host;
  sqlite: Database;
  db: ReadDb;
  announced: readonly Announcement[];
  /** Send a request that is expected to work. @returns its output; throws with the sentence when it is refused. */
  send<N extends RequestName>(name: N, input: InputOf<App[N]>, options?: Options): Promise<OutputOf<App[N]>>;
  /** Send a request that is expected to be refused. @returns the error. */
  refuse<N extends RequestName>(name: N, input: InputOf<App[N]>, options?: Options): Promise<ReplyError>;
  /** The raw answer, for anything odd. */
  ask(name: string, input: unknown, options?: Options): Promise<Reply>;
  /** The session of a person by initials. */
  as(initials: string): Session;
  /** Move the clock to a UTC moment. */
  setClock(moment: string): void;
}>;

const templates = new Map<string, Promise<Buffer>>();

/** Start a host. `empty`: before the first run. */
export async function startTestHost(options: Readonly<{ empty?: boolean; file?: string }> = {}): Promise<TestHost> {
  if (options.empty || options.file) {
    const fresh = makeHost(openDatabase(options.file ?? ':memory:'));
    if (!options.empty) await loadShop(fresh.replay);
    fresh.setClock(TEST_NOW);
    return fresh;
  }
  let template = templates.get('shop');
  if (!template) {
    template = makeTemplate();
    templates.set('shop', template);
  }
  return makeHost(reopen(await template));
}

async function makeTemplate(): Promise<Buffer> {
  const made = makeHost(openDatabase(':memory:'));
  await loadShop(made.replay);
  const bytes = made.sqlite.serialize();
  made.sqlite.close();
  return bytes;
}

function reopen(bytes: Buffer): Database {
  const sqlite = new Sqlite(bytes);
  sqlite.pragma('foreign_keys = ON');
  return sqlite;
}

function makeHost(sqlite: Database) {
  let now = new Date(TEST_NOW);
  const announced: Announcement[] = [];
  const pins = makePins(TEST_COST);
  const services: Host['services'] = {
    files: makeFiles(mkdtempSync(join(tmpdir(), 'benchtag-files-'))),
    pins,
    // Loaded when first asked for: opening the faces takes a moment.
    draw: async (sheet, data) => (await import('./drawing.ts')).draw(sheet, data),
    backup: async () => ({ file: 'backups/test.sqlite', bytes: 1, seconds: 0 }),
    backups: { list: () => [], check: () => undefined },
  };
  const host: Host = {
    sqlite,
    features,
    services,
    appVersion: '0.1.0',
    clock: () => now,
    timeZone: () =>
      readDb(sqlite).one(readDb(sqlite).q.selectFrom('shop_setting').select('time_zone'))?.time_zone ?? 'UTC',
    secret: () => randomBytes(32).toString('hex'),
    project,
    announce: (what) => void announced.push(what),
    checkPinAgain: makePinCheck({ sqlite, services }),
    log: () => undefined,
  };
  const db = readDb(sqlite);
  const as = (initials: string): Session => {
    const person = listPeople(db, true).findLast((p) => p.initials === initials);
    if (!person) throw new Error(`nobody has the initials ${initials}`);
    return sessionOf({
      staff: person.id,
      name: person.name,
      initials,
      roles: person.roles,
      device: null as DeviceId | null,
      from: 'test',
    });
  };
  const sessionFor = (who: Who | undefined): Session => {
    if (typeof who === 'object') return who;
    return listPeople(db, false).length === 0 ? everything('test') : as(who ?? 'OB');
  };
  const ask: TestHost['ask'] = (name, input, { as: who, pin, key } = {}) =>
    dispatch(host, { name, input, pin, key }, sessionFor(who));
  const setClock = (moment: string): void => {
    now = new Date(moment);
  };
  const made = {
    host,
    sqlite,
    db,
    announced,
    ask,
    as,
    setClock,
    async send(name: string, input: unknown, options?: Options) {
      const reply = await ask(name, input, options);
      if (!reply.ok)
        throw new Error(
          `${name} was refused: ${reply.error.code} ${reply.error.message} ${JSON.stringify(reply.error.fields ?? {})}`,
        );
      // What lists read must be what the facts say, after every command of every test.
      const stale = compareAll(db);
      if (stale.length > 0) throw new Error(`${name} left stale rows: ${JSON.stringify(stale.slice(0, 5))}`);
      return reply.output;
    },
    async refuse(name: string, input: unknown, options?: Options) {
      const reply = await ask(name, input, options);
      if (reply.ok) throw new Error(`${name} was expected to be refused, but answered ${JSON.stringify(reply.output)}`);
      return reply.error;
    },
    replay: {
      async ask(name: string, input: unknown, initials?: string): Promise<Reply> {
        const reply = await ask(name, input, initials ? { as: initials } : {});
        // Rooms that are still being built: their part of the practice shop is left out until they answer.
        if (!reply.ok && reply.error.code === 'host/unknown-request')
          return { ok: true, output: {}, touched: [], at: '' };
        return reply;
      },
      setClock,
    },
  };
  return made as unknown as TestHost & Pick<typeof made, 'replay'>;
}
