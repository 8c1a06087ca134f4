/** Writes payment terms and tax certificates, and the money side of a customer. */
import type { ReadDb, WriteDb } from '../db/query.ts';
import type { Id } from '../kernel/ids.ts';

/** Terms by code, or undefined; retired ones left out. */
export const findTerms = (db: ReadDb, code: string) =>
  db.one(db.q.selectFrom('terms').selectAll().where('code', '=', code).where('retired_on', 'is', null));

/** Terms in use, shortest first. */
export const listTerms = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('terms')
      .select(['id as termsId', 'code', 'words', 'kind', 'days'])
      .where('retired_on', 'is', null)
      .orderBy('days')
      .orderBy('id'),
  );

export const insertTerms = (
  db: WriteDb,
  terms: {
    code: string;
    words: string;
    kind: 'on_receipt' | 'net' | 'end_of_month';
    days: number;
    early: { percent: number; days: number } | null;
  },
): Id<'terms'> =>
  db.add('terms', {
    code: terms.code,
    words: terms.words,
    kind: terms.kind,
    days: terms.days,
    early_bp: (terms.early?.percent ?? null) as never,
    early_days: terms.early?.days ?? null,
  });
