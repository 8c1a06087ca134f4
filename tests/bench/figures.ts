/** What is measured: the request as a screen sends it, and beside it the least that raw SQLite needs for the same. */
import type { Database } from 'better-sqlite3';
import type { Session } from '#core/host/session.ts';
import type { Workspace } from '#electron/wiring/open-workspace.ts';
import { makeManyValves } from './many-valves.ts';
import { measure, type Times } from './measure.ts';
import { openStream } from './seeded.ts';

export type Figure = Readonly<{
  name: string;
  /** What the baseline does, in words. */
  raw: string;
  run(): Promise<Readonly<{ app: Times; raw: Times }>>;
}>;

const RUNS = 300;
const PAGE_TABLES = [
  'casting',
  'container',
  'arrival_item',
  'promise',
  'placement',
  'contact_log',
  'work_line',
  'part_line',
  'estimate',
  'estimate_line',
  'approval',
  'operation',
  'operation_run',
  'hold',
  'finding',
  'photo',
  'invoice',
  'reading',
  'sign_off',
  'release',
];

export async function makeFigures(workspace: Workspace, owner: Session): Promise<Figure[]> {
  const { sqlite } = workspace.host();
  const ask = async (name: string, input: unknown): Promise<unknown> => {
    const reply = await workspace.answer({ name, input }, owner);
    if (!reply.ok) throw new Error(`${name}: ${reply.error.code} ${reply.error.message}`);
    return reply.output;
  };
  const open = column(sqlite, 'SELECT ticket_id FROM ticket_now WHERE over = 0 ORDER BY ticket_id');
  const phones = column<string>(
    sqlite,
    'SELECT digits FROM contact_point WHERE digits IS NOT NULL ORDER BY id DESC LIMIT 2000',
  );
  const surnames = column<string>(sqlite, 'SELECT name FROM customer ORDER BY id DESC LIMIT 2000');
  const castings = column<string>(sqlite, 'SELECT DISTINCT number FROM find_casting LIMIT 200');
  const pick = <T>(list: readonly T[], run: number): T => list[openStream(`pick|${run}`).below(list.length)] as T;
  const manyValves = await makeManyValves(ask);

  return [
    {
      name: 'open a ticket',
      raw: `SELECT * by ticket_id from ${PAGE_TABLES.length + 1} tables`,
      async run() {
        const statements = [
          sqlite.prepare('SELECT * FROM ticket WHERE id = ?'),
          ...PAGE_TABLES.map((t) => sqlite.prepare(`SELECT * FROM ${t} WHERE ticket_id = ?`)),
        ];
        return {
          app: await measure(RUNS, (run) => ask('tickets/get-ticket', { ticketId: pick(open, run) })),
          raw: await measure(RUNS, (run) => statements.map((s) => s.all(pick(open, run)))),
        };
      },
    },
    find(
      'find box: 7 phone digits',
      (run) => pick(phones, run).slice(-7),
      'trigram MATCH, 20 newest',
      'SELECT rowid FROM find_phone WHERE digits MATCH ? ORDER BY rowid DESC LIMIT 20',
      (text) => `"${text}"`,
    ),
    find(
      'find box: surname',
      (run) => pick(surnames, run).split(' ')[1]?.slice(0, 5) ?? '',
      'fts5 prefix MATCH, 20 newest',
      'SELECT rowid FROM find_customer WHERE body MATCH ? ORDER BY rowid DESC LIMIT 20',
      (text) => `"${text}"*`,
    ),
    find(
      'find box: casting number with ?',
      (run) => pick(castings, run).replace(/^(.)(.)/, '$1?'),
      'GLOB over the index, 20 newest',
      'SELECT casting_id FROM find_casting WHERE number GLOB ? ORDER BY casting_id DESC LIMIT 20',
      (text) => text,
    ),
    {
      name: 'finish an operation',
      raw: 'one durable commit of 5 rows: operation, run, activity, its text, projection',
      async run() {
        const ids = column(
          sqlite,
          "SELECT operation_id FROM operation_now WHERE slot = 'next' ORDER BY operation_id LIMIT 120",
        );
        return {
          app: await measure(Math.min(100, ids.length - 12), (run) => finish(ask, sqlite, ids[run] ?? 0)),
          raw: await measure(100, (run) => rawFinish(sqlite, run)),
        };
      },
    },
    {
      name: 'load a bench table of 32 valves',
      raw: 'SELECT spots, readings, limits of the casting',
      async run() {
        const { casting, type } = manyValves;
        const spots = sqlite.prepare('SELECT * FROM spot WHERE casting_type_id = ?');
        const readings = sqlite.prepare('SELECT * FROM reading WHERE casting_id = ?');
        const limits = sqlite.prepare('SELECT * FROM limit_row WHERE casting_type_id = ? OR for_what = ?');
        return {
          app: await measure(RUNS, () => ask('readings/get-table', { casting, table: 'heights' })),
          raw: await measure(RUNS, () => [spots.all(type), readings.all(casting), limits.all(type, 'shop')]),
        };
      },
    },
    {
      name: 'Counter home',
      raw: 'the rows of its lists by their indexes',
      async run() {
        const lists = [
          'promised_on = ?',
          'ready = 1 AND told_at IS NULL AND over = 0',
          'unanswered > 0',
          'ring_at IS NOT NULL',
        ].map((where) =>
          sqlite.prepare(`SELECT * FROM ticket_now WHERE ${where.replace('?', "'2027-05-14'")} LIMIT 200`),
        );
        return {
          app: await measure(RUNS, () => ask('home/get-counter', {})),
          raw: await measure(RUNS, () => lists.map((s) => s.all())),
        };
      },
    },
    {
      name: 'draw a claim ticket',
      raw: 'its facts by ticket_id, without drawing',
      async run() {
        const statements = PAGE_TABLES.map((t) => sqlite.prepare(`SELECT * FROM ${t} WHERE ticket_id = ?`));
        return {
          app: await measure(40, (run) =>
            ask('documents/print-paper', { wish: { paper: 'claim-ticket', ticketId: pick(open, run) } }),
          ),
          raw: await measure(40, (run) => statements.map((s) => s.all(pick(open, run)))),
        };
      },
    },
  ];

  function find(
    name: string,
    textOf: (run: number) => string,
    raw: string,
    sql: string,
    toMatch: (text: string) => string,
  ): Figure {
    return {
      name,
      raw,
      async run() {
        const statement = sqlite.prepare(sql);
        return {
          app: await measure(RUNS, (run) => ask('search/find-anything', { text: textOf(run) })),
          raw: await measure(RUNS, (run) => statement.all(toMatch(textOf(run)))),
        };
      },
    };
  }
}

