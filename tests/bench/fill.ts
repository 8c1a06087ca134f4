/** Fills a workspace to a number of tickets from the practice shop's own. */
import type { Database } from 'better-sqlite3';
import { writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';
import type { TicketId } from '#core/kernel/ids.ts';
import { indexNoted } from '#core/search/store.ts';
import { projectTickets } from '#core/state/store/projections.ts';
import { COPY_STEP, makeCopier, type Pattern, readPattern, thin, withoutGuards } from './clone-rows.ts';
import { openStream, type Stream } from './seeded.ts';

const NOW = moment('2027-05-14T13:41:00.000Z');
/** Open tickets of one shop at a time; the rest is years of finished work. */
const OPEN = 80;
const TICKETS_A_YEAR = 2000;
const FIRST = [
  'Bra',
  'Cor',
  'Del',
  'Fen',
  'Gar',
  'Hol',
  'Ira',
  'Jor',
  'Kes',
  'Lum',
  'Mar',
  'Nor',
  'Oll',
  'Pel',
  'Quil',
  'Ros',
  'Sten',
  'Tar',
  'Ulm',
  'Vas',
  'Wren',
  'Żół',
  'Ångs',
  'Дми',
];
const SECOND = [
  'brook',
  'dale',
  'fisk',
  'gard',
  'holm',
  'kerr',
  'lund',
  'mere',
  'nash',
  'quist',
  'row',
  'sted',
  'thorn',
  'vane',
  'wick',
  'cja',
  'трий',
  'ström',
];

export type Filled = Readonly<{ tickets: number; customers: number; seconds: number }>;

/** Copy until the file holds `tickets`. Seeded: two runs give the same rows. */
export function fill(sqlite: Database, tickets: number): Filled {
  const began = performance.now();
  const words = sqlite.prepare('SELECT n.ticket_id AS id, n.word FROM ticket_now n').all() as {
    id: number;
    word: string;
  }[];
  const done = words
    .filter((t) => ['closed', 'collected'].includes(t.word))
    .map((t) => slim(sqlite, readPattern(sqlite, t.id)));
  const open = words
    .filter((t) => ['in work', 'approved', 'waiting approval', 'ready'].includes(t.word))
    .map((t) => readPattern(sqlite, t.id));
  const stream = openStream(`benchtag|1|2027|${tickets}|casting`);
  const opened: TicketId[] = [];
  const db = writeDb(sqlite, { now: NOW, by: null });
  const usualCache = Number(sqlite.pragma('cache_size', { simple: true }));
  sqlite.pragma('synchronous = OFF');
  sqlite.pragma('cache_size = -400000');
  const customers = addCustomers(sqlite, Math.round(tickets / 6), stream);
  sqlite.transaction(() => indexNoted(db))();
  withoutGuards(sqlite, () => {
    const copy = makeCopier(sqlite);
    const copyOne = (no: number): void => {
      const isOpen = no > tickets - OPEN;
      const pattern = oneOf(isOpen ? open : done, stream);
      const daysEarlier = isOpen ? 0 : 60 + Math.floor(((tickets - no) * 365) / TICKETS_A_YEAR);
      copy(pattern, { no, ...oneOf(customers, stream), numberFrom: 1_000_000 + no, daysEarlier });
      if (isOpen) opened.push((Number(pattern.get('ticket')?.[0]?.id) + COPY_STEP * no) as TicketId);
    };
    const add = sqlite.transaction((from: number, until: number) => {
      for (let no = from; no < until; no += 1) copyOne(no);
    });
    for (let from = words.length + 1; from <= tickets; from += 2000) add(from, Math.min(from + 2000, tickets + 1));
  });
  sqlite.transaction(() => projectTickets(db, opened))();
  sqlite.exec('ANALYZE');
  sqlite.pragma('wal_checkpoint(TRUNCATE)');
  sqlite.pragma(`cache_size = ${usualCache}`);
  sqlite.pragma('synchronous = FULL');
  return { tickets, customers: Math.round(tickets / 6), seconds: (performance.now() - began) / 1000 };
}

type Customer = Readonly<{ customerId: number; personId: number }>;

function addCustomers(sqlite: Database, count: number, stream: Stream): Customer[] {
  const at = NOW;
  const terms = (sqlite.prepare('SELECT id FROM terms LIMIT 1').get() as { id: number }).id;
  const customer = sqlite.prepare(
    "INSERT INTO customer (kind, name, short_name, terms_id, price_list, created_at) VALUES (?, ?, ?, ?, 'standard', ?)",
  );
  const person = sqlite.prepare(
    'INSERT INTO customer_person (customer_id, name, may_approve, may_collect, created_at) VALUES (?, ?, 1, 1, ?)',
  );
  const phone = sqlite.prepare(
    "INSERT INTO contact_point (customer_person_id, kind, value, digits, created_at) VALUES (?, 'phone', ?, ?, ?)",
  );
  const made: Customer[] = [];
  sqlite.transaction(() => {
    for (let i = 0; i < count; i += 1) {
      const name = `${word(stream)}${SECOND[stream.below(SECOND.length)]} ${word(stream)}${SECOND[stream.below(SECOND.length)]}`;
      const customerId = Number(
        customer.run(stream.below(4) === 0 ? 'trade' : 'retail', name, name.slice(0, 20), terms, at).lastInsertRowid,
      );
      const personId = Number(person.run(customerId, name, at).lastInsertRowid);
      // Fiction numbers only: any area, exchange 555, line 0100 to 0199.
      const digits = `${200 + stream.below(790)}5550${100 + stream.below(100)}`;
      phone.run(personId, `(${digits.slice(0, 3)}) ${digits.slice(3, 6)}-${digits.slice(6)}`, digits, at);
      made.push({ customerId, personId });
    }
  })();
  return made;
}

const word = (stream: Stream): string => FIRST[stream.below(FIRST.length)] ?? 'Bra';

function oneOf<T>(list: readonly T[], stream: Stream): T {
  const found = list[stream.below(list.length)];
  if (found === undefined) throw new Error('nothing to copy');
  return found;
}

/** Rows a finished ticket keeps: enough for every index to be deep, few enough for 120 000 tickets on a small disk. */
const OF_FINISHED = {
  arrival_item: 3,
  work_line: 4,
  part_line: 2,
  estimate_line: 4,
  operation: 6,
  reading: 6,
  invoice_line: 4,
  photo: 1,
};

/** A finished ticket as years of them are kept: its frozen sheets say nothing to a list, and a few rows stand for all. */
function slim(sqlite: Database, pattern: Pattern): Pattern {
  const thinned = new Map(thin(sqlite, pattern, OF_FINISHED));
  const signed = thinned.get('sign_off') ?? [];
  return thinned.set(
    'sign_off',
    signed.map((row) => ({ ...row, table_json: '{}' })),
  );
}
