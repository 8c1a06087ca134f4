/** The ticket and its castings, with what a person ticked and what was read of them. */
import { keptQuery } from '../../db/kept-query.ts';
import type { ReadDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { TicketId } from '../../kernel/ids.ts';
import type { CastingFact, TicketHead } from '../compute/facts.ts';
import { placesOf } from './goods-facts.ts';

const ticketRow = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('ticket')
    .select([
      'id',
      'number',
      'customer_id',
      'quick',
      'arrived_at',
      'declined_at',
      'abandoned_at',
      'rush_bp',
      'rush_lost_at',
      'comeback_of_id',
      'old_parts',
      'crack_check',
      'certified',
      'price_day',
    ])
    .where('id', '=', ticket),
);

/** @throws AppError `not-found` `tickets/no-such-ticket` */
export function readTicketHead(db: ReadDb, ticket: TicketId): TicketHead {
  const row = ticketRow(db, ticket)[0];
  if (!row) throw notFound('tickets/no-such-ticket', 'This ticket');
  return {
    id: row.id,
    number: row.number,
    customerId: row.customer_id,
    quick: row.quick === 1,
    arrivedAt: row.arrived_at,
    declinedAt: row.declined_at,
    abandonedAt: row.abandoned_at,
    rush: (row.rush_bp ?? 0) > 0 && row.rush_lost_at === null,
    comeback: row.comeback_of_id !== null,
    oldPartsBack: row.old_parts === 'return',
    crackCheckDeclined: row.crack_check === 'declined',
    certified: row.certified === 1,
    priceDay: row.price_day,
  };
}

const castingRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('casting as c')
    .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
    .selectAll('c')
    .select(['t.name', 't.cam_layout', 't.fuel'])
    .where('c.ticket_id', '=', ticket)
    .orderBy('c.position_in_ticket')
    .orderBy('c.id'),
);

/** Castings in their order on the ticket. */
export function listCastings(db: ReadDb, ticket: TicketId): CastingFact[] {
  const stands = placesOf(db, 'casting', ticket);
  const read = readReadings(db, ticket);
  const ticked = readTicked(db, ticket);
  const photos = countArrivalPhotos(db, ticket);
  const scrapped = readScrapAnswers(db, ticket);
  return castingRows(db, ticket).map((c) => {
    const facts = ticked.get(c.id) ?? new Map<string, string | null>();
    return {
      id: c.id,
      tag: c.tag_no,
      version: c.version,
      positionInTicket: c.position_in_ticket,
      kind: c.kind,
      typeName: c.name,
      camLayout: c.cam_layout,
      fuel: c.fuel,
      material: c.material,
      metalConfirmedAt: c.metal_confirmed_at,
      position: c.position,
      pair: c.pair_no,
      bare: c.bare === 1,
      scrapAt: c.scrap_at,
      scrapAgreed: c.scrap_approval_id !== null || scrapped.get(c.id) === 'yes',
      outAt: c.out_at,
      unworkedWhy: facts.get(UNWORKED) ?? null,
      metalTagOnAt: c.metal_tag_on_at,
      standsAt: stands.get(c.id) ?? null,
      arrivalPhotos: photos.get(c.id) ?? 0,
      ticked: new Set(facts.keys()),
      crackResults: read.cracks.get(c.id) ?? new Map<number, string>(),
      thicknessAt: read.thickness.get(c.id) ?? null,
      pistonSizeAt: read.pistons.get(c.id) ?? null,
    };
  });
}

/** The fact under which a lead sends a casting home unworked; its words are the reason. */
export const UNWORKED = 'return-unworked';

const tickedRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('casting_fact')
    .select(['casting_id', 'fact', 'holds', 'words'])
    .where('ticket_id', '=', ticket)
    .orderBy('id'),
);

/** Ticked facts that hold now, by casting: the last word on each. */
function readTicked(db: ReadDb, ticket: TicketId): Map<number, Map<string, string | null>> {
  const result = new Map<number, Map<string, string | null>>();
  for (const row of tickedRows(db, ticket)) {
    const facts = result.get(row.casting_id) ?? new Map<string, string | null>();
    if (row.holds === 1) facts.set(row.fact, row.words);
    else facts.delete(row.fact);
    result.set(row.casting_id, facts);
  }
  return result;
}

const STATE_QUANTITIES = ['crack-result', 'thickness', 'piston-size', 'bore-wanted'];

type StateReadings = Readonly<{
  cracks: Map<number, Map<number, string>>;
  thickness: Map<number, CastingFact['thicknessAt']>;
  pistons: Map<number, CastingFact['pistonSizeAt']>;
}>;

const readingRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('reading as r')
    .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
    .leftJoin('reading as later', 'later.supersedes_id', 'r.id')
    .select(['r.casting_id', 'r.operation_id', 'r.typed', 'r.stage', 'r.kind', 'r.created_at', 'q.code'])
    .where('r.ticket_id', '=', ticket)
    .where('q.code', 'in', STATE_QUANTITIES)
    .where('later.id', 'is', null)
    .where('r.kind', 'in', ['number', 'choice', 'text'])
    .orderBy('r.id'),
);

const sizeRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('size_wanted as s')
    .innerJoin('operation as o', 'o.id', 's.operation_id')
    .innerJoin('quantity as q', 'q.id', 's.quantity_id')
    .select(['o.casting_id', 's.created_at'])
    .where('s.ticket_id', '=', ticket)
    .where('q.code', 'in', ['piston-size', 'bore-wanted', 'bore']),
);

/** The few readings that rules look at: crack results, thickness before, piston or written sizes. */
function readReadings(db: ReadDb, ticket: TicketId): StateReadings {
  const result: StateReadings = { cracks: new Map(), thickness: new Map(), pistons: new Map() };
  const rows = readingRows(db, ticket);
  for (const row of rows) {
    if (row.code === 'crack-result' && row.operation_id !== null) {
      const results = result.cracks.get(row.casting_id) ?? new Map<number, string>();
      result.cracks.set(row.casting_id, results.set(row.operation_id, row.typed));
    }
    if (row.code === 'thickness' && row.stage === 'before') result.thickness.set(row.casting_id, row.created_at);
    if (row.code === 'piston-size' || row.code === 'bore-wanted') result.pistons.set(row.casting_id, row.created_at);
  }
  for (const row of sizeRows(db, ticket)) {
    result.pistons.set(row.casting_id, row.created_at);
  }
  return result;
}

const photoRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('photo as p')
    .leftJoin('photo_hidden as h', 'h.photo_id', 'p.id')
    .select(['p.casting_id', q.fn.countAll<number>().as('count')])
    .where('p.ticket_id', '=', ticket)
    .where('p.stage', '=', 'arrival')
    .where('p.casting_id', 'is not', null)
    .where('h.id', 'is', null)
    .groupBy('p.casting_id'),
);

function countArrivalPhotos(db: ReadDb, ticket: TicketId): Map<number, number> {
  const rows = photoRows(db, ticket);
  return new Map(rows.map((row) => [row.casting_id ?? 0, row.count]));
}

const scrapRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('approval')
    .select(['casting_id', 'answer'])
    .where('ticket_id', '=', ticket)
    .where('about', '=', 'scrap')
    .where('casting_id', 'is not', null)
    .orderBy('id'),
);

/** The customer's last word on scrapping each casting. */
function readScrapAnswers(db: ReadDb, ticket: TicketId): Map<number, string> {
  const rows = scrapRows(db, ticket);
  return new Map(rows.map((row) => [row.casting_id ?? 0, row.answer]));
}
