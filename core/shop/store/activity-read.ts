/** Reads of what was done: for the Activity panes and the last backup. */
import type { ReadDb } from '../../db/query.ts';
import type { TicketId } from '../../kernel/ids.ts';

type Asked = Readonly<{
  ticket?: TicketId | undefined;
  subject?: readonly [string, number] | undefined;
  before?: number | undefined;
  limit: number;
}>;
type Text = Readonly<{ words?: string; before?: unknown; after?: unknown }>;

/** Newest first; one row more than `limit` tells that there is more. */
export function listActivity(db: ReadDb, asked: Asked) {
  let rows = db.q
    .selectFrom('activity as a')
    .leftJoin('activity_text as t', 't.activity_id', 'a.id')
    .leftJoin('staff as s', 's.id', 'a.staff_id')
    .select([
      'a.id',
      'a.at',
      's.name as by',
      'a.came_from as from',
      'a.command',
      'a.ticket_id as ticket',
      'a.subject_table',
      'a.subject_id',
      't.body',
    ]);
  if (asked.ticket !== undefined) rows = rows.where('a.ticket_id', '=', asked.ticket);
  if (asked.subject)
    rows = rows.where('a.subject_table', '=', asked.subject[0]).where('a.subject_id', '=', asked.subject[1]);
  if (asked.before !== undefined) rows = rows.where('a.id', '<', asked.before as never);
  return db
    .all(rows.orderBy('a.id', 'desc').limit(asked.limit + 1))
    .map(({ subject_table, subject_id, body, by, ...row }) => {
      const text: Text = body === null ? {} : (JSON.parse(body) as Text);
      return {
        ...row,
        by: by ?? 'nobody signed in',
        subject: `${subject_table} ${subject_id}`,
        words: text.words ?? 'blanked',
        before: text.before ?? null,
        after: text.after ?? null,
      };
    });
}

/** The last backup that was made and checked, or undefined. */
export function findLastBackup(db: ReadDb): { at: string; file: string; bytes: number } | undefined {
  const row = db.one(
    db.q
      .selectFrom('activity as a')
      .innerJoin('activity_text as t', 't.activity_id', 'a.id')
      .select(['a.at', 't.body'])
      // Looking at the list and restoring stand under the same subject.
      .where('a.command', '=', 'backup/make-backup')
      .orderBy('a.id', 'desc')
      .limit(1),
  );
  if (!row?.body) return undefined;
  const { after } = JSON.parse(row.body) as { after: { file: string; bytes: number } };
  return { at: row.at, file: after.file, bytes: after.bytes };
}
