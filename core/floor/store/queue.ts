/** Reads of queues, counts, tags and holds, from the rows that every command keeps. */
import type { ReadDb } from '../../db/query.ts';
import type { Id, WorkCentreId } from '../../kernel/ids.ts';

/** Open operations of a centre with their casting, ticket and customer's short name. */
export const listQueued = (db: ReadDb, centre: WorkCentreId) =>
  db.all(
    db.q
      .selectFrom('operation_now as n')
      .innerJoin('operation as o', 'o.id', 'n.operation_id')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .innerJoin('casting as c', 'c.id', 'n.casting_id')
      .innerJoin('casting_type as y', 'y.id', 'c.casting_type_id')
      .innerJoin('ticket as t', 't.id', 'n.ticket_id')
      .innerJoin('customer as u', 'u.id', 't.customer_id')
      .leftJoin('op_use as s', (join) =>
        join.onRef('s.operation_kind_id', '=', 'o.operation_kind_id').onRef('s.casting_kind', '=', 'c.kind'),
      )
      .selectAll('n')
      .select([
        'o.version',
        'o.units',
        'o.instruction',
        'k.code',
        'k.shop_words',
        'c.tag_no',
        'c.kind',
        'c.material',
        'c.metal_confirmed_at',
        'c.position as side',
        'c.position_in_ticket',
        'y.name as type_name',
        't.number',
        'u.short_name',
        's.charge_unit',
      ])
      .select((eb) =>
        eb
          .selectFrom('casting as x')
          .select(eb.fn.countAll<number>().as('count'))
          .whereRef('x.ticket_id', '=', 'n.ticket_id')
          .whereRef('x.kind', '=', 'c.kind')
          .as('of'),
      )
      .where('n.work_centre_id', '=', centre)
      .where('n.slot', '!=', 'asked'),
  );

export type QueuedRow = ReturnType<typeof listQueued>[number];

/** Open runs of the operations on a centre. */
export const listRunning = (db: ReadDb, centre: WorkCentreId) =>
  db.all(
    db.q
      .selectFrom('operation_now as n')
      .innerJoin('operation_run as r', 'r.operation_id', 'n.operation_id')
      .innerJoin('staff as s', 's.id', 'r.staff_id')
      .select(['r.operation_id', 'r.staff_id', 'r.started_at', 's.initials', 's.name'])
      .where('n.work_centre_id', '=', centre)
      .where('n.slot', '=', 'running')
      .where('r.ended_at', 'is', null),
  );

/** Every centre in use with how much stands before it, in the shop's order. */
export function listCentres(db: ReadDb) {
  const counts = db.all(
    db.q
      .selectFrom('operation_now')
      .select((eb) => [
        'work_centre_id',
        'slot',
        eb.fn.countAll<number>().as('count'),
        eb.fn.sum<number>('planned_s').as('seconds'),
      ])
      .groupBy(['work_centre_id', 'slot']),
  );
  const castings = db.all(
    db.q
      .selectFrom('operation_now')
      .select((eb) => ['work_centre_id', eb.fn.count<number>('casting_id').distinct().as('count')])
      .where('slot', 'in', ['running', 'next', 'waiting'])
      .groupBy('work_centre_id'),
  );
  return db
    .all(
      db.q
        .selectFrom('work_centre')
        .select(['id', 'code', 'name', 'outside'])
        .where('retired_on', 'is', null)
        .orderBy('position')
        .orderBy('id'),
    )
    .map((centre) => {
      const own = counts.filter((row) => row.work_centre_id === centre.id);
      const of = (slot: string) => own.find((row) => row.slot === slot)?.count ?? 0;
      return {
        id: centre.id,
        code: centre.code,
        name: centre.name,
        outside: centre.outside === 1,
        running: of('running'),
        ready: of('next'),
        waiting: of('waiting'),
        held: of('held'),
        asked: of('asked'),
        castings: castings.find((row) => row.work_centre_id === centre.id)?.count ?? 0,
        aheadSeconds: own
          .filter((row) => ['running', 'next', 'waiting'].includes(row.slot))
          .reduce((sum, row) => sum + Number(row.seconds), 0),
      };
    });
}

/** Every casting in the house with its next operation; nothing that names the customer. */
export const listTags = (db: ReadDb) =>
  db.sql<{
    tag_no: number;
    kind: string;
    material: 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | 'not_known';
    metal_confirmed_at: string | null;
    next_words: string | null;
    centre: string | null;
    slot: string | null;
    promised_on: string | null;
    promised_minute: number | null;
    ready: number;
  }>(
    `SELECT c.tag_no, c.kind, c.material, c.metal_confirmed_at, k.shop_words AS next_words, w.name AS centre, n.slot,
            t.promised_on, t.promised_minute, t.ready
     FROM ticket_now t JOIN casting c ON c.ticket_id = t.ticket_id
     LEFT JOIN operation_now n ON n.operation_id = (
       SELECT x.operation_id FROM operation_now x WHERE x.casting_id = c.id
       ORDER BY CASE x.slot WHEN 'running' THEN 0 ELSE 1 END, x.position, x.operation_id LIMIT 1)
     LEFT JOIN operation o ON o.id = n.operation_id
     LEFT JOIN operation_kind k ON k.id = o.operation_kind_id
     LEFT JOIN work_centre w ON w.id = n.work_centre_id
     WHERE t.over = 0 AND t.arrived_at IS NOT NULL AND c.out_at IS NULL
     ORDER BY c.tag_no`,
  );

/** Open holds, or those of one ticket, oldest follow-up first. */
export function listHolds(db: ReadDb, ticket?: Id<'ticket'>) {
  const query = db.q
    .selectFrom('hold as h')
    .innerJoin('ticket as t', 't.id', 'h.ticket_id')
    .innerJoin('customer as u', 'u.id', 't.customer_id')
    .leftJoin('casting as c', 'c.id', 'h.casting_id')
    .leftJoin('operation as o', 'o.id', 'h.operation_id')
    .leftJoin('casting as oc', 'oc.id', 'o.casting_id')
    .leftJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
    .leftJoin('staff as w', 'w.id', 'h.owner_id')
    .leftJoin('staff as b', 'b.id', 'h.created_by')
    .selectAll('h')
    .select([
      't.number',
      'u.short_name',
      'c.tag_no',
      'oc.tag_no as operation_tag',
      'k.shop_words',
      'w.initials as owner_initials',
      'w.name as owner_name',
      'b.initials as by_initials',
      'b.name as by_name',
    ])
    .where('h.closed_at', 'is', null)
    .orderBy('h.follow_up_on')
    .orderBy('h.id');
  return db.all(ticket === undefined ? query : query.where('h.ticket_id', '=', ticket));
}

export type HoldRow = ReturnType<typeof listHolds>[number];
