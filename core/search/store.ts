/** Writes what the find box looks in: rows noted by triggers are indexed anew in the same transaction. */
import { foldText } from '../customers/compute.ts';
import type { ReadDb, WriteDb } from '../db/query.ts';
import type { CastingId, CustomerId, TicketId } from '../kernel/ids.ts';
import { numberKey } from './compute/typed.ts';

/** Index every row a trigger noted since the last time. Cheap when nothing was noted. */
export function indexNoted(db: WriteDb): void {
  const noted = db.sql<{ subject: string; row_id: number }>('SELECT subject, row_id FROM find_dirty');
  if (noted.length === 0) return;
  for (const { subject, row_id } of noted) {
    if (subject === 'customer') indexCustomer(db, row_id as CustomerId);
    else if (subject === 'ticket') indexTicket(db, row_id as TicketId);
    else indexCasting(db, row_id as CastingId);
  }
  db.exec('DELETE FROM find_dirty');
}

/** Names, short and legal name, people and e-mail addresses of a customer. A merged one is found under the other only. */
function indexCustomer(db: WriteDb, id: CustomerId): void {
  const row = db.one(
    db.q.selectFrom('customer').select(['name', 'short_name', 'legal_name', 'merged_into_id']).where('id', '=', id),
  );
  db.exec('DELETE FROM find_customer WHERE rowid = ?', id);
  if (!row || row.merged_into_id !== null) return;
  const people = db.all(
    db.q.selectFrom('customer_person').select('name').where('customer_id', '=', id).where('retired_on', 'is', null),
  );
  const emails = db.all(
    db.q
      .selectFrom('contact_point as c')
      .innerJoin('customer_person as p', 'p.id', 'c.customer_person_id')
      .select('c.value')
      .where('p.customer_id', '=', id)
      .where('c.kind', '=', 'email')
      .where('c.retired_on', 'is', null),
  );
  const body = [
    row.name,
    row.short_name,
    row.legal_name ?? '',
    ...people.map((p) => p.name),
    ...emails.map((e) => e.value),
  ];
  db.exec('INSERT INTO find_customer (rowid, body) VALUES (?, ?)', id, body.map(foldText).join(' '));
}

/** Order number, engine words and what was wanted of a ticket. */
function indexTicket(db: WriteDb, id: TicketId): void {
  const row = db.one(
    db.q
      .selectFrom('ticket as t')
      .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .select([
        't.order_number',
        't.engine_words',
        't.wanted_words',
        't.brought_by',
        't.use_words',
        'e.words as engine',
      ])
      .where('t.id', '=', id),
  );
  db.exec('DELETE FROM find_ticket WHERE rowid = ?', id);
  if (!row) return;
  const castings = typesOf(db, id);
  const engine = [row.engine_words ?? '', row.engine ?? '', ...new Set(castings.map((c) => c.name))];
  const rest = [
    row.wanted_words ?? '',
    row.brought_by ?? '',
    row.use_words ?? '',
    ...castings.flatMap((c) => [c.serial ?? '', c.own_marks ?? '']),
  ];
  db.exec(
    'INSERT INTO find_ticket (rowid, orders, engine, rest) VALUES (?, ?, ?, ?)',
    id,
    foldText(row.order_number ?? ''),
    engine.map(foldText).join(' '),
    rest.map(foldText).join(' ').trim(),
  );
}

const typesOf = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
      .select(['t.name', 'c.serial', 'c.own_marks'])
      .where('c.ticket_id', '=', ticket),
  );

function indexCasting(db: WriteDb, id: CastingId): void {
  const row = db.one(db.q.selectFrom('casting').select(['casting_number', 'serial']).where('id', '=', id));
  db.exec('DELETE FROM find_casting WHERE casting_id = ?', id);
  db.exec('DELETE FROM find_number WHERE rowid = ?', id);
  const number = numberKey(row?.casting_number ?? '');
  const serial = numberKey(row?.serial ?? '');
  if (number === '' && serial === '') return;
  db.exec('INSERT INTO find_number (rowid, number) VALUES (?, ?)', id, `${number} ${serial}`);
  if (number === '') return;
  db.exec(
    'INSERT INTO find_casting (casting_id, number, wild) VALUES (?, ?, ?)',
    id,
    number,
    Number(number.includes('?')),
  );
}
