/** What a finding usually says and leads to. */
import type { ReadDb } from '../../db/query.ts';
import { badField } from '../../kernel/errors.ts';
import type { Id } from '../../kernel/ids.ts';

/** @throws AppError `invalid-input` `floor/no-such-finding` */
export function findingKind(db: ReadDb, id: Id<'finding_kind'>) {
  const row = db.one(db.q.selectFrom('finding_kind').select('shop_words').where('id', '=', id));
  if (!row)
    throw badField('floor/no-such-finding', 'findingKindId', 'This finding is not in the list. Choose another.');
  const offers = db.all(
    db.q
      .selectFrom('finding_offer as o')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .select(['k.code', 'k.shop_words', 'o.also_needed'])
      .where('o.finding_kind_id', '=', id)
      .where('k.retired_on', 'is', null)
      .orderBy('o.position'),
  );
  return {
    words: row.shop_words,
    offers: offers.map((o) => ({ kindCode: o.code, words: o.shop_words, alsoNeeded: o.also_needed === 1 })),
  };
}

/** @throws AppError `invalid-input` `floor/no-such-condition` */
export function conditionWords(db: ReadDb, id: Id<'condition_kind'>): string {
  const row = db.one(db.q.selectFrom('condition_kind').select('shop_words').where('id', '=', id));
  if (!row) {
    throw badField('floor/no-such-condition', 'conditionKindId', 'This condition is not in the list. Choose another.');
  }
  return row.shop_words;
}
