/** What the requests about pictures do. The host hashes the bytes and looks inside before anything is written. */

import type { ReadDb } from '../db/query.ts';
import { implement, type PrepareCtx } from '../host/implement.ts';
import { keptFile, keptPicture } from '../host/kept-file.ts';
import type { StoredFile } from '../host/services.ts';
import { badField, notFound, ruleBroken } from '../kernel/errors.ts';
import type { CastingId, TicketId } from '../kernel/ids.ts';
import { photosContract } from './contract.ts';
import * as store from './store.ts';

const STAGES = { arrival: 'at arrival', finding: 'found', done: 'done' } as const;

export const photos = implement(photosContract, {
  'photos/add-photo': {
    prepare: ({ file }, { services }: PrepareCtx) => keptPicture(file, services),
    run(input, { db }, file: StoredFile) {
      refuseStranger(db, input.ticketId, input.castingId);
      refuseOtherSubject(db, input);
      const photoId = store.insertPhoto(db, {
        attachment_id: store.keepAttachment(db, file),
        ticket_id: input.ticketId,
        casting_id: input.castingId,
        finding_id: input.findingId,
        condition_mark_id: input.conditionMarkId,
        stage: input.stage,
        caption: input.caption,
        taken_at: input.takenAt,
      });
      return {
        output: { photoId, sha256: file.sha256, width: file.width, height: file.height },
        activity: [
          {
            subject: ['photo', photoId],
            ticket: input.ticketId,
            words: `Added a picture${input.caption === null ? '' : `: ${input.caption}`}`,
            after: { sha256: file.sha256, stage: input.stage },
          },
        ],
        touched: [input.ticketId],
      };
    },
  },
  'photos/keep-proof': {
    prepare: ({ file }, { services }: PrepareCtx) => keptFile(file, services),
    run({ words }, { db }, file: StoredFile) {
      const attachmentId = store.keepAttachment(db, file);
      return {
        output: { attachmentId, sha256: file.sha256 },
        activity: [
          { subject: ['attachment', attachmentId], words: `Kept a paper: ${words}`, after: { sha256: file.sha256 } },
        ],
      };
    },
  },
  'photos/list-photos': {
    run: (of, { db }) => ({
      photos: store
        .listPhotos(db, of)
        .map((photo) => ({ ...photo, stageWords: STAGES[photo.stage], by: photo.by ?? '' })),
    }),
  },
  'photos/hide-photo': {
    run({ photoId, why }, { db }) {
      const photo = db.one(db.q.selectFrom('photo').select(['id', 'ticket_id']).where('id', '=', photoId));
      if (!photo) throw notFound('photos/no-such-photo', 'This picture');
      const hidden = db.one(db.q.selectFrom('photo_hidden').select('id').where('photo_id', '=', photoId));
      if (hidden) throw ruleBroken('photos/hidden', 'This picture is hidden already.');
      db.add('photo_hidden', { photo_id: photoId, ticket_id: photo.ticket_id, why });
      return {
        output: {},
        activity: [
          { subject: ['photo', photoId], ticket: photo.ticket_id, words: `Hid a picture: ${why}`, after: { why } },
        ],
        touched: [photo.ticket_id],
      };
    },
  },
});

function refuseStranger(db: ReadDb, ticketId: TicketId, castingId: CastingId | null): void {
  const ticket = db.one(db.q.selectFrom('ticket').select('id').where('id', '=', ticketId));
  if (!ticket) throw notFound('tickets/no-such-ticket', 'This ticket');
  if (castingId === null) return;
  const casting = db.one(db.q.selectFrom('casting').select('ticket_id').where('id', '=', castingId));
  if (casting?.ticket_id !== ticketId) {
    throw badField('photos/other-ticket', 'castingId', 'This casting is on another ticket. Load the page again.');
  }
}

/** A finding or a mark named by the picture stands on the same ticket. */
function refuseOtherSubject(
  db: ReadDb,
  {
    ticketId,
    findingId,
    conditionMarkId,
  }: Readonly<{ ticketId: TicketId; findingId: number | null; conditionMarkId: number | null }>,
): void {
  const isThere = (table: 'finding' | 'condition_mark', id: number) =>
    db.sql(`SELECT 1 FROM ${table} WHERE id = ? AND ticket_id = ?`, id, ticketId).length > 0;
  const gone = 'It is not on this ticket any more. Load the page again.';
  if (findingId !== null && !isThere('finding', findingId)) throw badField('photos/other-finding', 'findingId', gone);
  if (conditionMarkId !== null && !isThere('condition_mark', conditionMarkId)) {
    throw badField('photos/other-mark', 'conditionMarkId', gone);
  }
}
