/** Reads of the counter's first page, each by an index of `ticket_now`. */
import type { ReadDb } from '../db/query.ts';
import type { Day, Moment } from '../kernel/days.ts';
import type { CustomerId, TicketId } from '../kernel/ids.ts';
import type { HoldReason } from '../state/compute/words.ts';

/** Rows sent of one list; the count says how many there are. */
export const MOST = 50;

/** The first rows of a list, and how many there are in all. */
export type Listed<T> = Readonly<{ rows: readonly T[]; count: number }>;

const open = (db: ReadDb) =>
  db.q
    .selectFrom('ticket_now as n')
    .innerJoin('customer as u', 'u.id', 'n.customer_id')
    .selectAll('n')
    .select('u.short_name');
type Open = ReturnType<typeof open>;

// Flags below stand as literals: a partial index is found only where the text of the query implies it.

/** Counting everything costs a walk over one partial index; rows are read only as far as they are shown. */
function listed(db: ReadDb, query: Open): Listed<HomeTicket> {
  const rows = db.all(query.limit(MOST + 1));
  if (rows.length <= MOST) return { rows, count: rows.length };
  const counted = db.one(query.clearSelect().clearOrderBy().select(db.q.fn.countAll<number>().as('count')));
  return { rows: rows.slice(0, MOST), count: counted?.count ?? rows.length };
}

export type HomeTicket = ReturnType<typeof listTickets>[number];

/** Promises of a time that has come and are not kept, the oldest first. */
export const listMissed = (db: ReadDb, today: Day, minute: number) =>
  listed(
    db,
    open(db)
      .where((eb) => eb('n.promise_open', '=', eb.lit(1)))
      .where((eb) =>
        eb.or([
          eb('n.promised_on', '<', today),
          eb.and([eb('n.promised_on', '=', today), eb('n.promised_minute', '<=', minute)]),
        ]),
      )
      .orderBy('n.promised_on')
      .orderBy('n.promised_minute')
      .orderBy('n.number'),
  );

const promisedOn = (db: ReadDb, day: Day) =>
  open(db)
    .where((eb) => eb('n.over', '=', eb.lit(0)))
    .where('n.promised_on', '=', day)
    .orderBy('n.promised_minute')
    .orderBy('n.number');

/** Promised for a day, ready ones too, in the order of the day. */
export const listPromised = (db: ReadDb, day: Day) =>
  listed(
    db,
    promisedOn(db, day).where((eb) => eb.or([eb('n.promise_open', '=', eb.lit(1)), eb('n.ready', '=', eb.lit(1))])),
  );

/** Promised for a day and cannot be done yet. */
export const listStuck = (db: ReadDb, day: Day) =>
  listed(
    db,
    promisedOn(db, day).where((eb) => eb('n.stuck', '=', eb.lit(1))),
  );

/** Ready and here: those nobody has told first, then by when they were told. */
export const listReady = (db: ReadDb) =>
  listed(
    db,
    open(db)
      .where((eb) => eb('n.ready', '=', eb.lit(1)))
      .orderBy('n.told_at')
      .orderBy('n.number'),
  );

/** How many of them nobody has told. */
export const countUntold = (db: ReadDb): number =>
  db.sql<{ n: number }>('SELECT count(*) AS n FROM ticket_now WHERE ready = 1 AND told_at IS NULL')[0]?.n ?? 0;

const asked = (db: ReadDb) =>
  open(db)
    .where((eb) => eb('n.unanswered', '>', eb.lit(0)))
    .where((eb) => eb('n.over', '=', eb.lit(0)))
    .orderBy('n.asked_at')
    .orderBy('n.number');

/** Questions about work that is here, without an answer, oldest first. */
export const listAsked = (db: ReadDb) => listed(db, asked(db).where('n.arrived_at', 'is not', null));

/** Quotes given by telephone, without an answer. */
export const listQuotes = (db: ReadDb) => listed(db, asked(db).where('n.arrived_at', 'is', null));

/** Tickets whose people were not reached. */
export const listToRing = (db: ReadDb) =>
  listed(db, open(db).where('n.ring_at', 'is not', null).orderBy('n.ring_at').orderBy('n.number'));

/** Tickets with a part that is expected up to a day and not here. */
export const listPartsDue = (db: ReadDb, until: Day) =>
  listed(
    db,
    open(db)
      .where('n.parts_due_on', 'is not', null)
      .where('n.parts_due_on', '<=', until)
      .where((eb) => eb('n.over', '=', eb.lit(0)))
      .orderBy('n.parts_due_on')
      .orderBy('n.number'),
  );

/** Outside work that should be back. */
export const listOutsideDue = (db: ReadDb, until: Day) =>
  db.sql<{ ticket_id: TicketId; expected_on: Day; supplier_words: string; shop_words: string }>(
    `SELECT s.ticket_id, s.expected_on, s.supplier_words, k.shop_words
     FROM sublet s CROSS JOIN ticket_now n ON n.ticket_id = s.ticket_id AND n.over = 0
     JOIN operation o ON o.id = s.operation_id JOIN operation_kind k ON k.id = o.operation_kind_id
     WHERE s.out_at IS NOT NULL AND s.back_at IS NULL AND s.expected_on <= ? ORDER BY s.expected_on, s.id LIMIT ${MOST}`,
    until,
  );

