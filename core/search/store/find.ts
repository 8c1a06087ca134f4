/** Looks up rows by typed text. Newest first everywhere; nothing is ranked, so that a big file answers as fast as a small one. */
import { digitSpellings, foldText } from '../../customers/compute.ts';
import type { ReadDb } from '../../db/query.ts';
import type { CastingId, CustomerId, CustomerPersonId, TicketId } from '../../kernel/ids.ts';
import { globOf, longestRun, placeOfKey, type Typed } from '../compute/typed.ts';

const phrase = (text: string): string => `"${text.replaceAll('"', '')}"`;
/** Every word begins a word there, in any order. */
const prefixes = (words: readonly string[]): string => words.map((word) => `${phrase(word)}*`).join(' ');

export type ByPhone = Readonly<{ customer: CustomerId; person: CustomerPersonId; value: string; digits: string }>;

/** Numbers that hold these digits, in any spelling. Fewer than three digits find nothing. */
export function findPhones(db: ReadDb, typed: Typed, limit: number): ByPhone[] {
  const spellings =
    typed.phoneDigits === null ? [] : digitSpellings(typed.phoneDigits).filter((one) => one.length >= 3);
  const found = spellings.flatMap((digits) =>
    db
      .sql<Omit<ByPhone, 'digits'>>(
        `SELECT p.customer_id AS customer, p.id AS person, c.value FROM find_phone f
         JOIN contact_point c ON c.id = f.rowid JOIN customer_person p ON p.id = c.customer_person_id
         WHERE find_phone MATCH ? AND c.retired_on IS NULL AND p.retired_on IS NULL ORDER BY f.rowid DESC LIMIT ?`,
        phrase(digits),
        limit,
      )
      .map((row) => ({ ...row, digits })),
  );
  return [...new Map(found.map((row) => [`${row.customer} ${row.value}`, row])).values()].slice(0, limit);
}

/** Customers by any of their names. */
export const findCustomersByWords = (db: ReadDb, words: readonly string[], limit: number): CustomerId[] =>
  words.length === 0
    ? []
    : db
        .sql<{ id: CustomerId }>(
          'SELECT rowid AS id FROM find_customer WHERE find_customer MATCH ? ORDER BY rowid DESC LIMIT ?',
          prefixes(words),
          limit,
        )
        .map((row) => row.id);

export type ByWords = Readonly<{ ticket: TicketId; column: 'orders' | 'engine' | 'rest' }>;

/** Tickets by order number, engine or what was wanted; `column` is the first that holds a typed word. */
export function findTicketsByWords(db: ReadDb, words: readonly string[], limit: number): ByWords[] {
  if (words.length === 0) return [];
  const rows = db.sql<{ ticket: TicketId; orders: string; engine: string }>(
    'SELECT rowid AS ticket, orders, engine FROM find_ticket WHERE find_ticket MATCH ? ORDER BY rowid DESC LIMIT ?',
    prefixes(words),
    limit,
  );
  const holds = (text: string) => words.some((word) => text.split(' ').some((part) => part.startsWith(word)));
  return rows.map((row) => ({
    ticket: row.ticket,
    column: holds(row.orders) ? 'orders' : holds(row.engine) ? 'engine' : 'rest',
  }));
}

export const findTicketByNumber = (db: ReadDb, number: number): TicketId | undefined =>
  db.sql<{ id: TicketId }>('SELECT id FROM ticket WHERE number = ?', number)[0]?.id;

/** The ticket of an invoice number. */
export const findTicketByInvoice = (db: ReadDb, number: number): TicketId | undefined =>
  db.sql<{ id: TicketId }>('SELECT ticket_id AS id FROM invoice WHERE number = ?', number)[0]?.id;

export const findCastingByTag = (db: ReadDb, tag: number): CastingId | undefined =>
  db.sql<{ id: CastingId }>('SELECT id FROM casting WHERE tag_no = ?', tag)[0]?.id;

