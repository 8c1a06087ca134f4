/** Gathers everything measured and known of one casting, for the computes. A dozen short reads, all by index. */
import { GASKETS } from '../../catalogue/compute/limits-by-word.ts';
import { engineLabel } from '../../catalogue/compute/spot-labels.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, SpotId } from '../../kernel/ids.ts';
import type { Engine, Facts, Spot } from '../compute/model.ts';
import { listEarlierCuts, listPairCuts } from './cuts.ts';
import { listQuantities, listShims, listToolRows } from './known.ts';
import { listChoices, listLimitsFor } from './limits.ts';
import { listDecisions, listReadings } from './readings.ts';

type CastingRow = NonNullable<ReturnType<typeof findCasting>>;

function findCasting(db: ReadDb, casting: CastingId) {
  return db.one(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
      .innerJoin('ticket as k', 'k.id', 'c.ticket_id')
      .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .select([
        'c.id',
        'c.ticket_id',
        'c.tag_no',
        'c.kind',
        'c.material',
        'c.position',
        't.id as type_id',
        't.code as type_code',
        't.name as type_name',
        't.engine_type_id',
        'e.numbering',
        'e.words as engine_words',
        'e.cylinders',
        'e.layout',
        'e.bank_lean_udeg',
        'e.face_lean_udeg',
        'e.bore_nm',
        'e.stroke_nm',
        't.cam_layout',
        't.fuel',
        't.usual_weight_g',
        'c.weight_g',
        'c.pair_no',
        'c.previous_casting_id',
        'k.certified',
        'k.valve_lift_nm',
        'k.gasket',
        'k.price_day',
      ])
      .where('c.id', '=', casting),
  );
}

/**
 * Everything the sheets of a casting are made from.
 *
 * @throws AppError `not-found` `readings/no-such-casting`.
 */
export function readFacts(db: ReadDb, casting: CastingId, today: Day): Facts {
  const row = findCasting(db, casting);
  if (!row) throw notFound('readings/no-such-casting', 'This casting');
  const shop = db.one(db.q.selectFrom('shop_setting').select(['units', 'guard']));
  return {
    casting: {
      id: row.id,
      ticket: row.ticket_id,
      tag: row.tag_no,
      kind: row.kind,
      words: row.type_name,
      material: row.material,
      position: row.position,
      typeCode: row.type_code,
      camLayout: row.cam_layout,
      fuel: row.fuel,
      weight: row.weight_g ?? row.usual_weight_g,
    },
    engine: engineOf(row),
    pair: row.pair_no === null ? [] : listPairCuts(db, { casting: row.id, ticket: row.ticket_id, pair: row.pair_no }),
    earlier: row.previous_casting_id === null ? [] : listEarlierCuts(db, row.previous_casting_id),
    quantities: listQuantities(db),
    spots: listSpots(db, row),
    readings: listReadings(db, casting),
    limits: listLimitsFor(db, {
      casting,
      ticket: row.ticket_id,
      castingType: row.type_id,
      engineType: row.engine_type_id,
      day: row.price_day as Day,
    }),
    choices: listChoices(db, casting),
    decisions: listDecisions(db, casting),
    tools: listToolRows(db, today).map((it) => it.tool),
    shims: listShims(db),
    valveLift: row.valve_lift_nm,
    said: saidAt(row),
    system: shop?.units ?? 'inch',
    guard: shop?.guard === 1 || row.certified === 1,
    lockedSince: findSignedAt(db, casting),
  };
}

/** What the counter was told, as the bench calls it. */
function saidAt({ gasket }: CastingRow): NonNullable<Facts['said']> {
  return gasket === 'mls' || gasket === 'composition' ? { 'gasket-kind': GASKETS[gasket] } : {};
}

function engineOf(row: CastingRow): Engine | null {
  if (row.engine_words === null || row.cylinders === null || row.layout === null) return null;
  return {
    words: row.engine_words,
    cylinders: row.cylinders,
    layout: row.layout,
    bankLean: row.bank_lean_udeg,
    faceLean: row.face_lean_udeg,
    bore: row.bore_nm,
    stroke: row.stroke_nm,
  };
}

/** Places in bench order, called as the engine counts them. */
function listSpots(db: ReadDb, casting: CastingRow): Spot[] {
  const rows = db.all(
    db.q
      .selectFrom('spot')
      .select(['id', 'kind', 'label', 'bench_order', 'row', 'bank', 'cylinder', 'side'])
      .where('casting_type_id', '=', casting.type_id)
      .orderBy('kind')
      .orderBy('row')
      .orderBy('bench_order'),
  );
  return rows.map((row) => ({
    id: row.id as SpotId,
    kind: row.kind,
    label: engineLabel(row, casting, casting.numbering),
    benchOrder: row.bench_order,
    row: row.row,
    bank: row.bank,
    cylinder: row.cylinder,
    side: row.side,
  }));
}

/** Moment of the first signature that was not reopened; null while readings may be taken. */
function findSignedAt(db: ReadDb, casting: CastingId): Moment | null {
  const signed = db.one(
    db.q
      .selectFrom('sign_off as s')
      .leftJoin('sign_off_reopened as r', 'r.sign_off_id', 's.id')
      .select('s.created_at')
      .where('s.casting_id', '=', casting)
      .where('r.id', 'is', null)
      .orderBy('s.id'),
  );
  return signed?.created_at ?? null;
}
