/** Castings as they came: identity, pieces, bags, marks, place. */
import type { z } from 'zod';
import {
  conditionLock,
  KIND_WORDS,
  metalView,
  metalWarning,
  positionWords,
  severityWords,
  titleOf,
  weightWords,
} from '../../castings/compute.ts';
import type { CastingIdentity, MarkView } from '../../castings/contract.ts';
import type { CastingRow } from '../../castings/store.ts';
import type { ReadDb } from '../../db/query.ts';
import {
  CONTAINER_WORDS,
  countWords,
  FATE_WORDS,
  isShort,
  MIX_WORDS,
  OWNER_WORDS,
  STAGE_WORDS,
} from '../../intake/compute.ts';
import type { ContainerView, ItemView } from '../../intake/contract.ts';
import type { FormatSettings } from '../../kernel/format.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { placeOfCasting, placeOfContainer } from '../store.ts';

export type Identity = z.output<typeof CastingIdentity>;
type Container = z.output<typeof ContainerView>;
type Item = z.output<typeof ItemView>;
type Mark = z.output<typeof MarkView>;

/** Every casting of a ticket with what came with it, in the order of the ticket, and the containers of the ticket itself. */
export function readIdentities(db: ReadDb, ticket: TicketId, settings: FormatSettings) {
  const head = db.one(db.q.selectFrom('ticket').select(['number', 'signed_how']).where('id', '=', ticket));
  const rows = castingRows(db, ticket);
  const containers = readContainers(db, ticket);
  const items = readItems(db, ticket, containers);
  const marks = readMarks(db, ticket);
  const begun = new Set(begunCastings(db, ticket));
  const castings = rows.map((row): Identity => {
    const alike = rows.filter((one) => one.kind === row.kind);
    const own = items.filter((one) => one.castingId === row.id);
    const stand = placeOfCasting(db, row.id);
    const lockWords = conditionLock({ signedHow: head?.signed_how ?? null, workBegun: begun.has(row.id) });
    return {
      ...plainOf(row),
      ticketId: ticket,
      ticketNumber: head?.number ?? 0,
      title: titleOf(row.kind, alike.indexOf(row) + 1, alike.length, row.position),
      weightWords: weightWords(row.weight_g ?? row.usual_weight_g, row.weight_class, settings),
      place: stand?.code ?? null,
      placePurpose: stand?.purpose ?? null,
      conditionsLocked: lockWords !== null,
      lockWords,
      items: own,
      countedWords: `${own.filter((one) => one.counted !== null || one.missing).length} of ${own.length} lines counted`,
      containers: containers.filter((one) => one.castingId === row.id),
      marks: marks.filter((one) => one.castingId === row.id),
    };
  });
  return { castings, containers: containers.filter((one) => one.castingId === null) };
}

const castingRows = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
      .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .leftJoin('staff as s', 's.id', 'c.metal_confirmed_by')
      .leftJoin('casting as p', 'p.id', 'c.previous_casting_id')
      .selectAll('c')
      .select([
        't.code as type_code',
        't.name as type_name',
        't.private as type_private',
        't.usual_weight_g',
        'e.words as engine',
        's.name as confirmed_by',
        'p.tag_no as previous_tag',
      ])
      .where('c.ticket_id', '=', ticket)
      .orderBy('c.position_in_ticket')
      .orderBy('c.id'),
  );
type Row = ReturnType<typeof castingRows>[number];

/** What needs no other row. */
const plainOf = (row: Row) => ({
  castingId: row.id,
  version: row.version,
  tagNo: row.tag_no,
  kind: row.kind,
  kindWords: KIND_WORDS[row.kind],
  typeId: row.casting_type_id,
  typeCode: row.type_code,
  typeName: row.type_name,
  typePrivate: row.type_private === 1,
  engineWords: row.engine,
  material: row.material,
  metal: metalView(row.material, row.metal_confirmed_at),
  metalWarning: metalWarning(row.material),
  materialHow: row.material_how,
  metalConfirmedAt: row.metal_confirmed_at,
  metalConfirmedBy: row.confirmed_by,
  closeTolerance: row.close_tolerance === 1,
  position: row.position,
  positionWords: positionWords(row.position),
  customerPositionWords: row.customer_position_words,
  positionInTicket: row.position_in_ticket,
  castingNumber: row.casting_number,
  dateCode: row.date_code,
  serial: row.serial,
  earlierStamps: row.earlier_stamps,
  shopStamp: row.shop_stamp,
  stampAllowed: row.stamp_allowed,
  pair: row.pair_no,
  bare: row.bare === 1,
  cameAssembled: row.came_assembled === 1,
  dressWords: row.dress_words,
  ownMarks: row.own_marks,
  weight: row.weight_g,
  weightClass: row.weight_class,
  shopOwned: row.shop_owned === 1,
  previous:
    row.previous_casting_id === null ? null : { castingId: row.previous_casting_id, tagNo: row.previous_tag ?? 0 },
  scrapAt: row.scrap_at,
  outAt: row.out_at,
});

const begunCastings = (db: ReadDb, ticket: TicketId): CastingRow['id'][] =>
  db
    .sql<{ id: CastingRow['id'] }>(
      `SELECT DISTINCT o.casting_id AS id FROM operation o WHERE o.ticket_id = ? AND (o.finished_at IS NOT NULL
       OR EXISTS (SELECT 1 FROM operation_run r WHERE r.operation_id = o.id))`,
      ticket,
    )
    .map((row) => row.id);

