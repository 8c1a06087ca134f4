/** Reads and writes of wash loads. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Moment } from '../../kernel/days.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, Id, OperationId, StaffId, TicketId } from '../../kernel/ids.ts';

type LoadId = Id<'wash_load'>;

/** A wash of the catalogue with the groups that metal is judged by; undefined when there is none of this code. */
export function findWash(db: ReadDb, code: string) {
  const kind = db.one(
    db.q
      .selectFrom('operation_kind')
      .select(['id', 'code', 'shop_words'])
      .where('code', '=', code)
      .where('retired_on', 'is', null),
  );
  if (!kind) return undefined;
  const groups = db
    .all(db.q.selectFrom('op_group').select('code').where('operation_kind_id', '=', kind.id))
    .map((row) => row.code);
  return groups.includes('clean') ? { ...kind, groups } : undefined;
}

/** The casting of a tag in the house. */
export const findTagged = (db: ReadDb, tag: number) =>
  db.one(
    db.q
      .selectFrom('casting')
      .select(['id', 'ticket_id', 'tag_no', 'material'])
      .where('tag_no', '=', tag)
      .where('out_at', 'is', null),
  );

/** The open wash of this kind on a casting, the last of a redo chain; undefined when its ticket has none. */
export const findOpenWash = (db: ReadDb, casting: CastingId, kind: Id<'operation_kind'>): OperationId | undefined =>
  db.one(
    db.q
      .selectFrom('operation')
      .select('id')
      .where('casting_id', '=', casting)
      .where('operation_kind_id', '=', kind)
      .where('finished_at', 'is', null)
      .where('not_needed_at', 'is', null)
      .orderBy('position')
      .orderBy('id'),
  )?.id;

export const insertLoad = (db: WriteDb, wash: string, machine: string | null, at: Moment): LoadId =>
  db.add('wash_load', { method: wash, machine, started_at: at });

export const insertLoadItem = (
  db: WriteDb,
  load: LoadId,
  item: Readonly<{ ticket: TicketId; operation: OperationId; confirmedBy: StaffId }>,
) =>
  db.add('wash_load_item', {
    wash_load_id: load,
    ticket_id: item.ticket,
    operation_id: item.operation,
    metal_confirmed_by: item.confirmedBy,
  });

/** @throws AppError `not-found` `floor/no-such-load` */
export function getLoad(db: ReadDb, id: LoadId) {
  const row = db.one(db.q.selectFrom('wash_load').selectAll().where('id', '=', id));
  if (!row) throw notFound('floor/no-such-load', 'This load');
  return row;
}

export const endLoad = (db: WriteDb, id: LoadId, at: Moment): void => db.set('wash_load', id, { ended_at: at });

/** Operations in a load, in the order they went in. */
export const listLoadOperations = (db: ReadDb, id: LoadId): OperationId[] =>
  db
    .all(db.q.selectFrom('wash_load_item').select('operation_id').where('wash_load_id', '=', id).orderBy('id'))
    .map((row) => row.operation_id);

/** Loads that are not out yet, with the tags in them. */
export function listOpenLoads(db: ReadDb) {
  const tags = db.all(
    db.q
      .selectFrom('wash_load_item as i')
      .innerJoin('wash_load as l', 'l.id', 'i.wash_load_id')
      .innerJoin('operation as o', 'o.id', 'i.operation_id')
      .innerJoin('casting as c', 'c.id', 'o.casting_id')
      .select(['i.wash_load_id', 'c.tag_no'])
      .where('l.ended_at', 'is', null)
      .orderBy('i.id'),
  );
  return db
    .all(
      db.q
        .selectFrom('wash_load as l')
        .leftJoin('operation_kind as k', 'k.code', 'l.method')
        .leftJoin('staff as s', 's.id', 'l.created_by')
        .select([
          'l.id',
          'l.method',
          'k.shop_words',
          'l.machine',
          'l.started_at',
          'l.created_by',
          's.initials',
          's.name',
        ])
        .where('l.ended_at', 'is', null)
        .orderBy('l.id'),
    )
    .map((row) => ({ ...row, tags: tags.filter((tag) => tag.wash_load_id === row.id).map((tag) => tag.tag_no) }));
}
