/** Writes papers that were drawn and how their printing went. */
import type { NewRow, ReadDb, WriteDb } from '../../db/query.ts';
import type { DocumentId, Id, TicketId } from '../../kernel/ids.ts';
import { type Kept, keepAttachment } from '../../photos/store.ts';
import type { PaperName } from '../contract/papers.ts';

export type Subject = readonly [table: string, id: number];

/** The last paper of this kind about this thing, or undefined. */
export const findLastDocument = (db: ReadDb, kind: PaperName, [table, id]: Subject) =>
  db.one(
    db.q
      .selectFrom('document as d')
      .innerJoin('attachment as a', 'a.id', 'd.attachment_id')
      .select(['d.id', 'd.revision', 'd.facts_digest', 'd.file_name', 'a.sha256'])
      .where('d.kind', '=', kind)
      .where('d.subject_table', '=', table)
      .where('d.subject_id', '=', id)
      .orderBy('d.id', 'desc')
      .limit(1),
  );
export type LastDocument = NonNullable<ReturnType<typeof findLastDocument>>;

type NewDocument = Readonly<{
  kind: PaperName;
  subject: Subject;
  ticket: TicketId | null;
  revision: number;
  fileName: string;
  digest: string;
  file: Kept;
}>;

/** Keep a drawn paper. The same bytes twice are one file. */
export const insertDocument = (db: WriteDb, made: NewDocument): DocumentId =>
  db.add('document', {
    kind: made.kind,
    subject_table: made.subject[0],
    subject_id: made.subject[1],
    ticket_id: made.ticket,
    revision: made.revision,
    file_name: made.fileName,
    attachment_id: keepAttachment(db, made.file),
    facts_digest: made.digest,
  });

export const insertPrinting = (
  db: WriteDb,
  document: DocumentId,
  outcome: NewRow<'printing'>['outcome'],
  words: string | null,
): Id<'printing'> => db.add('printing', { document_id: document, outcome, words });

export const findDocument = (db: ReadDb, id: DocumentId) =>
  db.one(db.q.selectFrom('document').selectAll().where('id', '=', id));

/** Papers of a ticket with the last word of the printer, newest first. */
export const listDocuments = (db: ReadDb, ticket: TicketId) =>
  db.sql<{
    id: DocumentId;
    kind: PaperName;
    subject_table: string;
    subject_id: number;
    revision: number;
    file_name: string;
    sha256: string;
    created_at: string;
    by: string | null;
    outcome: NewRow<'printing'>['outcome'] | null;
    outcome_words: string | null;
  }>(
    `SELECT d.id, d.kind, d.subject_table, d.subject_id, d.revision, d.file_name, a.sha256, d.created_at, s.name AS "by",
       p.outcome, p.words AS outcome_words
     FROM document d JOIN attachment a ON a.id = d.attachment_id LEFT JOIN staff s ON s.id = d.created_by
     LEFT JOIN printing p ON p.id = (SELECT MAX(x.id) FROM printing x WHERE x.document_id = d.id)
     WHERE d.ticket_id = ? ORDER BY d.id DESC`,
    ticket,
  );
