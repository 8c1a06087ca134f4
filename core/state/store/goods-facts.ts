/** What stands beside the castings of a ticket: bags and boxes, pieces, promises, calls; and where each thing stands. */
import { keptQuery } from '../../db/kept-query.ts';
import type { ReadDb } from '../../db/query.ts';
import type { TicketId } from '../../kernel/ids.ts';
import type { ContactFact, ContainerFact, ItemFact, PromiseFact } from '../compute/facts.ts';

/** Purpose of the place where each thing of a ticket was put last. */
export function placesOf(db: ReadDb, what: 'casting' | 'container', ticket: TicketId): Map<number, string> {
  const rows = db.sql<{ id: number; purpose: string }>(
    `SELECT p.${what}_id AS id, r.purpose, max(p.id) FROM ${what} t JOIN placement p ON p.${what}_id = t.id
     JOIN rack_place r ON r.id = p.rack_place_id WHERE t.ticket_id = ? GROUP BY p.${what}_id`,
    ticket,
  );
  return new Map(rows.map((row) => [row.id, row.purpose]));
}

const containerRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('container')
    .select(['id', 'casting_id', 'owner_mark', 'out_at'])
    .where('ticket_id', '=', ticket)
    .orderBy('id'),
);

export function listContainers(db: ReadDb, ticket: TicketId): ContainerFact[] {
  const stands = placesOf(db, 'container', ticket);
  return containerRows(db, ticket).map((row) => ({
    id: row.id,
    castingId: row.casting_id,
    oldReturn: row.owner_mark === 'old_return',
    outAt: row.out_at,
    standsAt: stands.get(row.id) ?? null,
  }));
}

const fateRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('item_fate').select(['arrival_item_id', 'fate']).where('ticket_id', '=', ticket).orderBy('id'),
);

const itemRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('arrival_item')
    .select([
      'id',
      'casting_id',
      'words',
      'container_id',
      'customers_own',
      'remove_before_wash',
      'inside',
      'removed_at',
      'missing_at_arrival',
      'counted',
    ])
    .where('ticket_id', '=', ticket)
    .orderBy('casting_id')
    .orderBy('position'),
);

/** What arrived with the castings, each with its last fate. */
export function listItems(db: ReadDb, ticket: TicketId): ItemFact[] {
  const fates = new Map(fateRows(db, ticket).map((row) => [row.arrival_item_id as number, row.fate]));
  return itemRows(db, ticket).map((row) => ({
    id: row.id,
    castingId: row.casting_id,
    words: row.words,
    containerId: row.container_id,
    customersOwn: row.customers_own === 1,
    removeBeforeWash: row.remove_before_wash === 1,
    inside: row.inside === 1,
    removedAt: row.removed_at,
    missing: row.missing_at_arrival === 1,
    counted: row.counted,
    fate: fates.get(row.id) ?? null,
  }));
}

const promiseRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('promise')
    .select(['on_day', 'at_minute', 'own_time', 'depends_on', 'created_at'])
    .where('ticket_id', '=', ticket)
    .orderBy('id'),
);

export const listPromises = (db: ReadDb, ticket: TicketId): PromiseFact[] =>
  promiseRows(db, ticket).map((row) => ({
    day: row.on_day,
    minute: row.at_minute,
    ownTime: row.own_time === 1,
    dependsOn: row.depends_on,
    at: row.created_at,
  }));

const contactRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('contact_log')
    .select(['created_at', 'about', 'reached', 'words'])
    .where('ticket_id', '=', ticket)
    .orderBy('id'),
);

export const listContacts = (db: ReadDb, ticket: TicketId): ContactFact[] =>
  contactRows(db, ticket).map((row) => ({
    at: row.created_at,
    about: row.about,
    reached: row.reached === 1,
    words: row.words,
  }));
