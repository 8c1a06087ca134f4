/** Writes castings and condition marks. */
import type { z } from 'zod';
import { metalClassOf } from '../catalogue/compute/fit.ts';
import { spotsFromCounts } from '../catalogue/compute/spots.ts';
import { insertCastingType } from '../catalogue/store/castings.ts';
import { findIdByCode } from '../catalogue/store/codes.ts';
import { flag, type NewRow, type ReadDb, type WriteDb } from '../db/query.ts';
import { badField, notFound } from '../kernel/errors.ts';
import type { CastingId, CastingTypeId, Id, TicketId } from '../kernel/ids.ts';
import type { BasisPoints, Grams } from '../kernel/units.ts';
import { takeNumber } from '../shop/store.ts';
import { conditionLock, weightClassOf } from './compute.ts';
import type { DescribedType, NewCasting, NewMark } from './contract.ts';

type New = z.output<typeof NewCasting>;

/** @throws AppError `not-found` */
export function getCasting(db: ReadDb, id: CastingId) {
  const row = db.one(db.q.selectFrom('casting').selectAll().where('id', '=', id));
  if (!row) throw notFound('castings/no-such-casting', 'This casting');
  return row;
}
export type CastingRow = ReturnType<typeof getCasting>;

/** Castings of a ticket in their order. */
export const listCastings = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q.selectFrom('casting').selectAll().where('ticket_id', '=', ticket).orderBy('position_in_ticket').orderBy('id'),
  );

/** The ticket a tag is on, or undefined when the number was never used. */
const findTag = (db: ReadDb, tag: number) =>
  db.one(
    db.q
      .selectFrom('casting as c')
      .innerJoin('ticket as t', 't.id', 'c.ticket_id')
      .select(['c.id', 't.number', 't.id as ticketId'])
      .where('c.tag_no', '=', tag),
  );

/**
 * Add one casting with its tag.
 *
 * @param path input path of the casting, for the sentence beside a field
 * @throws AppError `invalid-input` when the tag was used, the type is not known, or nothing says what it is
 */
export function insertCasting(
  db: WriteDb,
  ticket: TicketId,
  typed: New,
  path: string,
  now: CastingRow['created_at'] | null,
): CastingRow {
  const tag = tagOf(db, typed.tagNo, path);
  const type = typeOf(db, typed, tag, path);
  const weight = typed.weight ?? usualWeight(db, type.id);
  if (
    typed.previousCastingId !== null &&
    !db.one(db.q.selectFrom('casting').select('id').where('id', '=', typed.previousCastingId))
  ) {
    throw badField(
      'castings/no-such-visit',
      `${path}.previousCastingId`,
      'The earlier visit is not here. Choose it again.',
    );
  }
  const how = typed.materialHow ?? (typed.material === 'not_known' ? 'not_known' : 'known');
  const seen = how === 'magnet' && typed.material !== 'not_known' && now !== null;
  const id = db.add('casting', {
    ticket_id: ticket,
    tag_no: tag,
    position_in_ticket: nextPosition(db, ticket),
    kind: type.kind,
    casting_type_id: type.id,
    material: typed.material,
    material_how: how,
    metal_confirmed_at: seen ? now : null,
    close_tolerance: flag(typed.closeTolerance),
    position: typed.position,
    customer_position_words: typed.customerPositionWords,
    casting_number: typed.castingNumber,
    date_code: typed.dateCode,
    serial: typed.serial,
    earlier_stamps: typed.earlierStamps,
    shop_stamp: typed.shopStamp,
    stamp_allowed: typed.stampAllowed,
    pair_no: typed.pair,
    bare: flag(typed.bare),
    came_assembled: flag(typed.cameAssembled),
    dress_words: typed.dressWords,
    own_marks: typed.ownMarks,
    weight_g: typed.weight,
    weight_class: weightClassOf(weight),
    shop_owned: flag(typed.shopOwned),
    previous_casting_id: typed.previousCastingId ?? previousVisit(db, typed.shopStamp),
  });
  return getCasting(db, id);
}

function tagOf(db: WriteDb, typed: number | null, path: string): number {
  if (typed === null) return takeNumber(db, 'tag');
  const used = findTag(db, typed);
  if (!used) return typed;
  throw badField(
    'castings/tag-used',
    `${path}.tagNo`,
    `Tag ${typed} is already used on ticket ${used.number}. Take another tag.`,
  );
}

function typeOf(db: WriteDb, typed: Pick<New, 'type' | 'described'>, tag: number, path: string) {
  if (typed.type !== undefined) {
    const id = findIdByCode(db, 'casting_type', typed.type);
    const row = id && db.one(db.q.selectFrom('casting_type').select(['id', 'kind']).where('id', '=', id));
    if (row) return row;
    throw badField(
      'castings/no-such-type',
      `${path}.type`,
      `The catalogue has no casting type "${typed.type}". Choose one, or describe it.`,
    );
  }
  if (typed.described === undefined) {
    throw badField('castings/no-type', `${path}.type`, 'Say what casting it is: choose a type, or describe it.');
  }
  return { id: insertPrivateType(db, typed.described, tag), kind: typed.described.kind };
}

