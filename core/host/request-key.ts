/** A command sent twice with one key is answered once: a tablet that lost the reply may simply send again. */
import type { Database } from 'better-sqlite3';
import type { WriteDb } from '../db/query.ts';
import { AppError } from '../kernel/errors.ts';
import type { Reply, Request } from './reply.ts';
import type { Session } from './session.ts';

/** The kept answer of this key, or undefined. @throws AppError when the key was used for another request or by another person. */
export function findReply(sqlite: Database, request: Request, session: Session): Reply | undefined {
  if (!request.key) return undefined;
  const row = sqlite.prepare('SELECT name, created_by, reply FROM request_key WHERE key = ?').get(request.key) as
    | { name: string; created_by: number | null; reply: string }
    | undefined;
  if (!row) return undefined;
  if (row.name !== request.name || row.created_by !== session.staff) {
    throw new AppError('conflict', 'host/key-used', 'This was already sent as something else. Load the screen again.');
  }
  return JSON.parse(row.reply) as Reply;
}

/** Keep the answer in the command's own transaction. */
export function keepReply(db: WriteDb, request: Request, session: Session, reply: Reply): void {
  if (!request.key) return;
  db.add('request_key', {
    key: request.key,
    device_id: session.device,
    name: request.name,
    reply: JSON.stringify(reply),
  });
}
