/** Puts the operations of a line on their castings and keeps them in the order of the traveller. */
import { travellerOrder } from '../../catalogue/compute/traveller-order.ts';
import type { WriteDb } from '../../db/query.ts';
import type { Moment } from '../../kernel/days.ts';
import { AppError } from '../../kernel/errors.ts';
import type { Id, OperationId, SpotId, StaffId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import type { DraftOperation, PriceBook } from '../compute/book.ts';
import type { TicketCasting } from './priced-castings.ts';

export type OperationsOf = Readonly<{
  ticketId: TicketId;
  /** Null: rework that is not charged. */
  lineId: WorkLineId | null;
  optionId: Id<'added_work_option'> | null;
  instruction: string | null;
  spots: readonly SpotId[];
}>;

/** Behind everything that stands; `resequence` puts it in its place. */
const LAST = 1_000_000;

/** Insert the operations of a line on one casting, in the order given. */
export function insertOperations(
  db: WriteDb,
  casting: TicketCasting,
  steps: readonly DraftOperation[],
  of: OperationsOf,
): OperationId[] {
  return steps.map(({ kind, units, planned, unattended }) => {
    if (kind.workCentreId === null) {
      const message = `${kind.words} has no work centre. Give it one under Shop, Operations, then add it again.`;
      throw new AppError('rule-broken', 'pricing/no-work-centre', message);
    }
    const id = db.add('operation', {
      casting_id: casting.id,
      ticket_id: of.ticketId,
      operation_kind_id: kind.id,
      work_line_id: of.lineId,
      option_id: of.optionId,
      position: LAST,
      work_centre_id: kind.workCentreId,
      units,
      planned_s: planned,
      unattended_s: unattended,
      instruction: of.instruction,
    });
    for (const spot of new Set(of.spots)) {
      db.add('operation_spot', { operation_id: id, ticket_id: of.ticketId, spot_id: spot });
    }
    return id;
  });
}

/** Number the operations of a casting anew by the order rules. A redo stands where the first one stood. */
export function resequence(db: WriteDb, book: PriceBook, casting: TicketCasting): void {
  const rows = db.all(
    db.q
      .selectFrom('operation')
      .select(['id', 'operation_kind_id', 'position', 'redo_of_id'])
      .where('casting_id', '=', casting.id)
      .orderBy('position')
      .orderBy('id'),
  );
  const firsts = rows.flatMap((row) => {
    const kind = book.kinds.get(row.operation_kind_id);
    return row.redo_of_id === null && kind ? [{ key: row.id as number, kind }] : [];
  });
  const place = new Map<number, number>();
  for (const [index, item] of travellerOrder(firsts, book.rules, book.groups, casting).entries()) {
    place.set(item.key, index + 1);
  }
  for (const row of rows) {
    const wanted = place.get(firstOf(rows, row));
    if (wanted !== undefined && wanted !== row.position) db.set('operation', row.id, { position: wanted });
  }
}

type Row = Readonly<{ id: number; redo_of_id: number | null }>;

/** The operation a chain of redoing began with. */
function firstOf(rows: readonly Row[], row: Row): number {
  let first = row;
  while (first.redo_of_id !== null) {
    const before = rows.find((other) => other.id === first.redo_of_id);
    if (!before) return first.id;
    first = before;
  }
  return first.id;
}

/** Units and planned times of the operations of a line that are not finished, after its count changed. */
export function resizeOperations(db: WriteDb, lineId: WorkLineId, steps: readonly DraftOperation[]): void {
  for (const { kind, units, planned, unattended } of steps) {
    db.run(
      db.q
        .updateTable('operation')
        .set({ units, planned_s: planned, unattended_s: unattended })
        .where('work_line_id', '=', lineId)
        .where('operation_kind_id', '=', kind.id)
        .where('finished_at', 'is', null),
    );
  }
}

/** Operations charged by another line from now on. */
export function moveToLine(db: WriteDb, ids: readonly OperationId[], line: WorkLineId): void {
  for (const id of ids) db.set('operation', id, { work_line_id: line });
}

/** Stopped by the customer: open runs end, what was to do is no longer needed. Nothing done is touched. */
export function dropOperations(
  db: WriteDb,
  ids: readonly OperationId[],
  { now, by, why }: Readonly<{ now: Moment; by: StaffId; why: string }>,
): void {
  for (const id of ids) {
    db.run(
      db.q
        .updateTable('operation_run')
        .set({ ended_at: now, end_kind: 'stopped' })
        .where('operation_id', '=', id)
        .where('ended_at', 'is', null),
    );
    db.set('operation', id, { not_needed_at: now, not_needed_by: by, not_needed_why: why });
  }
}