/** The counts of a casting that was described: what was not typed follows from the valves. */
export function describedCounts(typed: z.output<typeof DescribedType>) {
  const c = typed.counts;
  const valves = c.intakeValves + c.exhaustValves;
  const isHead = typed.kind === 'head';
  return {
    cylinders: c.cylinders,
    intake_valves: c.intakeValves,
    exhaust_valves: c.exhaustValves,
    guides: valves,
    seats: valves,
    springs: valves,
    chambers: isHead ? c.cylinders : 0,
    camshafts: c.camshafts,
    cam_journals: c.camJournals,
    mains: c.mains,
    pins: c.pins,
    rods: c.rods,
    decks: c.decks > 0 || !(isHead || typed.kind === 'block') ? c.decks : 1,
    manifold_faces: c.manifoldFaces,
    plugs: c.plugs,
    sleeves: c.sleeves,
  };
}

/** A type made for one casting from what was typed; it never shows in the catalogue. */
function insertPrivateType(db: WriteDb, typed: z.output<typeof DescribedType>, tag: number): CastingTypeId {
  const counts = describedCounts(typed);
  return insertCastingType(db, {
    code: `of-tag-${tag}`,
    engineType: null,
    kind: typed.kind,
    name: typed.name,
    castingNumberPattern: null,
    material: null,
    camLayout: typed.camLayout,
    fuel: typed.fuel,
    private: true,
    counts,
    guideStyle: typed.guideStyle,
    seatStyle: typed.seatStyle,
    usualWeight: null,
    heavyDiesel: false,
    waterJacket: typed.waterJacket,
    spots: spotsFromCounts(typed.kind, counts),
    arrival: [],
  });
}

const usualWeight = (db: ReadDb, type: CastingTypeId): Grams | null =>
  db.one(db.q.selectFrom('casting_type').select('usual_weight_g').where('id', '=', type))?.usual_weight_g ?? null;

/** Position of the next casting of a ticket, from 1. */
export const nextPosition = (db: ReadDb, ticket: TicketId): number =>
  (db.sql<{ n: number | null }>('SELECT MAX(position_in_ticket) AS n FROM casting WHERE ticket_id = ?', ticket)[0]?.n ??
    0) + 1;

/** The last visit of a casting that carries this stamp and is out of the house. */
const previousVisit = (db: ReadDb, stamp: string | null): CastingId | null =>
  stamp === null
    ? null
    : (db.one(
        db.q
          .selectFrom('casting')
          .select('id')
          .where('shop_stamp', '=', stamp)
          .where('out_at', 'is not', null)
          .orderBy('id', 'desc')
          .limit(1),
      )?.id ?? null);

/** Other castings in the house with this stamp. */
export const sameStampHere = (db: ReadDb, stamp: string, but: CastingId): CastingRow[] =>
  db.all(
    db.q
      .selectFrom('casting')
      .selectAll()
      .where('shop_stamp', '=', stamp)
      .where('out_at', 'is', null)
      .where('id', '<>', but)
      .orderBy('id'),
  );

type Mark = z.output<typeof NewMark>;

/** Add a condition mark. @throws AppError `invalid-input` for a condition the catalogue does not know. */
export function insertMark(
  db: WriteDb,
  casting: Pick<CastingRow, 'id' | 'ticket_id'>,
  mark: Mark,
  stage: NewRow<'condition_mark'>['at_stage'],
  path: string,
): Id<'condition_mark'> {
  const kind = findIdByCode(db, 'condition_kind', mark.condition);
  if (kind === undefined)
    throw badField(
      'castings/no-such-condition',
      `${path}.condition`,
      `The catalogue has no condition "${mark.condition}". Choose one from the list.`,
    );
  return db.add('condition_mark', {
    casting_id: casting.id,
    ticket_id: casting.ticket_id,
    condition_kind_id: kind,
    seen: mark.seen,
    view: mark.view,
    x_bp: mark.x as BasisPoints | null,
    y_bp: mark.y as BasisPoints | null,
    severity: mark.severity,
    words: mark.words,
    photo_wanted: flag(mark.photoWanted),
    at_stage: stage,
  });
}

/** Why arrival conditions of a casting can no longer be changed; null while they can. */
export function lockOf(db: ReadDb, casting: Pick<CastingRow, 'id' | 'ticket_id'>): string | null {
  const ticket = db.one(db.q.selectFrom('ticket').select('signed_how').where('id', '=', casting.ticket_id));
  return conditionLock({ signedHow: ticket?.signed_how ?? null, workBegun: castingHasWork(db, casting.id) });
}

/** An operation of the casting was begun or finished. */
export const castingHasWork = (db: ReadDb, casting: CastingId): boolean =>
  db.sql(
    `SELECT 1 FROM operation o WHERE o.casting_id = ? AND (o.finished_at IS NOT NULL
     OR EXISTS (SELECT 1 FROM operation_run r WHERE r.operation_id = o.id)) LIMIT 1`,
    casting,
  ).length > 0;

/** Shop's words of live operations that this metal forbids (caustic and magnet groups), in order; empty when all fit. */
export function forbiddenBy(
  db: ReadDb,
  casting: CastingId,
  material: CastingRow['material'],
): { group: string; words: string }[] {
  if (metalClassOf(material) === 'iron') return [];
  const groups = metalClassOf(material) === 'not_known' ? ['caustic', 'magnet', 'clean'] : ['caustic', 'magnet'];
  return db.all(
    db.q
      .selectFrom('operation as o')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .innerJoin('op_group as g', 'g.operation_kind_id', 'k.id')
      .leftJoin('work_line as l', 'l.id', 'o.work_line_id')
      .select(['g.code as group', 'k.shop_words as words'])
      .where('o.casting_id', '=', casting)
      .where('o.finished_at', 'is', null)
      .where('o.not_needed_at', 'is', null)
      .where('l.withdrawn_at', 'is', null)
      .where('g.code', 'in', groups)
      .orderBy('o.position'),
  );
}
