/** Writes what the bench does: runs, done operations, findings, holds, waivers, ticked facts, incidents, ranks. */
import type { NewRow, ReadDb, WriteDb } from '../db/query.ts';
import type { Moment } from '../kernel/days.ts';
import { notFound } from '../kernel/errors.ts';
import type { CastingId, DeviceId, FindingId, HoldId, Id, OperationId, StaffId, TicketId } from '../kernel/ids.ts';

type On = Readonly<{ operation: OperationId; ticket: TicketId }>;

/** Begin a run of one person. */
export const insertRun = (db: WriteDb, { operation, ticket }: On, who: StaffId, device: DeviceId | null, at: Moment) =>
  db.add('operation_run', {
    operation_id: operation,
    ticket_id: ticket,
    staff_id: who,
    device_id: device,
    started_at: at,
  });

/** End the open runs of an operation, of one person or of all. @returns how many were open */
export function endRuns(
  db: WriteDb,
  operation: OperationId,
  end: Readonly<{ at: Moment; kind: 'stopped' | 'finished'; who?: StaffId }>,
): number {
  const query = db.q
    .updateTable('operation_run')
    .set({ ended_at: end.at, end_kind: end.kind })
    .where('operation_id', '=', operation)
    .where('ended_at', 'is', null);
  return db.run(end.who === undefined ? query : query.where('staff_id', '=', end.who));
}

/** Done. @returns the new version */
export const finishOperation = (db: WriteDb, id: OperationId, seen: number, at: Moment, who: StaffId): number =>
  db.step('operation', id, seen, { finished_at: at, finished_by: who });

/** Marked as not needed. @returns the new version */
export const markNotNeeded = (
  db: WriteDb,
  id: OperationId,
  seen: number,
  mark: Readonly<{ at: Moment; who: StaffId; why: string }>,
): number =>
  db.step('operation', id, seen, { not_needed_at: mark.at, not_needed_by: mark.who, not_needed_why: mark.why });

/** @throws AppError `not-found` `floor/no-such-operation` */
export function getOperation(db: ReadDb, id: OperationId) {
  const row = db.one(db.q.selectFrom('operation').selectAll().where('id', '=', id));
  if (!row) throw notFound('floor/no-such-operation', 'This operation');
  return row;
}

type Cause = NonNullable<NewRow<'operation'>['redo_cause']>;

/** A second instance at the same place of the traveller, charged to nobody; the first and its readings stay. */
export function insertRedo(db: WriteDb, first: ReturnType<typeof getOperation>, cause: Cause, words: string | null) {
  const id = db.add('operation', {
    casting_id: first.casting_id,
    ticket_id: first.ticket_id,
    operation_kind_id: first.operation_kind_id,
    work_line_id: null,
    position: first.position,
    work_centre_id: first.work_centre_id,
    units: first.units,
    planned_s: first.planned_s,
    unattended_s: first.unattended_s,
    instruction: words ?? first.instruction,
    redo_of_id: first.id,
    redo_cause: cause,
    chargeable: 0,
  });
  const spots = db.all(db.q.selectFrom('operation_spot').select('spot_id').where('operation_id', '=', first.id));
  for (const { spot_id } of spots) {
    db.add('operation_spot', { operation_id: id, ticket_id: first.ticket_id, spot_id });
  }
  return id;
}

/** The soft rules that were shown at this start. */
export function insertShown(db: WriteDb, { operation, ticket }: On, rules: readonly number[]): void {
  for (const rule of new Set(rules)) {
    db.add('rule_shown', { operation_id: operation, ticket_id: ticket, order_rule_id: rule as Id<'order_rule'> });
  }
}

export const insertWaiver = (db: WriteDb, row: NewRow<'order_waiver'>) => db.add('order_waiver', row);

export const insertFact = (db: WriteDb, row: NewRow<'casting_fact'>) => db.add('casting_fact', row);

export const insertFinding = (db: WriteDb, row: NewRow<'finding'>): FindingId => db.add('finding', row);

export const insertHold = (db: WriteDb, row: NewRow<'hold'>): HoldId => db.add('hold', row);

/** @throws AppError `not-found` `floor/no-such-hold` */
export function getHold(db: ReadDb, id: HoldId) {
  const row = db.one(db.q.selectFrom('hold').selectAll().where('id', '=', id));
  if (!row) throw notFound('floor/no-such-hold', 'This hold');
  return row;
}

export const closeHold = (db: WriteDb, id: HoldId, at: Moment, who: StaffId, words: string): void =>
  db.set('hold', id, { closed_at: at, closed_by: who, closed_words: words });

export const insertIncident = (db: WriteDb, row: NewRow<'incident'>) => db.add('incident', row);

/** The piece is off the casting. */
export const markItemRemoved = (db: WriteDb, item: Id<'arrival_item'>, at: Moment): void =>
  db.set('arrival_item', item, { removed_at: at });

/** Put these operations first in this order; the others of the centre lose their place of the lead. */
export function setRanks(db: WriteDb, centre: Id<'work_centre'>, operations: readonly OperationId[]): TicketId[] {
  const ranked = db.all(
    db.q
      .selectFrom('operation')
      .select(['id', 'ticket_id', 'queue_rank'])
      .where('work_centre_id', '=', centre)
      .where('finished_at', 'is', null)
      .where((eb) =>
        operations.length === 0
          ? eb('queue_rank', 'is not', null)
          : eb.or([eb('queue_rank', 'is not', null), eb('id', 'in', [...operations])]),
      ),
  );
  const touched: TicketId[] = [];
  for (const row of ranked) {
    const place = operations.indexOf(row.id);
    const rank = place === -1 ? null : place + 1;
    if (rank === row.queue_rank) continue;
    db.set('operation', row.id, { queue_rank: rank });
    touched.push(row.ticket_id);
  }
  return [...new Set(touched)];
}

/** Castings of one pair on one ticket that are in the shop, without this one. */
export const listPair = (db: ReadDb, casting: CastingId) =>
  db.sql<{ id: CastingId; tag_no: number }>(
    `SELECT o.id, o.tag_no FROM casting c JOIN casting o ON o.ticket_id = c.ticket_id AND o.pair_no = c.pair_no
     WHERE c.id = ? AND o.id <> c.id AND c.pair_no IS NOT NULL AND o.out_at IS NULL AND o.scrap_at IS NULL ORDER BY o.id`,
    casting,
  );

/** Does the catalogue ask for readings of this kind of operation? */
export const needsReadings = (db: ReadDb, kind: number): boolean =>
  db.sql(
    'SELECT 1 FROM needed_reading WHERE operation_kind_id = ? AND required = 1 AND retired_on IS NULL LIMIT 1',
    kind,
  ).length > 0;
