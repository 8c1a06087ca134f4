/** What the requests about castings do that need no other feature: marks and look-ups. */
import { implement } from '../host/implement.ts';
import { notFound, ruleBroken } from '../kernel/errors.ts';
import { KIND_WORDS } from './compute.ts';
import { castingsContract } from './contract.ts';
import { findTagged, listVisits } from './store/find.ts';
import * as store from './store.ts';

export const castings = implement(castingsContract, {
  'castings/mark-condition': {
    run({ castingId, mark }, { db }) {
      const casting = store.getCasting(db, castingId);
      // A signed list never changes: what is seen later stands beside it.
      const stage = store.lockOf(db, casting) === null ? 'arrival' : 'finding';
      const markId = store.insertMark(db, casting, mark, stage, 'mark');
      const kind = db.one(
        db.q
          .selectFrom('condition_kind as c')
          .leftJoin('finding_kind as f', 'f.id', 'c.suggests_finding_id')
          .select(['c.shop_words as words', 'f.shop_words as suggests'])
          .where('c.code', '=', mark.condition),
      );
      return {
        output: { markId, atStage: stage, suggests: kind?.suggests ?? null },
        activity: [
          {
            subject: ['condition_mark', markId],
            ticket: casting.ticket_id,
            words: `Marked ${casting.tag_no}: ${kind?.words ?? mark.condition}`,
            after: mark,
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'castings/remove-mark': {
    run({ markId }, { db, now }) {
      const mark = db.one(db.q.selectFrom('condition_mark').selectAll().where('id', '=', markId));
      if (!mark || mark.removed_at !== null) throw notFound('castings/no-such-mark', 'This mark');
      const casting = store.getCasting(db, mark.casting_id);
      const lock = store.lockOf(db, casting);
      if (mark.at_stage === 'arrival' && lock !== null) throw ruleBroken('castings/conditions-locked', lock);
      db.set('condition_mark', markId, { removed_at: now });
      return {
        output: {},
        activity: [
          {
            subject: ['condition_mark', markId],
            ticket: casting.ticket_id,
            words: `Removed a mark from ${casting.tag_no}`,
            before: { words: mark.words, view: mark.view },
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'castings/find-by-tag': {
    run({ text }, { db }) {
      const found = findTagged(db, text);
      return {
        found,
        sentence: found ? found.words : `Nothing carries ${text.trim() || 'an empty tag'}. Check the number.`,
      };
    },
  },
  'castings/list-visits': {
    run(of, { db }) {
      const visits = listVisits(db, of);
      return {
        visits: visits.map(({ kind, ...visit }) => ({
          ...visit,
          kindWords: KIND_WORDS[kind],
          inHouse: visit.outAt === null,
        })),
      };
    },
  },
});
