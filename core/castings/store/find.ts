/** Finds castings by what is written on tags, bags and metal. */
import type { ReadDb } from '../../db/query.ts';
import { readCode } from '../../kernel/codes.ts';
import type { CastingId, ContainerId, TicketId } from '../../kernel/ids.ts';
import { KIND_WORDS } from '../compute.ts';
import { getCasting } from '../store.ts';

export type Tagged = Readonly<{
  castingId: CastingId | null;
  containerId: ContainerId | null;
  ticketId: TicketId;
  ticketNumber: number;
  tagNo: number | null;
  words: string;
}>;

/** The casting or bag that carries this text: typed digits, a label, or a code as read. */
export function findTagged(db: ReadDb, text: string): Tagged | null {
  const code = readCode(text);
  const typed = (code?.number ?? text).trim().toUpperCase();
  if (code && code.kind !== 'casting' && code.kind !== 'container') return null;
  if (/^\d{1,9}$/.test(typed)) return byTag(db, Number(typed));
  return /^\d{1,9}-[A-Z]{1,3}$/.test(typed) ? byLabel(db, typed) : null;
}

function byTag(db: ReadDb, tag: number): Tagged | null {
  const row = db.one(
    db.q
      .selectFrom('casting as c')
      .innerJoin('ticket as t', 't.id', 'c.ticket_id')
      .select(['c.id', 'c.kind', 't.id as ticketId', 't.number'])
      .where('c.tag_no', '=', tag),
  );
  if (!row) return null;
  const words = `${KIND_WORDS[row.kind]} ${tag}, ticket ${row.number}`;
  return { castingId: row.id, containerId: null, ticketId: row.ticketId, ticketNumber: row.number, tagNo: tag, words };
}

function byLabel(db: ReadDb, label: string): Tagged | null {
  const row = db.one(
    db.q
      .selectFrom('container as b')
      .innerJoin('ticket as t', 't.id', 'b.ticket_id')
      .leftJoin('casting as c', 'c.id', 'b.casting_id')
      .select(['b.id', 'b.contents', 'b.casting_id as castingId', 'c.tag_no as tagNo', 't.id as ticketId', 't.number'])
      .where('b.label', '=', label),
  );
  if (!row) return null;
  return {
    castingId: row.castingId,
    containerId: row.id,
    ticketId: row.ticketId,
    ticketNumber: row.number,
    tagNo: row.tagNo,
    words: `${label}: ${row.contents}, ticket ${row.number}`,
  };
}

type Of = Readonly<{ stamp: string }> | Readonly<{ castingId: CastingId }>;

/** Visits of the same metal, newest first: by our stamp, and by the visit a casting names as its last. */
export function listVisits(db: ReadDb, of: Of) {
  const ids = 'stamp' in of ? idsByStamp(db, of.stamp) : chainOf(db, of.castingId);
  if (ids.length === 0) return [];
  return db.all(
    db.q
      .selectFrom('casting as c')
      .innerJoin('ticket as t', 't.id', 'c.ticket_id')
      .innerJoin('customer as u', 'u.id', 't.customer_id')
      .innerJoin('casting_type as y', 'y.id', 'c.casting_type_id')
      .select([
        'c.id as castingId',
        'c.tag_no as tagNo',
        'c.kind',
        't.id as ticketId',
        't.number as ticketNumber',
        'u.short_name as customer',
        'y.name as typeName',
        'c.casting_number as castingNumber',
        'c.shop_stamp as shopStamp',
        't.arrived_at as arrivedAt',
        'c.out_at as outAt',
      ])
      .where('c.id', 'in', ids)
      .orderBy('c.id', 'desc'),
  );
}

const idsByStamp = (db: ReadDb, stamp: string): CastingId[] =>
  db.all(db.q.selectFrom('casting').select('id').where('shop_stamp', '=', stamp)).map((row) => row.id);

function chainOf(db: ReadDb, id: CastingId): CastingId[] {
  const casting = getCasting(db, id);
  const back: CastingId[] = [];
  for (
    let at = casting.previous_casting_id;
    at !== null && !back.includes(at);
    at = getCasting(db, at).previous_casting_id
  ) {
    back.push(at);
  }
  const next = db
    .all(db.q.selectFrom('casting').select('id').where('previous_casting_id', '=', id))
    .map((row) => row.id);
  const stamped = casting.shop_stamp === null ? [] : idsByStamp(db, casting.shop_stamp);
  return [...new Set([id, ...back, ...next, ...stamped])];
}
