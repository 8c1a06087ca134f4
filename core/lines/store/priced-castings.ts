/** The castings of a ticket with the facts that move prices, fits and order. */
import type { z } from 'zod';
import type { DescribedType } from '../../castings/contract.ts';
import { describedCounts } from '../../castings/store.ts';
import { type Material, metalClassOf } from '../../catalogue/compute/fit.ts';
import type { ReadDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, CastingTypeId, TicketId } from '../../kernel/ids.ts';
import type { BookCasting } from '../compute/book.ts';

/** One casting for pricing; also a described one that has no row yet. */
export type CastingForPrice = BookCasting &
  Readonly<{
    /** Null: only described. */
    id: CastingId | null;
    castingTypeId: CastingTypeId | null;
    tag: number | null;
    pairNo: number | null;
  }>;

export type TicketCasting = CastingForPrice & Readonly<{ id: CastingId; castingTypeId: CastingTypeId; tag: number }>;

const COUNTS = [
  'cylinders',
  'intake_valves',
  'exhaust_valves',
  'guides',
  'seats',
  'springs',
  'chambers',
  'camshafts',
  'cam_journals',
  'mains',
  'pins',
  'rods',
  'decks',
  'manifold_faces',
  'plugs',
  'sleeves',
] as const;

const TYPE_COLUMNS = [
  't.id as type_id',
  't.code as type_code',
  't.name as type_name',
  't.kind as type_kind',
  't.cam_layout',
  't.fuel',
  't.guide_style',
  't.water_jacket',
  't.heavy_diesel',
  ...COUNTS.map((name) => `t.${name}` as const),
] as const;

type TypeRow = Readonly<
  Record<(typeof COUNTS)[number], number> & {
    type_id: CastingTypeId;
    type_name: string;
    type_kind: string;
    cam_layout: string;
    fuel: string;
    guide_style: string;
    water_jacket: 0 | 1;
    heavy_diesel: 0 | 1;
  }
>;

/** Counts by name, `valves` (intake and exhaust) included. */
const countsOf = (row: Readonly<Record<(typeof COUNTS)[number], number>>): Record<string, number> => ({
  ...Object.fromEntries(COUNTS.map((name) => [name, row[name]])),
  valves: row.intake_valves + row.exhaust_valves,
});

const factsOf = (row: TypeRow, material: Material, closeTolerance: boolean) => ({
  castingTypeId: row.type_id,
  typeName: row.type_name,
  kind: row.type_kind,
  material,
  metal: metalClassOf(material),
  camLayout: row.cam_layout,
  fuel: row.fuel,
  guideStyle: row.guide_style,
  waterJacket: row.water_jacket === 1,
  heavyDiesel: row.heavy_diesel === 1,
  closeTolerance,
  counts: countsOf(row),
});

/** All castings of a ticket in their order on it; empty for a ticket without any. */
export function listTicketCastings(db: ReadDb, ticket: TicketId): TicketCasting[] {
  const rows = db.all(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
      .select(['c.id', 'c.tag_no', 'c.material', 'c.close_tolerance', 'c.pair_no', ...TYPE_COLUMNS])
      .where('c.ticket_id', '=', ticket)
      .orderBy('c.position_in_ticket')
      .orderBy('c.id'),
  );
  return rows.map((row) => ({
    ...factsOf(row, row.material, row.close_tolerance === 1),
    id: row.id,
    tag: row.tag_no,
    pairNo: row.pair_no,
  }));
}

/** A casting that is only described, with no row and no type of its own: packages have no price for it. */
export const describedCasting = (
  typed: z.output<typeof DescribedType>,
  material: Material,
  closeTolerance: boolean,
): CastingForPrice => ({
  id: null,
  castingTypeId: null,
  typeName: typed.name,
  tag: null,
  pairNo: null,
  kind: typed.kind,
  material,
  metal: metalClassOf(material),
  camLayout: typed.camLayout,
  fuel: typed.fuel,
  guideStyle: typed.guideStyle,
  waterJacket: typed.waterJacket,
  heavyDiesel: false,
  closeTolerance,
  counts: countsOf(describedCounts(typed)),
});

/** A casting of the catalogue that stands on no ticket yet. @throws AppError `not-found` `operations/no-such-type` */
export function describeType(db: ReadDb, code: string, material: Material, closeTolerance: boolean): CastingForPrice {
  const row = db.one(
    db.q
      .selectFrom('casting_type as t')
      .select([...TYPE_COLUMNS])
      .where('t.code', '=', code),
  );
  if (!row) throw notFound('operations/no-such-type', `Casting type ${code}`);
  return { ...factsOf(row, material, closeTolerance), id: null, tag: null, pairNo: null };
}
