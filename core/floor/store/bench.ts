/** Reads what the casting's page shows beside its state. */
import type { ReadDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, TicketId } from '../../kernel/ids.ts';
import type { Given, OperationMore } from '../compute/operation-view.ts';

/** The casting with type, ticket and customer's short name. @throws AppError `not-found` `castings/no-such-tag` */
export function readBenchHead(db: ReadDb, tag: number) {
  const row = db.one(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as y', 'y.id', 'c.casting_type_id')
      .leftJoin('engine_type as e', 'e.id', 'y.engine_type_id')
      .innerJoin('ticket as t', 't.id', 'c.ticket_id')
      .innerJoin('customer as u', 'u.id', 't.customer_id')
      .selectAll('c')
      .select([
        'y.name as type_name',
        't.number',
        't.gasket',
        't.crack_check',
        't.certified',
        't.valve_lift_typed',
        't.history_words',
        't.use_words',
        't.fuel_words',
        't.engine_words',
        'u.short_name',
        'e.numbering',
      ])
      .where('c.tag_no', '=', tag),
  );
  if (!row) throw notFound('castings/no-such-tag', `Tag ${tag}`);
  return row;
}
export type BenchHead = ReturnType<typeof readBenchHead>;

/** How many castings of each kind a ticket has. */
export const countKinds = (db: ReadDb, ticket: TicketId): ReadonlyMap<string, number> =>
  new Map(
    db
      .all(
        db.q
          .selectFrom('casting')
          .select((eb) => ['kind', eb.fn.countAll<number>().as('count')])
          .where('ticket_id', '=', ticket)
          .groupBy('kind'),
      )
      .map((row) => [row.kind, row.count]),
  );

/** Rows of operations that their state does not hold. */
export const listOperationMore = (db: ReadDb, ticket: TicketId): ReadonlyMap<number, OperationMore> =>
  new Map(
    db
      .all(
        db.q
          .selectFrom('operation as o')
          .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
          .innerJoin('work_centre as w', 'w.id', 'o.work_centre_id')
          .innerJoin('casting as c', 'c.id', 'o.casting_id')
          .leftJoin('op_use as s', (join) =>
            join.onRef('s.operation_kind_id', '=', 'o.operation_kind_id').onRef('s.casting_kind', '=', 'c.kind'),
          )
          .select(['o.id', 's.charge_unit', 'w.code', 'o.redo_cause', 'o.not_needed_why', 'k.cautions'])
          .where('o.ticket_id', '=', ticket),
      )
      .map((row) => [
        row.id,
        {
          chargeUnit: row.charge_unit,
          centreCode: row.code,
          redoCause: row.redo_cause?.replaceAll('_', ' ') ?? null,
          notNeededWhy: row.not_needed_why,
          cautions: row.cautions,
        },
      ]),
  );

/** Initials and names of everybody, retired ones too. */
export const listNames = (db: ReadDb): ReadonlyMap<number, Readonly<{ initials: string; name: string }>> =>
  new Map(
    db
      .all(db.q.selectFrom('staff').select(['id', 'initials', 'name']))
      .map((row) => [row.id, { initials: row.initials, name: row.name }]),
  );

/** Bench tables of a casting with the operation and the quantities they are for; none whose places its type has not. */
export const listTableRows = (
  db: ReadDb,
  { kind, casting_type_id: type }: Pick<BenchHead, 'kind' | 'casting_type_id'>,
) =>
  db.all(
    db.q
      .selectFrom('bench_table as t')
      .innerJoin('bench_table_row as r', 'r.bench_table_id', 't.id')
      .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
      .leftJoin('operation_kind as k', 'k.id', 't.operation_kind_id')
      .select(['t.code', 't.words', 'k.code as operation', 'q.code as quantity'])
      .where('t.casting_kind', '=', kind)
      .where((eb) =>
        eb.or([
          eb('t.spot_kind', 'is', null),
          eb('t.spot_kind', 'in', eb.selectFrom('spot').select('kind').where('casting_type_id', '=', type)),
        ]),
      )
      .orderBy('t.id')
      .orderBy('r.position'),
  );