// CROSS JOIN keeps the order of the tables: few holds are open, many tickets are not over.
const HELD = `FROM hold h CROSS JOIN ticket_now n ON n.ticket_id = h.ticket_id
  WHERE h.closed_at IS NULL AND n.over = 0 AND (h.owner_id IS NULL OR h.follow_up_on <= ?)`;

export type HeldRow = Readonly<{
  id: number;
  ticket_id: TicketId;
  reason: HoldReason;
  words: string | null;
  owner_id: number | null;
  created_at: Moment;
}>;

/** Open holds that nobody looks after, or whose day has come. */
export function listHolds(db: ReadDb, today: Day): Listed<HeldRow> {
  const columns = 'h.id, h.ticket_id, h.reason, h.words, h.owner_id, h.created_at';
  const rows = db.sql<HeldRow>(`SELECT ${columns} ${HELD} ORDER BY h.follow_up_on, h.id LIMIT ${MOST + 1}`, today);
  if (rows.length <= MOST) return { rows, count: rows.length };
  const [counted] = db.sql<{ n: number }>(`SELECT count(*) AS n ${HELD}`, today);
  return { rows: rows.slice(0, MOST), count: counted?.n ?? rows.length };
}

/** Calls in vain about no ticket, when nobody of that customer was reached since. */
export const listCallsInVain = (db: ReadDb) =>
  db.sql<{
    id: number;
    customer_id: CustomerId;
    words: string;
    created_at: Moment;
    number_or_address: string | null;
    short_name: string;
    person: string | null;
  }>(
    `SELECT c.id, c.customer_id, c.words, c.created_at, c.number_or_address, u.short_name, p.name AS person
     FROM contact_log c INDEXED BY contact_log__unreached JOIN customer u ON u.id = c.customer_id LEFT JOIN customer_person p ON p.id = c.person_id
     WHERE c.reached = 0 AND c.ticket_id IS NULL AND NOT EXISTS (
       SELECT 1 FROM contact_log l WHERE l.customer_id = c.customer_id AND l.id > c.id)
     ORDER BY c.id LIMIT ${MOST}`,
  );

/** Rows of tickets by id, for lists that start from something else. */
export const listTickets = (db: ReadDb, ids: readonly TicketId[]) =>
  ids.length === 0 ? [] : db.all(open(db).where('n.ticket_id', 'in', [...new Set(ids)]));

/** Castings of these tickets with their metal, in their order. */
export const listCastings = (db: ReadDb, ids: readonly TicketId[]) =>
  db.sql<{
    ticket_id: TicketId;
    tag_no: number;
    material: 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | 'not_known';
    metal_confirmed_at: string | null;
  }>(
    `SELECT ticket_id, tag_no, material, metal_confirmed_at FROM casting
     WHERE ticket_id IN (SELECT value FROM json_each(?)) AND out_at IS NULL ORDER BY position_in_ticket, id`,
    JSON.stringify(ids),
  );

/** Whom to ask for on each ticket: the person of the ticket, else the first who may approve; with a telephone. */
export const listPeople = (db: ReadDb, ids: readonly TicketId[]) =>
  db.sql<{ ticket_id: TicketId; name: string | null; phone: string | null }>(
    `SELECT x.ticket_id, p.name, (
       SELECT c.value FROM contact_point c WHERE c.customer_person_id = p.id AND c.kind = 'phone'
       AND c.retired_on IS NULL ORDER BY c.id LIMIT 1) AS phone
     FROM (SELECT t.id AS ticket_id, COALESCE(t.contact_person_id, (
             SELECT q.id FROM customer_person q WHERE q.customer_id = t.customer_id AND q.retired_on IS NULL
             ORDER BY q.may_approve DESC, q.id LIMIT 1)) AS person_id
           FROM ticket t WHERE t.id IN (SELECT value FROM json_each(?))) x
     LEFT JOIN customer_person p ON p.id = x.person_id`,
    JSON.stringify(ids),
  );

/** Places where the goods of these tickets stand: codes, each once, in order. */
export const listPlaces = (db: ReadDb, ids: readonly TicketId[]) =>
  db.sql<{ ticket_id: TicketId; code: string }>(
    `SELECT DISTINCT g.ticket_id, r.code FROM (
       SELECT t.ticket_id, (SELECT p.rack_place_id FROM placement p WHERE p.casting_id = t.id ORDER BY p.id DESC LIMIT 1) AS place
       FROM casting t WHERE t.out_at IS NULL AND t.ticket_id IN (SELECT value FROM json_each(?))
       UNION ALL
       SELECT t.ticket_id, (SELECT p.rack_place_id FROM placement p WHERE p.container_id = t.id ORDER BY p.id DESC LIMIT 1)
       FROM container t WHERE t.out_at IS NULL AND t.ticket_id IN (SELECT value FROM json_each(?))) g
     JOIN rack_place r ON r.id = g.place ORDER BY r.code`,
    JSON.stringify(ids),
    JSON.stringify(ids),
  );
