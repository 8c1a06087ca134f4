/** What a file of readings says of its casting beside the readings. */
import type { ReadDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId } from '../../kernel/ids.ts';

export type ExportHead = Readonly<{
  /** Of the ticket. */
  number: number;
  castingNumber: string | null;
  customer: string;
  certified: boolean;
}>;

/** @throws AppError `not-found` `readings/no-such-casting`. */
export function readExportHead(db: ReadDb, casting: CastingId): ExportHead {
  const row = db.one(
    db.q
      .selectFrom('casting as c')
      .innerJoin('ticket as t', 't.id', 'c.ticket_id')
      .innerJoin('customer as k', 'k.id', 't.customer_id')
      .select(['t.number', 'c.casting_number', 'k.short_name', 't.certified'])
      .where('c.id', '=', casting),
  );
  if (!row) throw notFound('readings/no-such-casting', 'This casting');
  return {
    number: row.number,
    castingNumber: row.casting_number,
    customer: row.short_name,
    certified: row.certified === 1,
  };
}