/** What the operations of a casting found once, as it stands: results of crack checks and the like. */
export const listGiven = (db: ReadDb, casting: CastingId): readonly Given[] =>
  db
    .all(
      db.q
        .selectFrom('reading as r')
        .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
        .leftJoin('reading as later', 'later.supersedes_id', 'r.id')
        .select(['r.id', 'r.operation_id', 'r.typed', 'q.code'])
        .where('r.casting_id', '=', casting)
        .where('r.operation_id', 'is not', null)
        .where('r.spot_id', 'is', null)
        .where('r.stage', '=', 'after')
        .where('r.kind', 'in', ['number', 'choice', 'text'])
        .where('later.id', 'is', null)
        .orderBy('r.id', 'desc'),
    )
    .flatMap((row) =>
      row.operation_id === null
        ? []
        : [{ operation: row.operation_id, quantity: row.code, typed: row.typed, reading: row.id }],
    );

/** What came with a casting, with the bag it is in. */
export const listArrivalItems = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('arrival_item as i')
      .leftJoin('container as c', 'c.id', 'i.container_id')
      .selectAll('i')
      .select('c.label')
      .where('i.casting_id', '=', casting)
      .orderBy('i.position'),
  );

/** Conditions marked on the drawing that were seen. */
export const listMarks = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('condition_mark as m')
      .innerJoin('condition_kind as k', 'k.id', 'm.condition_kind_id')
      .select(['m.id', 'k.shop_words', 'm.words', 'm.view', 'm.x_bp', 'm.y_bp', 'm.seen'])
      .where('m.casting_id', '=', casting)
      .where('m.removed_at', 'is', null)
      .where('m.seen', '!=', 'not_seen')
      .orderBy('m.id'),
  );

/** Pictures of a casting that are not hidden, arrival first. */
export const listPhotos = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('photo as p')
      .innerJoin('attachment as a', 'a.id', 'p.attachment_id')
      .leftJoin('photo_hidden as h', 'h.photo_id', 'p.id')
      .select(['p.id', 'a.sha256', 'p.stage', 'p.caption'])
      .where('p.casting_id', '=', casting)
      .where('h.id', 'is', null)
      .orderBy('p.id'),
  );

/** What was found, newest first, with the number of the question it led to. */
export const listFindings = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('finding as f')
      .leftJoin('staff as s', 's.id', 'f.created_by')
      .leftJoin('spot as p', 'p.id', 'f.spot_id')
      .leftJoin('added_work_finding as l', 'l.finding_id', 'f.id')
      .leftJoin('added_work as w', 'w.id', 'l.added_work_id')
      .select([
        'f.id',
        'f.words',
        'f.place_words',
        'f.created_at',
        'f.created_by',
        's.initials',
        's.name',
        'p.kind',
        'p.label',
        'p.cylinder',
        'w.number',
        'w.asked_at',
        'w.closed_at',
      ])
      .where('f.casting_id', '=', casting)
      .orderBy('f.id', 'desc'),
  );

/** Who said each fact last. */
export const listFactsSaid = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('casting_fact as f')
      .leftJoin('staff as s', 's.id', 'f.created_by')
      .select(['f.fact', 'f.holds', 'f.words', 'f.created_at', 's.initials'])
      .where('f.casting_id', '=', casting)
      .orderBy('f.id'),
  );

/** Code of the place it was put last; null when never put away. */
export const findPlace = (db: ReadDb, casting: CastingId): string | null =>
  db.one(
    db.q
      .selectFrom('placement as p')
      .innerJoin('rack_place as r', 'r.id', 'p.rack_place_id')
      .select('r.code')
      .where('p.casting_id', '=', casting)
      .orderBy('p.id', 'desc'),
  )?.code ?? null;

/**
 * The last printed traveller, and how many changes of the plan came after it; undefined when none was printed.
 *
 * A change is an operation added, marked not needed or let pass.
 */
export function findTraveller(db: ReadDb, casting: CastingId): { revision: number; changes: number } | undefined {
  const printed = db.one(
    db.q
      .selectFrom('document')
      .select(['revision', 'created_at'])
      .where('kind', '=', 'traveller')
      .where('subject_table', '=', 'casting')
      .where('subject_id', '=', casting)
      .orderBy('id', 'desc'),
  );
  if (!printed) return undefined;
  const changes = db.sql<{ n: number }>(
    `SELECT (SELECT count(*) FROM operation WHERE casting_id = ? AND (created_at > ? OR not_needed_at > ?))
          + (SELECT count(*) FROM order_waiver w JOIN operation o ON o.id = w.operation_id
             WHERE o.casting_id = ? AND w.created_at > ?) AS n`,
    casting,
    printed.created_at,
    printed.created_at,
    casting,
    printed.created_at,
  );
  return { revision: printed.revision, changes: changes[0]?.n ?? 0 };
}
