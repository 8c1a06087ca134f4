/** Reads and writes of parts: what is needed, ordered, here, fitted. */
import type { Updateable } from 'kysely';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { PartLineTable } from '../../db/schema.ts';
import type { Moment } from '../../kernel/days.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, Id, PartLineId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import { basisPoints, type PriceE4 } from '../../kernel/units.ts';

export type StockItem = Readonly<{
  id: Id<'stock_item'>;
  code: string;
  words: string;
  listPrice: PriceE4 | null;
  coreCharge: number | null;
}>;

/** What is sold from stock, by code; retired items left out. */
export const listStockItems = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('stock_item')
      .select(['id', 'code', 'words', 'list_price_e4 as listPrice', 'core_charge_cents as coreCharge'])
      .where('retired_on', 'is', null)
      .orderBy('code'),
  );

/** @throws AppError `not-found` `parts/no-such-item`; undefined for null */
export function stockItem(db: ReadDb, id: Id<'stock_item'> | null): StockItem | undefined {
  if (id === null) return undefined;
  const found = listStockItems(db).find((item) => item.id === id);
  if (!found) throw notFound('parts/no-such-item', 'This part');
  return found;
}

type NewPart = Readonly<{
  ticketId: TicketId;
  castingId: CastingId | null;
  lineId: WorkLineId | null;
  words: string;
  wish: Readonly<{
    stockItemId: Id<'stock_item'> | null;
    makerNumber?: string | null;
    quantity: number;
    source: 'shop' | 'stock' | 'customer';
    sell: 'list' | 'markup' | 'typed';
    cost?: PriceE4 | null;
    markup?: number | null;
    blocks?: Id<'operation_kind'> | null;
    newUsed?: 'new' | 'used' | 'rebuilt';
  }>;
}>;

export const insertPart = (db: WriteDb, { ticketId, castingId, lineId, words, wish }: NewPart): PartLineId =>
  db.add('part_line', {
    ticket_id: ticketId,
    casting_id: castingId,
    work_line_id: lineId,
    stock_item_id: wish.stockItemId,
    words,
    maker_number: wish.makerNumber ?? null,
    quantity: wish.quantity,
    source: wish.source,
    cost_e4: wish.cost ?? null,
    sell: wish.sell,
    markup_bp: wish.markup === null || wish.markup === undefined ? null : basisPoints(wish.markup),
    blocks_id: wish.blocks ?? null,
    new_used: wish.newUsed ?? 'new',
  });

/** Parts of a ticket in the order they were added, with tag and words of what they block. */
export const listParts = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('part_line as p')
      .leftJoin('casting as c', 'c.id', 'p.casting_id')
      .leftJoin('operation_kind as k', 'k.id', 'p.blocks_id')
      .leftJoin('staff as s', 's.id', 'p.checked_by')
      .selectAll('p')
      .select(['c.tag_no', 'k.shop_words as blocks_words', 's.name as checked_name'])
      .where('p.ticket_id', '=', ticket)
      .orderBy('p.id'),
  );

export type PartRow = ReturnType<typeof listParts>[number];

/** @throws AppError `not-found` `parts/no-such-part` */
export function getPart(db: ReadDb, id: PartLineId): PartRow {
  const row = db.one(db.q.selectFrom('part_line').select('ticket_id').where('id', '=', id));
  const found = row && listParts(db, row.ticket_id).find((part) => part.id === id);
  if (!found) throw notFound('parts/no-such-part', 'This part');
  return found;
}

/** The count of a part that follows its line. */
export const resizePart = (db: WriteDb, line: WorkLineId, quantity: number): number =>
  db.run(db.q.updateTable('part_line').set({ quantity }).where('work_line_id', '=', line));

/** What happened to a part. */
export type PartChanges = Updateable<PartLineTable>;

/** Change a part. @returns the new version. @throws AppError `conflict` when it changed meanwhile. */
export const stepPart = (db: WriteDb, id: PartLineId, seen: number, changes: PartChanges): number =>
  db.step('part_line', id, seen, changes);

/** The customer was given the price of these parts. */
export function markQuoted(db: WriteDb, ticket: TicketId, lines: readonly WorkLineId[], at: Moment): void {
  if (lines.length === 0) return;
  db.run(
    db.q
      .updateTable('part_line')
      .set({ quoted_at: at })
      .where('ticket_id', '=', ticket)
      .where('work_line_id', 'in', [...lines])
      .where('quoted_at', 'is', null),
  );
}
