/** Reads and writes of engine types, casting types, their spots and what usually arrives with them. */

import type { z } from 'zod';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import { flag } from '../../kernel/flag.ts';
import type { CastingTypeId, EngineTypeId } from '../../kernel/ids.ts';
import { missingPorts } from '../compute/spots.ts';
import {
  type ArrivalEntry,
  type CastingTypeEntryOf,
  COUNT_NAMES,
  type EngineEntry,
  type SpotEntry,
} from '../contract/entries.ts';
import { getIdByCode } from './codes.ts';

export const insertEngine = (db: WriteDb, e: z.output<typeof EngineEntry>): EngineTypeId =>
  db.add('engine_type', {
    code: e.code,
    words: e.words,
    cylinders: e.cylinders,
    layout: e.layout,
    bank_lean_udeg: e.bankLean,
    face_lean_udeg: e.faceLean,
    bore_nm: e.bore,
    stroke_nm: e.stroke,
    numbering: e.numbering,
    front_is: e.frontIs,
    front_words: e.frontWords,
  });

/** Add a casting type with its spots and arrival list. */
export function insertCastingType(db: WriteDb, t: CastingTypeEntryOf): CastingTypeId {
  const counts = Object.fromEntries(COUNT_NAMES.map((name) => [name, t.counts[name] ?? 0])) as Record<
    (typeof COUNT_NAMES)[number],
    number
  >;
  const id = db.add('casting_type', {
    ...counts,
    code: t.code,
    engine_type_id: t.engineType === null ? null : getIdByCode(db, 'engine_type', t.engineType),
    kind: t.kind,
    name: t.name,
    casting_number_pattern: t.castingNumberPattern,
    material: t.material,
    cam_layout: t.camLayout,
    fuel: t.fuel,
    private: flag(t.private),
    guide_style: t.guideStyle,
    seat_style: t.seatStyle,
    usual_weight_g: t.usualWeight,
    heavy_diesel: flag(t.heavyDiesel),
    water_jacket: flag(t.waterJacket),
  });
  insertSpots(db, id, t.spots);
  insertArrival(db, id, t.arrival);
  return id;
}

function insertSpots(db: WriteDb, type: CastingTypeId, spots: readonly z.output<typeof SpotEntry>[]): void {
  for (const s of spots) {
    db.add('spot', {
      casting_type_id: type,
      kind: s.kind,
      label: s.label,
      bench_order: s.benchOrder,
      row: s.row,
      bank: s.bank,
      cylinder: s.cylinder,
      side: s.side,
    });
  }
}

/** Ports that heads lack which were described before ports were known, by casting type. */
const listPortsLacking = (db: ReadDb) =>
  db
    .all(db.q.selectFrom('casting_type').select('id').where('kind', '=', 'head').orderBy('id'))
    .map(({ id }) => ({ id, ports: missingPorts(listSpots(db, id)) }))
    .filter(({ ports }) => ports.length > 0);

/** Whether every head with valves has ports to test. */
export const hasPorts = (db: ReadDb): boolean => listPortsLacking(db).length === 0;

/** Give heads that were described before ports were known one for each cylinder and side. */
export function bringInPorts(db: WriteDb): void {
  for (const { id, ports } of listPortsLacking(db)) insertSpots(db, id, ports);
}

export function insertArrival(db: WriteDb, type: CastingTypeId, items: readonly z.output<typeof ArrivalEntry>[]): void {
  for (const [position, item] of items.entries()) {
    db.add('arrival_template', {
      casting_type_id: type,
      position,
      words: item.words,
      expected: item.expected,
      mix_rule: item.mixRule,
      remove_before_wash: flag(item.removeBeforeWash),
      inside: flag(item.inside),
      container_hint: item.containerHint,
    });
  }
}

/** Casting types by name; private ones (made for one casting) only when asked. */
export function listCastingTypes(db: ReadDb, privateToo: boolean) {
  const query = db.q
    .selectFrom('casting_type as t')
    .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
    .selectAll('t')
    .select([
      'e.code as engine_code',
      'e.words as engine_words',
      'e.layout as engine_layout',
      'e.cylinders as engine_cylinders',
    ])
    .where('t.retired_on', 'is', null)
    .orderBy('t.name');
  return db.all(privateToo ? query : query.where('t.private', '=', 0)).map((t) => ({
    id: t.id,
    version: t.version,
    code: t.code,
    name: t.name,
    kind: t.kind,
    engineType:
      t.engine_type_id === null
        ? null
        : {
            id: t.engine_type_id,
            code: t.engine_code ?? '',
            words: t.engine_words ?? '',
            layout: t.engine_layout ?? '',
            cylinders: t.engine_cylinders ?? 0,
          },
    castingNumberPattern: t.casting_number_pattern,
    material: t.material,
    camLayout: t.cam_layout,
    fuel: t.fuel,
    private: t.private === 1,
    counts: Object.fromEntries(COUNT_NAMES.map((name) => [name, t[name]])),
    guideStyle: t.guide_style,
    seatStyle: t.seat_style,
    usualWeight: t.usual_weight_g,
    heavyDiesel: t.heavy_diesel === 1,
    waterJacket: t.water_jacket === 1,
  }));
}

export type CastingType = ReturnType<typeof listCastingTypes>[number];

/** @throws AppError `not-found` */
export function getCastingType(db: ReadDb, id: CastingTypeId): CastingType {
  const found = listCastingTypes(db, true).find((t) => t.id === id);
  if (!found) throw notFound('operations/no-such-type', 'This casting type');
  return found;
}

/** `L:1,3,5,7 R:2,4,6,8` of the engine a type belongs to; null when it belongs to none. */
export const findNumbering = (db: ReadDb, type: CastingTypeId): string | null =>
  db.one(
    db.q
      .selectFrom('casting_type as t')
      .innerJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .select('e.numbering')
      .where('t.id', '=', type),
  )?.numbering ?? null;

/** Spots in bench order, kind by kind. */
export const listSpots = (db: ReadDb, type: CastingTypeId) =>
  db.all(
    db.q
      .selectFrom('spot')
      .select(['id', 'kind', 'label', 'bench_order as benchOrder', 'row', 'bank', 'cylinder', 'side'])
      .where('casting_type_id', '=', type)
      .orderBy('kind')
      .orderBy('row')
      .orderBy('bench_order'),
  );

/** What usually arrives with this type, in counting order. */
export const listArrival = (db: ReadDb, type: CastingTypeId) =>
  db
    .all(
      db.q
        .selectFrom('arrival_template')
        .select([
          'id',
          'words',
          'expected',
          'mix_rule as mixRule',
          'remove_before_wash',
          'inside',
          'container_hint as containerHint',
        ])
        .where('casting_type_id', '=', type)
        .where('retired_on', 'is', null)
        .orderBy('position'),
    )
    .map(({ remove_before_wash, inside, ...item }) => ({
      ...item,
      removeBeforeWash: remove_before_wash === 1,
      inside: inside === 1,
    }));

export const listEngines = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('engine_type')
      .select([
        'id',
        'code',
        'words',
        'cylinders',
        'layout',
        'bank_lean_udeg as bankLean',
        'face_lean_udeg as faceLean',
        'bore_nm as bore',
        'stroke_nm as stroke',
        'numbering',
        'front_is as frontIs',
        'front_words as frontWords',
      ])
      .where('retired_on', 'is', null)
      .orderBy('words'),
  );
