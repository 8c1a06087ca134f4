/**
 * Who did what, when, from where: append only, each row carrying the hash of the one before.
 *
 * The personal text of a row (words, input, before, after) lies beside the chain in `activity_text` and only its digest,
 * salted, is part of the row. A person's text can so be blanked by law without breaking the chain.
 */
import { createHash } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import type { Entry } from '../kernel/contract.ts';
import type { Moment } from '../kernel/days.ts';
import type { Host } from './host.ts';
import type { ActivityLine } from './implement.ts';
import type { Session } from './session.ts';

type Written = Readonly<{
  lines: readonly ActivityLine[];
  session: Session;
  now: Moment;
  command: string;
  input: unknown;
  entry: Entry;
}>;

/** What is hashed, in this order, one per line of text; `-` for empty. */
export type ChainFields = Readonly<{
  at: string;
  staff_id: number | null;
  device_id: number | null;
  came_from: string;
  app_version: string;
  command: string;
  ticket_id: number | null;
  subject_table: string;
  subject_id: number;
  text_digest: string;
  previous_hash: string;
}>;

export const FIRST_HASH = '0'.repeat(64);
const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** The digest of a row's personal text. */
export const textDigest = (salt: string, text: string): string => sha256(salt + text);

/** The hash of an activity row. */
export const hashOf = (row: ChainFields): string =>
  sha256(
    [
      row.at,
      row.staff_id ?? '-',
      row.device_id ?? '-',
      row.came_from,
      row.app_version,
      row.command,
      row.ticket_id ?? '-',
      row.subject_table,
      row.subject_id,
      row.text_digest,
      row.previous_hash,
    ].join('\n'),
  );

/** Write the lines of one command, in order. */
export function writeActivity(host: Pick<Host, 'sqlite' | 'appVersion' | 'secret'>, written: Written): void {
  const { sqlite } = host;
  const last = sqlite.prepare('SELECT hash FROM activity ORDER BY id DESC LIMIT 1').get() as
    | { hash: string }
    | undefined;
  let previous = last?.hash ?? FIRST_HASH;
  const input = JSON.stringify(withoutSecrets(written.input, written.entry.secret ?? []));
  for (const [index, line] of written.lines.entries()) {
    const salt = host.secret().slice(0, 32);
    const text = JSON.stringify({
      words: line.words,
      input: index === 0 ? input : null,
      before: line.before ?? null,
      after: line.after ?? null,
    });
    const fields: ChainFields = {
      at: written.now,
      staff_id: written.session.staff,
      device_id: written.session.device,
      came_from: written.session.from,
      app_version: host.appVersion,
      command: written.command,
      ticket_id: line.ticket ?? null,
      subject_table: line.subject[0],
      subject_id: line.subject[1],
      text_digest: textDigest(salt, text),
      previous_hash: previous,
    };
    previous = hashOf(fields);
    insertLine(sqlite, fields, previous, salt, text);
  }
}

function insertLine(sqlite: Database, fields: ChainFields, hash: string, salt: string, text: string): void {
  const names = [...Object.keys(fields), 'hash'];
  const id = sqlite
    .prepare(`INSERT INTO activity (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`)
    .run(...Object.values(fields), hash).lastInsertRowid;
  sqlite.prepare('INSERT INTO activity_text (activity_id, salt, body) VALUES (?, ?, ?)').run(id, salt, text);
}

function withoutSecrets(input: unknown, secret: readonly string[]): unknown {
  if (secret.length === 0 || typeof input !== 'object' || input === null) return input;
  return Object.fromEntries(
    Object.entries(input).map(([key, value]) => [key, secret.includes(key) ? '(secret)' : value]),
  );
}
