/** What the requests that end the work on a casting do. */
import { getCasting } from '../castings/store.ts';
import { insertFact, listPair } from '../floor/store.ts';
import { type Ctx, implement, personOf, type QueryCtx } from '../host/implement.ts';
import { AppError, ruleBroken } from '../kernel/errors.ts';
import type { CastingId, TicketId } from '../kernel/ids.ts';
import { readSheets } from '../readings/store/needed.ts';
import { getShop } from '../shop/store.ts';
import { signaturesOf } from '../state/compute/signed.ts';
import type { CastingWord } from '../state/compute/words.ts';
import { UNWORKED } from '../state/store/job-facts.ts';
import { readTicketNow } from '../state/store/load-facts.ts';
import { workedOn } from './compute.ts';
import { signOffContract } from './contract.ts';
import { decide } from './handlers/decisions.ts';
import { readSignOff } from './handlers/read.ts';

export const signOff = implement(signOffContract, {
  'castings/get-sign-off': { run: ({ castingId }, ctx) => readSignOff(ctx, castingId).page },
  'castings/sign-off-casting': {
    run(input, ctx) {
      const { db } = ctx;
      const signer = personOf(ctx);
      const casting = getCasting(db, input.castingId);
      refuseStale(casting.version, input.seenVersion);
      if (input.decisions.length > 0) decide(ctx, casting, input.decisions);
      const { page, known } = readSignOff(ctx, casting.id);
      refuseUnready(page, input.place);
      const sheets = readSheets(db, casting.id, ctx.today);
      const id = db.add('sign_off', {
        casting_id: casting.id,
        ticket_id: casting.ticket_id,
        place: input.place,
        staff_id: signer,
        same_person_ok_by: isSame(known, casting.id, signer) ? ownerOf(ctx) : null,
        table_json: JSON.stringify({ sheets, readings: page.readings, waivers: page.waivers }),
      });
      const word = wordOf(ctx, casting.ticket_id, casting.id);
      const more = page.needed === 2 && input.place === 'first';
      const said = `${casting.tag_no} signed${more ? ', a second person signs too' : ' off'}.`;
      return {
        output: { words: said, word, signOffId: id, place: input.place, more },
        activity: [
          {
            subject: ['sign_off', id],
            ticket: casting.ticket_id,
            words: `Signed ${casting.tag_no}, ${input.place} place`,
            after: { decisions: input.decisions.length },
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'castings/reopen-casting': {
    run({ castingId, reason }, ctx) {
      const { db } = ctx;
      const casting = getCasting(db, castingId);
      if (casting.out_at !== null) {
        throw ruleBroken('sign-off/out', 'This casting has left the shop. Check it in again as a comeback.');
      }
      const standing = signaturesOf(readTicketNow(db, casting.ticket_id).known, castingId);
      if (standing.length === 0) throw ruleBroken('sign-off/not-signed', 'This casting is not signed off.');
      for (const { id } of standing) {
        db.add('sign_off_reopened', { sign_off_id: id as never, ticket_id: casting.ticket_id, reason });
      }
      return {
        output: {
          words: `${casting.tag_no} is open again. The signatures stay readable with the reason.`,
          word: wordOf(ctx, casting.ticket_id, castingId),
        },
        activity: [
          {
            subject: ['casting', castingId],
            ticket: casting.ticket_id,
            words: `Reopened ${casting.tag_no}: ${reason}`,
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'castings/declare-scrap': {
    run({ castingId, seenVersion, why }, ctx) {
      const { db, now } = ctx;
      const casting = getCasting(db, castingId);
      if (casting.out_at !== null) throw ruleBroken('sign-off/out', 'This casting has left the shop.');
      if (casting.scrap_at !== null)
        throw ruleBroken('sign-off/scrap-already', 'This casting was declared scrap before.');
      db.step('casting', castingId, seenVersion, { scrap_at: now, scrap_why: why });
      const otherOne = listPair(db, castingId).map((other) => ({
        castingId: other.id,
        tag: other.tag_no,
        question: `${other.tag_no} is the other one of the pair: hold it too, or go on?`,
      }));
      return {
        output: {
          words: `${casting.tag_no} is scrap for us. It waits for the customer's answer.`,
          word: wordOf(ctx, casting.ticket_id, castingId),
          otherOne,
        },
        activity: [
          {
            subject: ['casting', castingId],
            ticket: casting.ticket_id,
            words: `Declared ${casting.tag_no} scrap: ${why}`,
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'castings/return-unworked': {
    run({ castingId, why }, ctx) {
      const { db } = ctx;
      const casting = getCasting(db, castingId);
      const own = readTicketNow(db, casting.ticket_id).castings.find((c) => c.id === castingId);
      if (own?.operations.some((o) => o.begun)) {
        throw ruleBroken(
          'sign-off/worked-on',
          'Work was done on it. Mark the rest as not needed and have it signed off; then it can leave.',
        );
      }
      insertFact(db, { casting_id: castingId, ticket_id: casting.ticket_id, fact: UNWORKED, holds: 1, words: why });
      return {
        output: { words: `${casting.tag_no} goes home unworked.`, word: wordOf(ctx, casting.ticket_id, castingId) },
        activity: [
          {
            subject: ['casting', castingId],
            ticket: casting.ticket_id,
            words: `${casting.tag_no} goes home unworked: ${why}`,
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
});

/** @throws AppError `conflict` when the casting was changed since the person looked. */
function refuseStale(version: number, seen: number): void {
  if (version === seen) return;
  throw new AppError(
    'conflict',
    'host/changed-meanwhile',
    'Somebody else changed this casting while you had it open. Look at the new state, then sign.',
  );
}

type Page = ReturnType<typeof readSignOff>['page'];

function refuseUnready(page: Page, place: 'first' | 'second'): void {
  if (page.nextPlace === null) throw ruleBroken('sign-off/signed', `${page.tag} is signed off already.`);
  if (page.nextPlace !== place) {
    throw ruleBroken('sign-off/place', `The ${page.nextPlace} place is signed now. Load the page again.`);
  }
  const [first] = page.stops;
  if (first) {
    throw ruleBroken('sign-off/not-ready', first.words, { facts: { stops: page.stops } });
  }
  if (page.whyNot !== null) throw ruleBroken('sign-off/same-person', page.whyNot);
}

type Known = ReturnType<typeof readSignOff>['known'];

const isSame = (known: Known, casting: CastingId, staff: ReturnType<typeof personOf>): boolean =>
  workedOn(known, casting, staff) || signaturesOf(known, casting).some((s) => s.staffId === staff);

/** The owner whose setting lets one person sign their own work; the sheet prints it. */
function ownerOf({ db, session }: Ctx) {
  if (getShop(db).same_person_signs !== 1) return null;
  const owner = db.one(
    db.q
      .selectFrom('staff_role as r')
      .innerJoin('staff as s', 's.id', 'r.staff_id')
      .select('r.staff_id')
      .where('r.role', '=', 'owner')
      .where('r.ended_at', 'is', null)
      .where('s.retired_on', 'is', null)
      .orderBy('r.staff_id'),
  );
  return owner?.staff_id ?? session.staff;
}

const wordOf = ({ db }: Pick<QueryCtx, 'db'>, ticket: TicketId, casting: CastingId): CastingWord =>
  readTicketNow(db, ticket).castings.find((c) => c.id === casting)?.word ?? 'received';
