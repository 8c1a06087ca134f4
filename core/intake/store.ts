/** Writes arrival lines, counts, fates, containers. */
import type { z } from 'zod';
import { letterAfter } from '../castings/compute.ts';
import { listArrival } from '../catalogue/store/castings.ts';
import { flag, type NewRow, type ReadDb, type WriteDb } from '../db/query.ts';
import { badField, notFound, ruleBroken } from '../kernel/errors.ts';
import type { ArrivalItemId, CastingId, CastingTypeId, ContainerId, TicketId } from '../kernel/ids.ts';
import type { NewContainer, NewItem } from './contract.ts';

type Item = z.output<typeof NewItem>;
type Container = z.output<typeof NewContainer>;
/** A casting as far as its pieces go. */
export type Owner = Readonly<{ id: CastingId; ticket_id: TicketId; tag_no: number; casting_type_id: CastingTypeId }>;

/** @throws AppError `not-found` */
export function getItem(db: ReadDb, id: ArrivalItemId) {
  const row = db.one(db.q.selectFrom('arrival_item').selectAll().where('id', '=', id));
  if (!row) throw notFound('intake/no-such-item', 'This line');
  return row;
}

/** @throws AppError `not-found` */
export function getContainer(db: ReadDb, id: ContainerId) {
  const row = db.one(db.q.selectFrom('container').selectAll().where('id', '=', id));
  if (!row) throw notFound('intake/no-such-container', 'This bag or box');
  return row;
}

/** The list of the type as new lines: not counted yet. */
const usualItems = (db: ReadDb, type: CastingTypeId): Item[] =>
  listArrival(db, type).map((row) => ({
    words: row.words,
    expected: row.expected,
    counted: null,
    mixRule: row.mixRule,
    removeBeforeWash: row.removeBeforeWash,
    inside: row.inside,
    customersOwn: false,
    numbersSeen: false,
    arrowsSeen: false,
    boltedInPlace: false,
    missing: false,
    more: null,
    container: null,
  }));

/** Add one arrival line of a casting. */
export function insertItem(
  db: WriteDb,
  casting: Owner,
  item: Omit<Item, 'container'>,
  container: ContainerId | null,
): ArrivalItemId {
  const last = db.sql<{ n: number | null }>(
    'SELECT MAX(position) AS n FROM arrival_item WHERE casting_id = ?',
    casting.id,
  )[0]?.n;
  return db.add('arrival_item', {
    casting_id: casting.id,
    ticket_id: casting.ticket_id,
    position: (last ?? 0) + 1,
    words: item.words,
    expected: item.expected,
    counted: item.missing ? 0 : item.counted,
    container_id: container,
    mix_rule: item.mixRule,
    remove_before_wash: flag(item.removeBeforeWash),
    inside: flag(item.inside),
    customers_own: flag(item.customersOwn),
    numbers_seen: flag(item.numbersSeen),
    arrows_seen: flag(item.arrowsSeen),
    bolted_in_place: flag(item.boltedInPlace),
    missing_at_arrival: flag(item.missing),
    words_more: item.more,
  });
}

/** Add everything that came with a casting; containers first, lines point into them. @returns the containers made */
export function insertArrivals(
  db: WriteDb,
  casting: Owner,
  typed: Readonly<{ items: readonly Item[] | undefined; containers: readonly Container[]; cameAssembled: boolean }>,
  path: string,
): { id: ContainerId; label: string }[] {
  const containers = typed.containers.map((one) => insertContainer(db, casting.ticket_id, casting, one));
  for (const [index, item] of (typed.items ?? usualItems(db, casting.casting_type_id)).entries()) {
    const container = item.container === null ? null : containers[item.container];
    if (container === undefined) {
      throw badField(
        'intake/no-such-container',
        `${path}.items.${index}.container`,
        'This bag is not in the list. Choose another.',
      );
    }
    // Came assembled: only what can be seen outside is counted now; teardown counts the inside.
    const counted = typed.cameAssembled && item.inside ? null : item.counted;
    insertItem(db, casting, { ...item, counted }, container?.id ?? null);
  }
  return containers;
}

/** Add a container with the next letter of its casting or ticket. */
export function insertContainer(
  db: WriteDb,
  ticket: TicketId,
  casting: Pick<Owner, 'id' | 'tag_no' | 'ticket_id'> | null,
  typed: Container,
): { id: ContainerId; label: string } {
  if (casting && casting.ticket_id !== ticket)
    throw ruleBroken('intake/other-ticket', 'This bag is on another ticket. Make it on the ticket of its casting.');
  const base = casting ? String(casting.tag_no) : ticketNumber(db, ticket);
  const used =
    db.sql<{ n: number }>('SELECT COUNT(*) AS n FROM container WHERE label GLOB ?', `${base}-[A-Z]*`)[0]?.n ?? 0;
  const label = `${base}-${letterAfter(used)}`;
  const id = db.add('container', {
    ticket_id: ticket,
    casting_id: casting?.id ?? null,
    label,
    kind: typed.kind,
    contents: typed.contents,
    count: typed.count,
    owner_mark: typed.ownerMark,
    spot_words: typed.spotWords,
  });
  return { id, label };
}

const ticketNumber = (db: ReadDb, ticket: TicketId): string =>
  String(db.one(db.q.selectFrom('ticket').select('number').where('id', '=', ticket))?.number ?? '');

type Stage = NewRow<'piece_count'>['stage'];

/** Add a count of pieces at a later stage. */
export const insertCount = (
  db: WriteDb,
  item: Pick<ReturnType<typeof getItem>, 'id' | 'ticket_id'>,
  stage: Stage,
  count: number,
  explained: string | null,
) => db.add('piece_count', { arrival_item_id: item.id, ticket_id: item.ticket_id, stage, count, explained });

/** Say where pieces ended. The last word counts. */
export const insertFate = (
  db: WriteDb,
  item: Pick<ReturnType<typeof getItem>, 'id' | 'ticket_id'>,
  fate: NewRow<'item_fate'>['fate'],
  more: Readonly<{ count: number | null; container: ContainerId | null; words: string | null }>,
) =>
  db.add('item_fate', {
    arrival_item_id: item.id,
    ticket_id: item.ticket_id,
    fate,
    count: more.count,
    container_id: more.container,
    words: more.words,
  });

/** Move everything of a casting to another ticket with it (before its first operation). */
export function moveArrivals(db: WriteDb, casting: CastingId, to: TicketId): void {
  for (const table of ['arrival_item', 'container', 'condition_mark'] as const) {
    db.run(db.q.updateTable(table).set({ ticket_id: to }).where('casting_id', '=', casting));
  }
}

/** Containers keep the ticket of their casting. @throws AppError when it belongs to another ticket. */
export function refuseOtherTicket(container: Readonly<{ ticket_id: TicketId; label: string }>, ticket: TicketId): void {
  if (container.ticket_id !== ticket) {
    throw ruleBroken(
      'intake/other-ticket',
      `This bag is on another ticket: ${container.label}. Take one of this ticket.`,
    );
  }
}
