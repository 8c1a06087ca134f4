/** Reads what a signature waits for. */
import type { z } from 'zod';
import type { Kind, Position } from '../../castings/compute.ts';
import { getCasting } from '../../castings/store.ts';
import type { ReadDb } from '../../db/query.ts';
import { placeWords } from '../../floor/compute/bench-words.ts';
import type { QueryCtx } from '../../host/implement.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, StaffId } from '../../kernel/ids.ts';
import { readNeeded } from '../../readings/store/needed.ts';
import { getShop } from '../../shop/store.ts';
import { partWord } from '../../state/compute/goods.ts';
import { ruleReasons } from '../../state/compute/reasons.ts';
import { signaturesNeeded, signaturesOf } from '../../state/compute/signed.ts';
import { readTicketNow } from '../../state/store/load-facts.ts';
import { countsApart, nextPlace, openReadings, type PieceCounts, signingStops, whyNotSigner } from '../compute.ts';
import type { SignOffSchema } from '../contract.ts';

type Page = z.output<typeof SignOffSchema>;

/** The sign-off page of a casting, with the facts it was made from. */
export function readSignOff(ctx: QueryCtx, castingId: CastingId) {
  const { db, today } = ctx;
  const row = getCasting(db, castingId);
  const now = readTicketNow(db, row.ticket_id);
  const { known } = now;
  const casting = known.castings.get(castingId);
  if (!casting) throw notFound('castings/no-such-casting', 'This casting');
  const live = known.live.filter((o) => o.castingId === castingId);
  const needed = readNeeded(
    db,
    castingId,
    live.map((o) => o.id),
    today,
  );
  const readings = openReadings(needed);
  const counts = countsApart(listPieceCounts(db, castingId));
  const stops = signingStops({ known, casting, readings, counts });
  const sameAllowed = getShop(db).same_person_signs === 1;
  const whyNot = whyNotSigner(known, castingId, ctx.session.staff, sameAllowed);
  const quantities = quantityIds(db);
  const people = names(db);
  const of = known.facts.castings.filter((c) => c.kind === casting.kind).length;
  const page: Page = {
    castingId,
    tag: casting.tag,
    version: row.version,
    ticketNumber: known.facts.ticket.number,
    placeWords: placeWords(casting.kind as Kind, casting.position as Position, casting.positionInTicket, of),
    word: now.castings.find((c) => c.id === castingId)?.word ?? 'received',
    needed: signaturesNeeded(known, castingId),
    signatures: signaturesOf(known, castingId).map((s) => ({
      place: s.place,
      by: people(s.staffId),
      at: s.at,
      samePersonOkBy: s.samePersonOkBy === null ? null : people(s.samePersonOkBy),
    })),
    nextPlace: nextPlace(known, castingId),
    notDone: live
      .filter((o) => o.finishedAt === null)
      .map((o) => ({
        operationId: o.id,
        words: o.kind.words,
        state: now.operations.find((s) => s.id === o.id)?.word ?? '',
      })),
    readings: readings.map((r) => ({ ...r, quantityId: quantities(r.quantity), spotId: r.spot as never })),
    partsNotFitted: known.facts.parts
      .filter(
        (p) => (p.castingId === null || p.castingId === castingId) && p.fittedAt === null && p.returnedAt === null,
      )
      .map((p) => ({ id: p.id, words: p.words, state: partWord(p) })),
    counts,
    photosWanted: listPhotosWanted(db, castingId),
    waivers: live.flatMap((o) =>
      ruleReasons(known, o).waived.map(({ rule, words, waiver }) => ({
        no: rule.no,
        words,
        reason: waiver?.reason ?? '',
        by: waiver?.by ?? '',
      })),
    ),
    stops: stops.map((s) => ({ ...s, rule: s.rule })),
    maySign: stops.length === 0 && whyNot === null && nextPlace(known, castingId) !== null,
    whyNot,
    samePersonAllowed: sameAllowed,
  };
  return { page, known };
}

/** The count at teardown (else at check-in) beside the last count at assembly. */
function listPieceCounts(db: ReadDb, casting: CastingId): PieceCounts[] {
  const items = db.all(
    db.q
      .selectFrom('arrival_item')
      .select(['id', 'words', 'counted'])
      .where('casting_id', '=', casting)
      .where('missing_at_arrival', '=', 0)
      .orderBy('position'),
  );
  const counts = db.all(
    db.q
      .selectFrom('piece_count as p')
      .innerJoin('arrival_item as i', 'i.id', 'p.arrival_item_id')
      .select(['p.arrival_item_id', 'p.stage', 'p.count', 'p.explained'])
      .where('i.casting_id', '=', casting)
      .orderBy('p.id'),
  );
  return items.map((item) => {
    const own = counts.filter((count) => count.arrival_item_id === item.id);
    const torn = own.findLast((count) => count.stage === 'teardown');
    const built = own.findLast((count) => count.stage === 'assembly');
    return {
      words: item.words,
      out: torn?.count ?? item.counted,
      back: built?.count ?? null,
      explained: built?.explained != null,
    };
  });
}

/** Conditions that asked for a picture and have none. */
const listPhotosWanted = (db: ReadDb, casting: CastingId): string[] =>
  db
    .all(
      db.q
        .selectFrom('condition_mark as m')
        .innerJoin('condition_kind as k', 'k.id', 'm.condition_kind_id')
        .leftJoin('photo as p', 'p.condition_mark_id', 'm.id')
        .select('k.shop_words')
        .where('m.casting_id', '=', casting)
        .where('m.photo_wanted', '=', 1)
        .where('m.removed_at', 'is', null)
        .where('p.id', 'is', null)
        .orderBy('m.id'),
    )
    .map((row) => row.shop_words);

function quantityIds(db: ReadDb) {
  const rows = db.all(db.q.selectFrom('quantity').select(['id', 'code']));
  const ids = new Map(rows.map((row) => [row.code, row.id]));
  return (code: string) => {
    const id = ids.get(code);
    if (id === undefined) throw new RangeError(`no quantity ${code}`);
    return id;
  };
}

function names(db: ReadDb) {
  const rows = db.all(db.q.selectFrom('staff').select(['id', 'initials', 'name']));
  return (staff: StaffId) => {
    const found = rows.find((row) => row.id === staff);
    return { staff, initials: found?.initials ?? '', name: found?.name ?? '' };
  };
}
