/** Proves that the activity of a workspace is whole. */
import type { ReadDb } from '../db/query.ts';
import { type ChainFields, FIRST_HASH, hashOf, textDigest } from './activity.ts';

type Row = ChainFields & Readonly<{ id: number; hash: string; salt: string | null; body: string | null }>;

const PAGE = 2000;

/** The first row whose hash, or whose text where it is still there, does not agree; undefined when the chain is whole. */
export function findBrokenLink(db: ReadDb): number | undefined {
  let previous = FIRST_HASH;
  let after = 0;
  for (;;) {
    const rows = db.sql<Row>(
      'SELECT a.*, t.salt, t.body FROM activity a LEFT JOIN activity_text t ON t.activity_id = a.id WHERE a.id > ? ORDER BY a.id LIMIT ?',
      after,
      PAGE,
    );
    for (const row of rows) {
      const textAgrees = row.body === null || textDigest(row.salt ?? '', row.body) === row.text_digest;
      if (row.previous_hash !== previous || hashOf(row) !== row.hash || !textAgrees) return row.id;
      previous = row.hash;
      after = row.id;
    }
    if (rows.length < PAGE) return undefined;
  }
}