/** The casting or ticket of a bag's label. */
export const findContainer = (
  db: ReadDb,
  label: string,
): Readonly<{ casting: CastingId | null; ticket: TicketId; label: string }> | undefined =>
  db.sql<{ casting: CastingId | null; ticket: TicketId; label: string }>(
    'SELECT casting_id AS casting, ticket_id AS ticket, label FROM container WHERE label = ?',
    label,
  )[0];

export const findStamps = (db: ReadDb, stamp: string, limit: number): CastingId[] =>
  db
    .sql<{ id: CastingId }>(
      'SELECT id FROM casting WHERE shop_stamp IN (?, ?) ORDER BY id DESC LIMIT ?',
      stamp,
      stamp.toUpperCase(),
      limit,
    )
    .map((row) => row.id);

const MOST_COMPARED = 5000;
const PAGE = 100;

/** Castings whose number or serial holds the key; `?` typed or kept stands for one character. */
export function findNumbers(db: ReadDb, key: string, limit: number): CastingId[] {
  // Few numbers hold an unreadable character: they are compared one by one.
  const wild = newestFirst(
    limit,
    (below) =>
      db.sql<Numbered>(
        'SELECT casting_id AS id, number FROM find_casting WHERE wild = 1 AND casting_id < ? ORDER BY casting_id DESC LIMIT ?',
        below,
        PAGE,
      ),
    key,
  );
  const rows = key.includes('?') ? byGlob(db, key, limit) : byPart(db, key, limit);
  return [...new Set([...rows, ...wild].map((row) => row.id))].sort((a, b) => b - a).slice(0, limit);
}

/** By the longest readable stretch where it is long enough to be indexed, else every number is looked at. */
function byGlob(db: ReadDb, key: string, limit: number): Readonly<{ id: CastingId }>[] {
  const readable = longestRun(key);
  if (readable.length < 3) {
    return db.sql(
      'SELECT casting_id AS id FROM find_casting WHERE number GLOB ? ORDER BY casting_id DESC LIMIT ?',
      globOf(key),
      limit,
    );
  }
  return newestFirst(
    limit,
    (below) =>
      db.sql<Numbered>(
        'SELECT rowid AS id, number FROM find_number WHERE find_number MATCH ? AND rowid < ? ORDER BY rowid DESC LIMIT ?',
        phrase(readable),
        below,
        PAGE,
      ),
    key,
  );
}

type Numbered = Readonly<{ id: CastingId; number: string }>;

/** Newest first a page at a time, until the list is full: the fewest are compared. Alike numbers are compared once. */
function newestFirst(limit: number, pageBelow: (below: number) => readonly Numbered[], key: string): Numbered[] {
  const found: Numbered[] = [];
  const compared = new Map<string, boolean>();
  const holds = (row: Numbered): boolean => {
    const known = compared.get(row.number);
    if (known !== undefined) return known;
    const does = row.number.split(' ').some((number) => placeOfKey(number, key) >= 0);
    compared.set(row.number, does);
    return does;
  };
  let below = Number.MAX_SAFE_INTEGER;
  for (let looked = 0; looked < MOST_COMPARED && found.length < limit; looked += PAGE) {
    const page = pageBelow(below);
    found.push(...page.filter(holds));
    below = page[PAGE - 1]?.id ?? 0;
    if (below === 0) break;
  }
  return found;
}

/** Any three characters in a row are indexed; two are looked for at the beginning. */
const byPart = (db: ReadDb, key: string, limit: number) =>
  key.length >= 3
    ? db.sql<{ id: CastingId }>(
        'SELECT rowid AS id FROM find_number WHERE find_number MATCH ? ORDER BY rowid DESC LIMIT ?',
        phrase(key),
        limit,
      )
    : db.sql<{ id: CastingId }>(
        "SELECT casting_id AS id FROM find_casting WHERE number >= ? AND number < ? || '\u{10ffff}' ORDER BY casting_id DESC LIMIT ?",
        key,
        key,
        limit,
      );