const column = <T = number>(sqlite: Database, sql: string): T[] => sqlite.prepare(sql).pluck().all() as T[];

async function finish(
  ask: (name: string, input: unknown) => Promise<unknown>,
  sqlite: Database,
  operationId: number,
): Promise<void> {
  const { version } = sqlite.prepare('SELECT version FROM operation WHERE id = ?').get(operationId) as {
    version: number;
  };
  await ask('floor/finish-operation', { operations: [{ operationId, seenVersion: version }] });
}

/** The same rows written by hand; undone rows of a table of its own would not be durable commits of this file. */
function rawFinish(sqlite: Database, run: number): void {
  sqlite
    .transaction(() => {
      sqlite
        .prepare(
          'UPDATE operation SET instruction = ? WHERE id = (SELECT id FROM operation ORDER BY id LIMIT 1 OFFSET ?)',
        )
        .run(`raw ${run}`, run);
      sqlite
        .prepare('UPDATE ticket_now SET where_words = ? WHERE ticket_id = (SELECT ticket_id FROM ticket_now LIMIT 1)')
        .run(`raw ${run}`);
      for (let i = 0; i < 3; i += 1)
        sqlite
          .prepare(
            "INSERT INTO holiday (on_day, words, ended_at, created_at) VALUES ('2031-01-01', ?, '2031-01-01T00:00:00.000Z', '2031-01-01T00:00:00.000Z')",
          )
          .run(`raw ${run} ${i}`);
    })
    .immediate();
}