/** All containers of a ticket by label, with where each stands. */
function readContainers(db: ReadDb, ticket: TicketId): Container[] {
  return db.all(db.q.selectFrom('container').selectAll().where('ticket_id', '=', ticket).orderBy('id')).map((row) => {
    const stand = placeOfContainer(db, row.id);
    return {
      containerId: row.id,
      castingId: row.casting_id,
      label: row.label,
      kind: row.kind,
      kindWords: CONTAINER_WORDS[row.kind],
      contents: row.contents,
      count: row.count,
      ownerMark: row.owner_mark,
      ownerWords: OWNER_WORDS[row.owner_mark],
      spotWords: row.spot_words,
      sealedAt: row.sealed_at,
      place: stand?.code ?? null,
      placePurpose: stand?.purpose ?? null,
      outAt: row.out_at,
    };
  });
}

function readItems(db: ReadDb, ticket: TicketId, containers: readonly Container[]): Item[] {
  const rows = db.all(
    db.q.selectFrom('arrival_item').selectAll().where('ticket_id', '=', ticket).orderBy('position').orderBy('id'),
  );
  const counts = Map.groupBy(
    db.all(
      db.q
        .selectFrom('piece_count as p')
        .innerJoin('arrival_item as i', 'i.id', 'p.arrival_item_id')
        .leftJoin('staff as s', 's.id', 'p.created_by')
        .select([
          'p.arrival_item_id as item',
          'p.stage',
          'p.count',
          'p.explained',
          'p.created_at as at',
          's.name as by',
        ])
        .where('i.ticket_id', '=', ticket)
        .orderBy('p.id'),
    ),
    (row) => row.item,
  );
  const fates = new Map(
    db
      .all(
        db.q
          .selectFrom('item_fate as f')
          .innerJoin('arrival_item as i', 'i.id', 'f.arrival_item_id')
          .select(['f.arrival_item_id as item', 'f.fate'])
          .where('i.ticket_id', '=', ticket)
          .orderBy('f.id'),
      )
      .map((row) => [row.item, row.fate]),
  );
  return rows.map((row) => {
    const own = counts.get(row.id) ?? [];
    const fate = fates.get(row.id) ?? null;
    const counted = { expected: row.expected, counted: row.counted, missing: row.missing_at_arrival === 1 };
    return {
      itemId: row.id,
      castingId: row.casting_id,
      words: row.words,
      ...counted,
      countNow: own.at(-1)?.count ?? row.counted,
      counts: own.map(({ item: _, by, ...count }) => ({
        ...count,
        by: by ?? '',
        stageWords: STAGE_WORDS[count.stage],
      })),
      containerId: row.container_id,
      containerLabel: containers.find((one) => one.containerId === row.container_id)?.label ?? null,
      mixRule: row.mix_rule,
      mixWords: MIX_WORDS[row.mix_rule],
      removeBeforeWash: row.remove_before_wash === 1,
      removedAt: row.removed_at,
      inside: row.inside === 1,
      customersOwn: row.customers_own === 1,
      numbersSeen: row.numbers_seen === 1,
      arrowsSeen: row.arrows_seen === 1,
      boltedInPlace: row.bolted_in_place === 1,
      more: row.words_more,
      fate,
      fateWords: fate === null ? null : FATE_WORDS[fate],
      countWords: countWords(counted),
      short: isShort(counted),
    };
  });
}

function readMarks(db: ReadDb, ticket: TicketId): Mark[] {
  const photos = new Map(
    db
      .sql<{ mark: number; n: number }>(
        `SELECT condition_mark_id AS mark, COUNT(*) AS n FROM photo WHERE ticket_id = ? AND condition_mark_id IS NOT NULL
         AND NOT EXISTS (SELECT 1 FROM photo_hidden h WHERE h.photo_id = photo.id) GROUP BY condition_mark_id`,
        ticket,
      )
      .map((row) => [row.mark, row.n]),
  );
  const rows = db.all(
    db.q
      .selectFrom('condition_mark as m')
      .innerJoin('condition_kind as k', 'k.id', 'm.condition_kind_id')
      .selectAll('m')
      .select(['k.code', 'k.shop_words', 'k.customer_words', 'k.ask_customer'])
      .where('m.ticket_id', '=', ticket)
      .where('m.removed_at', 'is', null)
      .orderBy('m.id'),
  );
  const numbers = new Map<number, number>();
  return rows.map((row) => {
    const no = (numbers.get(row.casting_id) ?? 0) + 1;
    numbers.set(row.casting_id, no);
    return {
      markId: row.id,
      castingId: row.casting_id,
      no,
      condition: row.code,
      conditionWords: row.shop_words,
      customerWords: row.customer_words,
      askCustomer: row.ask_customer,
      seen: row.seen,
      view: row.view,
      x: row.x_bp,
      y: row.y_bp,
      severity: row.severity,
      severityWords: severityWords(row.severity),
      words: row.words,
      photoWanted: row.photo_wanted === 1,
      photos: photos.get(row.id) ?? 0,
      atStage: row.at_stage,
    };
  });
}
