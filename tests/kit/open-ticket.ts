/** A ticket with castings, made as check-in makes it, without the questions of check-in: for tests of what comes after. */

import { NewCasting } from '#core/castings/contract.ts';
import { insertCasting } from '#core/castings/store.ts';
import { writeDb } from '#core/db/query.ts';
import { type Day, moment } from '#core/kernel/days.ts';
import type { CastingId, CustomerId, Id, TicketId } from '#core/kernel/ids.ts';
import { insertTicket } from '#core/tickets/store.ts';
import type { TestHost } from './test-host.ts';

type CastingWish = Readonly<{ type: string; material: string; tag?: number; closeTolerance?: boolean; pair?: number }>;

export type Opened = Readonly<{
  ticketId: TicketId;
  number: number;
  customerId: CustomerId;
  /** In the order asked for. */
  castings: readonly Readonly<{ id: CastingId; tag: number }>[];
  /** Id of an operation by code. */
  kind(code: string): Id<'operation_kind'>;
  pack(code: string): Id<'package'>;
  stock(code: string): Id<'stock_item'>;
  /** Id of a person of the customer by name. */
  person(name: string): Id<'customer_person'>;
}>;

/** Open a ticket today for a customer of the practice shop by short name. */
export async function openTicket(
  shop: TestHost,
  {
    customer,
    castings,
    orderNumber,
  }: Readonly<{ customer: string; castings: readonly CastingWish[]; orderNumber?: string }>,
): Promise<Opened> {
  const { host } = shop;
  const now = moment(host.clock().toISOString());
  const db = writeDb(host.sqlite, { now, by: shop.as('TV').staff });
  const customerId = idOf<'customer'>(shop, 'SELECT id FROM customer WHERE short_name = ?', customer);
  const made = host.sqlite.transaction(() => {
    const person = null;
    const by = shop.as('TV').staff;
    if (by === null) throw new Error('nobody takes it in');
    const today = now.slice(0, 10) as Day;
    const fields = orderNumber === undefined ? {} : { orderNumber };
    const ticket = insertTicket(db, { customer: customerId, person, fields, arrived: { at: now, by }, today });
    const rows = castings.map(({ tag, ...wish }, index) =>
      insertCasting(db, ticket.id, NewCasting.parse({ ...wish, tagNo: tag ?? null }), `castings.${index}`, now),
    );
    host.project(db, [ticket.id]);
    return { ticket, rows };
  })();
  return {
    ticketId: made.ticket.id,
    number: made.ticket.number,
    customerId,
    castings: made.rows.map((row) => ({ id: row.id, tag: row.tag_no })),
    kind: (code) => idOf(shop, 'SELECT id FROM operation_kind WHERE code = ?', code),
    pack: (code) => idOf(shop, 'SELECT id FROM package WHERE code = ?', code),
    stock: (code) => idOf(shop, 'SELECT id FROM stock_item WHERE code = ?', code),
    person: (name) => idOf(shop, 'SELECT id FROM customer_person WHERE name = ?', name),
  };
}

function idOf<T extends string>(shop: TestHost, text: string, value: string): Id<T> {
  const [row] = shop.db.sql<{ id: Id<T> }>(text, value);
  if (!row) throw new Error(`nothing for ${value}: ${text}`);
  return row.id;
}

/** Finish operations of a casting by code as the bench would, without what the bench asks first; all when none is named. */
export function finishWork(shop: TestHost, castingId: number, ...codes: string[]): void {
  const { host } = shop;
  const now = moment(host.clock().toISOString());
  const by = shop.as('DK').staff;
  const rows = shop.db.sql<{ id: Id<'operation'>; ticket_id: TicketId; code: string }>(
    `SELECT o.id, o.ticket_id, k.code FROM operation o JOIN operation_kind k ON k.id = o.operation_kind_id
     WHERE o.casting_id = ? AND o.finished_at IS NULL AND o.not_needed_at IS NULL`,
    castingId,
  );
  const done = rows.filter((row) => codes.length === 0 || codes.includes(row.code));
  host.sqlite.transaction(() => {
    const db = writeDb(host.sqlite, { now, by });
    for (const row of done) db.set('operation', row.id, { finished_at: now, finished_by: by });
    host.project(db, [...new Set(done.map((row) => row.ticket_id))]);
  })();
}
