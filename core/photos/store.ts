/** Writes kept files, pictures and hidden pictures. */
import type { NewRow, ReadDb, WriteDb } from '../db/query.ts';
import type { AttachmentId, CastingId, FindingId, Id, TicketId } from '../kernel/ids.ts';

/** A file the host keeps. */
export type Kept = Readonly<{
  sha256: string;
  bytes: number;
  mime: string;
  width: number | null;
  height: number | null;
}>;

/** The row of a kept file; the same bytes twice are one row. */
export function keepAttachment(db: WriteDb, file: Kept): AttachmentId {
  const known = db.one(db.q.selectFrom('attachment').select('id').where('sha256', '=', file.sha256));
  return (
    known?.id ??
    db.add('attachment', {
      sha256: file.sha256,
      bytes: file.bytes,
      mime: file.mime,
      width: file.width,
      height: file.height,
    })
  );
}

export const insertPhoto = (db: WriteDb, photo: NewRow<'photo'>): Id<'photo'> => db.add('photo', photo);

const photos = (db: ReadDb) =>
  db.q
    .selectFrom('photo as p')
    .innerJoin('attachment as a', 'a.id', 'p.attachment_id')
    .leftJoin('casting as c', 'c.id', 'p.casting_id')
    .leftJoin('staff as s', 's.id', 'p.created_by')
    .leftJoin('photo_hidden as h', 'h.photo_id', 'p.id')
    .select([
      'p.id as photoId',
      'a.sha256',
      'a.mime',
      'a.width',
      'a.height',
      'p.ticket_id as ticketId',
      'p.casting_id as castingId',
      'c.tag_no as tagNo',
      'p.finding_id as findingId',
      'p.condition_mark_id as conditionMarkId',
      'p.stage',
      'p.caption',
      'p.taken_at as takenAt',
      'p.created_at as keptAt',
      's.name as by',
    ])
    .where('h.id', 'is', null)
    .orderBy('p.id', 'desc');

type Of = Readonly<{ ticketId: TicketId }> | Readonly<{ castingId: CastingId }> | Readonly<{ findingId: FindingId }>;

/** Pictures that are not hidden, newest first. */
export function listPhotos(db: ReadDb, of: Of) {
  if ('ticketId' in of) return db.all(photos(db).where('p.ticket_id', '=', of.ticketId));
  if ('castingId' in of) return db.all(photos(db).where('p.casting_id', '=', of.castingId));
  return db.all(photos(db).where('p.finding_id', '=', of.findingId));
}
