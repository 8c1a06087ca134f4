/**
 * Two people on one row, seen from the host: fields nobody else touched are saved, fields both touched are shown both.
 *
 * What changed since the version a person saw is read from activity, so nothing is kept twice.
 */
import type { ReadDb } from '../db/query.ts';
import { AppError } from '../kernel/errors.ts';
import { type FieldChanges, type FieldConflict, mergeFields, type TakenOver } from '../kernel/field-changes.ts';
import type { TicketId } from '../kernel/ids.ts';
import type { ActivityLine } from './implement.ts';

type Asked = Readonly<{
  table: string;
  id: number;
  seenVersion: number;
  /** What stands there now, under the names the command uses. */
  now: Readonly<Record<string, unknown>>;
  changes: FieldChanges;
  /** Field name to what a person calls it: "the notes". */
  names: Readonly<Record<string, string>>;
}>;

type Change = Readonly<{ version: number; fields: Readonly<Record<string, unknown>>; by: string; at: string }>;

/**
 * @returns the fields to write (maybe none) and those of others that stay.
 * @throws AppError `conflict` `host/changed-meanwhile` with both texts in `facts.conflicts` when a field was touched by both.
 */
export function mergeOrRefuse(
  db: ReadDb,
  asked: Asked,
): Readonly<{ changed: Record<string, unknown>; takenOver: TakenOver[] }> {
  const since = changesSince(db, asked.table, asked.id, asked.seenVersion);
  const { changed, conflicts } = mergeFields(asked.now, asked.changes);
  if (conflicts.length > 0) throw refusal(asked, conflicts, since);
  return { changed: { ...changed }, takenOver: takenOver(asked, since) };
}

function takenOver(asked: Asked, since: readonly Change[]): TakenOver[] {
  const last = new Map<string, TakenOver>();
  for (const change of since) {
    for (const [field, value] of Object.entries(change.fields)) {
      if (asked.changes[field] !== undefined) continue;
      last.set(field, { field, words: asked.names[field] ?? field, value, by: change.by, at: change.at });
    }
  }
  return [...last.values()];
}

function refusal(asked: Asked, conflicts: readonly FieldConflict[], since: readonly Change[]): AppError {
  const told = conflicts.map((conflict) => {
    const change = [...since].reverse().find((one) => Object.hasOwn(one.fields, conflict.field));
    return {
      ...conflict,
      words: asked.names[conflict.field] ?? conflict.field,
      by: change?.by ?? 'Somebody',
      at: change?.at ?? null,
    };
  });
  const first = told[0];
  const message = `${first?.by ?? 'Somebody'} changed ${told.map((one) => one.words).join(', ')} while you had it open. Your text is kept; look and save again.`;
  const fields = Object.fromEntries(
    told.map((one) => [`changes.${one.field}`, `${one.by} wrote: ${textOf(one.now)}. Yours: ${textOf(one.yours)}.`]),
  );
  return new AppError('conflict', 'host/changed-meanwhile', message, {
    fields,
    facts: { conflicts: told, version: asked.now.version },
  });
}

const textOf = (value: unknown): string =>
  value === null || value === undefined || value === ''
    ? 'nothing'
    : typeof value === 'string'
      ? value
      : JSON.stringify(value);

/** Field changes of a row since a version, oldest first; made by commands that write `changeLine`. */
function changesSince(db: ReadDb, table: string, id: number, version: number): Change[] {
  const rows = db.all(
    db.q
      .selectFrom('activity as a')
      .leftJoin('activity_text as t', 't.activity_id', 'a.id')
      .leftJoin('staff as s', 's.id', 'a.staff_id')
      .select(['a.at', 's.name as by', 't.body'])
      .where('a.subject_table', '=', table)
      .where('a.subject_id', '=', id)
      .orderBy('a.id', 'desc')
      .limit(200),
  );
  return rows
    .flatMap(({ at, by, body }) => {
      const after = body === null ? null : (JSON.parse(body) as { after?: Partial<Change> | null }).after;
      if (!after?.fields || typeof after.version !== 'number' || after.version <= version) return [];
      return [{ version: after.version, fields: after.fields, by: by ?? 'Somebody', at }];
    })
    .reverse();
}

/** The activity line of a field-wise change; `changesSince` reads it back. */
export function changeLine(line: {
  subject: readonly [string, number];
  words: string;
  ticket?: TicketId | null;
  before: Readonly<Record<string, unknown>>;
  fields: Readonly<Record<string, unknown>>;
  version: number;
}): ActivityLine {
  const before = Object.fromEntries(Object.keys(line.fields).map((field) => [field, line.before[field] ?? null]));
  return {
    subject: line.subject,
    words: line.words,
    ticket: line.ticket,
    before: { fields: before },
    after: { version: line.version, fields: line.fields },
  };
}
