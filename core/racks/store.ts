/** Writes places and what stands where. Where a thing stands now is its last placement. */
import type { ReadDb, WriteDb } from '../db/query.ts';
import { notFound } from '../kernel/errors.ts';
import type { CastingId, ContainerId, RackPlaceId, TicketId } from '../kernel/ids.ts';

const places = (db: ReadDb) => db.q.selectFrom('rack_place').selectAll().where('retired_on', 'is', null);

/** A place in use by its code, however it was typed. @throws AppError `not-found` */
export function getPlace(db: ReadDb, code: string) {
  const found =
    db.one(places(db).where('code', '=', code)) ??
    db.one(places(db).where((eb) => eb(eb.fn('upper', ['code']), '=', code.toUpperCase())));
  if (!found) throw notFound('racks/no-such-place', `Place ${code}`);
  return found;
}

/** Places in use by code. */
export const listPlaces = (db: ReadDb) => db.all(places(db).orderBy('code'));

type Thing = Readonly<{ castingId: CastingId } | { containerId: ContainerId }>;

export const insertPlacement = (db: WriteDb, ticket: TicketId, thing: Thing, place: RackPlaceId) =>
  db.add('placement', {
    ticket_id: ticket,
    casting_id: 'castingId' in thing ? thing.castingId : null,
    container_id: 'containerId' in thing ? thing.containerId : null,
    rack_place_id: place,
  });

export type Stand = Readonly<{
  castingId: CastingId | null;
  containerId: ContainerId | null;
  code: string;
  purpose: 'arrival' | 'waiting' | 'parts' | 'bench' | 'ready' | 'quarantine' | 'floor' | 'outside';
  since: string;
  by: string | null;
}>;

const LAST = `SELECT p.casting_id AS castingId, p.container_id AS containerId, r.code, r.purpose, p.created_at AS since, s.name AS "by"
  FROM placement p JOIN rack_place r ON r.id = p.rack_place_id LEFT JOIN staff s ON s.id = p.created_by`;

/** Where a casting stands, or undefined when it was never put away. */
export const placeOfCasting = (db: ReadDb, id: CastingId): Stand | undefined =>
  db.sql<Stand>(`${LAST} WHERE p.casting_id = ? ORDER BY p.id DESC LIMIT 1`, id)[0];

/** Where a container stands, or undefined. */
export const placeOfContainer = (db: ReadDb, id: ContainerId): Stand | undefined =>
  db.sql<Stand>(`${LAST} WHERE p.container_id = ? ORDER BY p.id DESC LIMIT 1`, id)[0];

const THINGS = `SELECT c.id AS castingId, NULL AS containerId, CAST(c.tag_no AS TEXT) AS label, c.kind, c.material, NULL AS contents,
    c.position, t.id AS ticketId, t.number AS ticketNumber, u.short_name AS customer
  FROM casting c JOIN ticket t ON t.id = c.ticket_id JOIN customer u ON u.id = t.customer_id WHERE c.out_at IS NULL AND `;
const BAGS = `SELECT b.casting_id AS ofCasting, NULL AS castingId, b.id AS containerId, b.label, b.kind, NULL AS material, b.contents,
    NULL AS position, t.id AS ticketId, t.number AS ticketNumber, u.short_name AS customer
  FROM container b JOIN ticket t ON t.id = b.ticket_id JOIN customer u ON u.id = t.customer_id WHERE b.out_at IS NULL AND `;

export type ThingRow = Readonly<{
  castingId: CastingId | null;
  containerId: ContainerId | null;
  label: string;
  kind: string;
  material: string | null;
  contents: string | null;
  position: string | null;
  ticketId: TicketId;
  ticketNumber: number;
  customer: string;
}>;

/** Castings and containers of these tickets that are in the house. */
export const thingsOfTickets = (db: ReadDb, tickets: readonly TicketId[]): ThingRow[] => {
  const marks = tickets.map(() => '?').join(', ');
  return [
    ...db.sql<ThingRow>(`${THINGS} t.id IN (${marks}) ORDER BY t.number, c.position_in_ticket`, ...tickets),
    ...db.sql<ThingRow>(`${BAGS} t.id IN (${marks}) ORDER BY b.label`, ...tickets),
  ];
};

const LAST_THERE = (column: string) =>
  `(SELECT p.rack_place_id FROM placement p WHERE p.${column} = x.id ORDER BY p.id DESC LIMIT 1) = ?`;

/** Things whose last placement is this place and that are in the house. */
export const thingsAt = (db: ReadDb, place: RackPlaceId): ThingRow[] => [
  ...db.sql<ThingRow>(
    `${THINGS} ${LAST_THERE('casting_id').replace('x.id', 'c.id')} AND c.id IN (SELECT casting_id FROM placement WHERE rack_place_id = ?) ORDER BY t.number`,
    place,
    place,
  ),
  ...db.sql<ThingRow>(
    `${BAGS} ${LAST_THERE('container_id').replace('x.id', 'b.id')} AND b.id IN (SELECT container_id FROM placement WHERE rack_place_id = ?) ORDER BY b.label`,
    place,
    place,
  ),
];

/** How many castings and containers in the house stand at each place by their last placement; places with none left out. */
export function countByPlace(db: ReadDb): Map<RackPlaceId, { castings: number; containers: number }> {
  const counts = new Map<RackPlaceId, { castings: number; containers: number }>();
  for (const [table, column, kind] of [
    ['casting', 'casting_id', 'castings'],
    ['container', 'container_id', 'containers'],
  ] as const) {
    const rows = db.sql<{ place: RackPlaceId; n: number }>(
      `SELECT p.rack_place_id AS place, COUNT(*) AS n FROM ${table} x INDEXED BY ${table}__in_house
       JOIN placement p ON p.id = (SELECT MAX(q.id) FROM placement q WHERE q.${column} = x.id)
       WHERE x.out_at IS NULL GROUP BY p.rack_place_id`,
    );
    for (const { place, n } of rows) {
      const seen = counts.get(place) ?? { castings: 0, containers: 0 };
      counts.set(place, { ...seen, [kind]: n });
    }
  }
  return counts;
}
