/** Reads and writes readings and a lead's decisions. Rows are added, never changed. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Moment } from '../../kernel/days.ts';
import type { CastingId, DeviceId, Id, OperationId, ReadingId, SpotId, TicketId } from '../../kernel/ids.ts';
import { isUnitCode } from '../../kernel/measure-units.ts';
import type { Decision, Reading } from '../compute/model.ts';

const COLUMNS = [
  'r.id',
  'r.casting_id',
  'r.ticket_id',
  'q.code',
  'r.spot_id',
  'r.point',
  'r.stage',
  'r.operation_id',
  'r.kind',
  'r.typed',
  'r.unit',
  'r.value',
  'r.fit_mark',
  'r.read_on',
  'r.tool_id',
  'r.taken_at',
  'r.supersedes_id',
  'r.reason',
  'r.note',
  's.initials',
] as const;

const select = (db: ReadDb) =>
  db.q
    .selectFrom('reading as r')
    .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
    .leftJoin('staff as s', 's.id', 'r.created_by')
    .select(COLUMNS);

type Row = Readonly<{
  id: ReadingId;
  code: string;
  spot_id: SpotId | null;
  point: string | null;
  stage: Reading['stage'];
  operation_id: OperationId | null;
  kind: Reading['kind'];
  typed: string;
  unit: string | null;
  value: number | null;
  fit_mark: Reading['mark'];
  read_on: Reading['readOn'];
  tool_id: Reading['tool'];
  taken_at: Moment;
  supersedes_id: ReadingId | null;
  reason: string | null;
  note: string | null;
  initials: string | null;
}>;

const asReading = (row: Row): Reading => ({
  id: row.id,
  quantity: row.code,
  spot: row.spot_id,
  point: row.point,
  stage: row.stage,
  operation: row.operation_id,
  kind: row.kind,
  typed: row.typed,
  unit: row.unit !== null && isUnitCode(row.unit) ? row.unit : null,
  value: row.value,
  mark: row.fit_mark,
  readOn: row.read_on,
  tool: row.tool_id,
  at: row.taken_at,
  by: row.initials ?? '',
  supersedes: row.supersedes_id,
  reason: row.reason,
  note: row.note,
});

/** Every reading of a casting, superseded ones too, oldest first. */
export const listReadings = (db: ReadDb, casting: CastingId): Reading[] =>
  db.all(select(db).where('r.casting_id', '=', casting).orderBy('r.id')).map(asReading);

/** One reading with its casting, or undefined. */
export function findReading(
  db: ReadDb,
  id: ReadingId,
): Readonly<{ reading: Reading; casting: CastingId; ticket: TicketId }> | undefined {
  const row = db.one(select(db).where('r.id', '=', id));
  return row && { reading: asReading(row), casting: row.casting_id, ticket: row.ticket_id };
}

/** True when a later row took its place. */
export const isSuperseded = (db: ReadDb, id: ReadingId): boolean =>
  db.one(db.q.selectFrom('reading').select('id').where('supersedes_id', '=', id)) !== undefined;

export type NewReading = Omit<Reading, 'id' | 'by'> &
  Readonly<{ casting: CastingId; ticket: TicketId; quantityId: number; received: Moment; device: DeviceId | null }>;

/** Add one reading. @returns its id. */
export const insertReading = (db: WriteDb, it: NewReading): ReadingId =>
  db.add('reading', {
    casting_id: it.casting,
    ticket_id: it.ticket,
    operation_id: it.operation,
    quantity_id: it.quantityId as never,
    spot_id: it.spot,
    point: it.point,
    stage: it.stage,
    tool_id: it.tool,
    unit: it.unit,
    typed: it.typed,
    value: it.value,
    kind: it.kind,
    fit_mark: it.mark,
    read_on: it.readOn,
    taken_at: it.at,
    received_at: it.received,
    device_id: it.device,
    supersedes_id: it.supersedes,
    reason: it.reason,
    note: it.note,
  });

/** Decisions of leads on one casting, oldest first. */
export const listDecisions = (db: ReadDb, casting: CastingId): Decision[] =>
  db
    .all(
      db.q
        .selectFrom('reading_decision as d')
        .innerJoin('quantity as q', 'q.id', 'd.quantity_id')
        .leftJoin('staff as s', 's.id', 'd.created_by')
        .select(['q.code', 'd.spot_id', 'd.point', 'd.stage', 'd.value_shown', 'd.accepted', 'd.words', 's.initials'])
        .where('d.casting_id', '=', casting)
        .orderBy('d.id'),
    )
    .map((row) => ({
      quantity: row.code,
      spot: row.spot_id,
      point: row.point,
      stage: row.stage,
      value: row.value_shown,
      accepted: row.accepted === 1,
      words: row.words,
      by: row.initials ?? '',
    }));

export const insertDecision = (
  db: WriteDb,
  it: Readonly<Omit<Decision, 'by' | 'quantity'> & { casting: CastingId; ticket: TicketId; quantityId: number }>,
): void =>
  void db.add('reading_decision', {
    casting_id: it.casting,
    ticket_id: it.ticket,
    quantity_id: it.quantityId as never,
    spot_id: it.spot,
    stage: it.stage,
    point: it.point,
    value_shown: it.value,
    accepted: it.accepted ? 1 : 0,
    words: it.words,
  });

/** Show or hide a table row for one casting; the last row stands. */
export const insertRowShown = (
  db: WriteDb,
  it: Readonly<{ casting: CastingId; ticket: TicketId; row: Id<'bench_table_row'>; shown: boolean }>,
): void =>
  void db.add('casting_row', {
    casting_id: it.casting,
    ticket_id: it.ticket,
    bench_table_row_id: it.row,
    shown: it.shown ? 1 : 0,
  });