/** Open tickets of a customer, newest first. */
export const openTicketsOf = (db: ReadDb, customer: CustomerId, limit: number): TicketId[] =>
  db
    .sql<{ id: TicketId }>(
      'SELECT ticket_id AS id FROM ticket_now WHERE customer_id = ? AND over = 0 ORDER BY ticket_id DESC LIMIT ?',
      customer,
      limit,
    )
    .map((row) => row.id);

export const countOpen = (db: ReadDb, customer: CustomerId): number =>
  db.sql<{ n: number }>('SELECT COUNT(*) AS n FROM ticket_now WHERE customer_id = ? AND over = 0', customer)[0]?.n ?? 0;

/** Castings in the house of customers whose short name begins so: all a machinist may find a customer by. */
export const findCastingsByShortName = (db: ReadDb, words: readonly string[], limit: number): CastingId[] =>
  findCustomersByWords(db, words, 50)
    .filter((id) => {
      const short = foldText(
        db.sql<{ name: string }>('SELECT short_name AS name FROM customer WHERE id = ?', id)[0]?.name ?? '',
      ).split(' ');
      return words.every((word) => short.some((part) => part.startsWith(word)));
    })
    .flatMap((id) =>
      db
        .sql<{ id: CastingId }>(
          'SELECT c.id FROM casting c JOIN ticket t ON t.id = c.ticket_id WHERE t.customer_id = ? AND c.out_at IS NULL ORDER BY c.id DESC LIMIT ?',
          id,
          limit,
        )
        .map((row) => row.id),
    )
    .slice(0, limit);

/** Rows of these castings with ticket and customer, in the order given. */
export function readCastings(db: ReadDb, ids: readonly CastingId[]) {
  if (ids.length === 0) return [];
  const rows = new Map(
    db
      .all(
        db.q
          .selectFrom('casting as c')
          .innerJoin('ticket as t', 't.id', 'c.ticket_id')
          .innerJoin('customer as u', 'u.id', 't.customer_id')
          .innerJoin('casting_type as y', 'y.id', 'c.casting_type_id')
          .leftJoin('ticket_now as n', 'n.ticket_id', 't.id')
          .select([
            'c.id',
            'c.tag_no',
            'c.kind',
            'c.material',
            'c.metal_confirmed_at',
            'c.casting_number',
            'c.serial',
            'c.shop_stamp',
            'c.out_at',
            't.id as ticket',
            't.number',
            'u.short_name',
            'y.name as type',
            'n.word',
          ])
          .where('c.id', 'in', [...ids]),
      )
      .map((row) => [row.id, row]),
  );
  return ids.flatMap((id) => rows.get(id) ?? []);
}

/** What is owed by a customer over all tickets, from the projected rows. */
export const owedBy = (db: ReadDb, customer: CustomerId, today: string): Readonly<{ owed: number; overdue: number }> =>
  db.sql<{ owed: number; overdue: number }>(
    `SELECT COALESCE(SUM(balance_cents), 0) AS owed, COALESCE(SUM(CASE WHEN due_on < ? AND balance_cents > 0 THEN balance_cents ELSE 0 END), 0) AS overdue
     FROM ticket_now WHERE customer_id = ?`,
    today,
    customer,
  )[0] ?? { owed: 0, overdue: 0 };

/** Places where ready goods of a ticket stand, by code. */
export const readyPlaces = (db: ReadDb, ticket: TicketId): string[] =>
  db
    .sql<{ code: string }>(
      `SELECT DISTINCT r.code FROM placement p JOIN rack_place r ON r.id = p.rack_place_id
       WHERE p.ticket_id = ? AND r.purpose = 'ready'
         AND p.id = (SELECT MAX(q.id) FROM placement q WHERE q.casting_id IS p.casting_id AND q.container_id IS p.container_id) ORDER BY r.code`,
      ticket,
    )
    .map((row) => row.code);
