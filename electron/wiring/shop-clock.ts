/**
 * The clock of a workspace: the computer's, except in the practice shop. There it goes on from Friday 14 May 2027, the day its
 * story ends on, or from the last thing done, whichever is later, so that its promises stay today's and tomorrow's.
 */

import type { Database } from 'better-sqlite3';
import { readDb } from '#core/db/query.ts';

const STORY_ENDS = '2027-05-14T13:41:00.000Z';

/** A clock that runs at the computer's pace. */
export function clockOf(sqlite: Database, now: () => number = Date.now): () => Date {
  const db = readDb(sqlite);
  const practice = db.one(db.q.selectFrom('shop_setting').select('practice'))?.practice === 1;
  if (!practice) return () => new Date(now());
  const last = db.one(db.q.selectFrom('activity').select('at').orderBy('id', 'desc').limit(1))?.at ?? '';
  const from = Date.parse(last > STORY_ENDS ? last : STORY_ENDS);
  const opened = now();
  return () => new Date(from + (now() - opened));
}
