/** Reads what the catalogue says about measuring: quantities, bench tables, shims, gauges. */
import type { BenchTable, Stage } from '../../catalogue/compute/bench-table.ts';
import { findQuantity } from '../../catalogue/compute/quantities.ts';
import { quantity as plain, type Quantity } from '../../catalogue/compute/quantity.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { CastingId, ToolId } from '../../kernel/ids.ts';
import { type Family, isUnitCode, measureOf, type UnitCode } from '../../kernel/measure-units.ts';
import type { ShimStock, Tool } from '../compute/model.ts';

/** Every quantity of the workspace. What is only a way of showing comes from the first catalogue, by code. */
export function listQuantities(db: ReadDb): Quantity[] {
  const points = new Map<number, { code: string; words: string }[]>();
  const pointRows = db.all(
    db.q
      .selectFrom('quantity_point')
      .select(['quantity_id', 'code', 'words'])
      .orderBy('quantity_id')
      .orderBy('position'),
  );
  for (const { quantity_id, code, words } of pointRows) {
    points.set(quantity_id, [...(points.get(quantity_id) ?? []), { code, words }]);
  }
  const rows = db.all(
    db.q
      .selectFrom('quantity')
      .select([
        'id',
        'code',
        'words',
        'family',
        'spot_kind',
        'derived',
        'side_matters',
        'entry_rule',
        'entry_digits',
        'choices',
      ])
      .orderBy('id'),
  );
  return rows.map((row) => ({
    ...(findQuantity(row.code) ?? plain(row.code, row.words)),
    words: row.words,
    family: row.family as Family,
    spotKind: row.spot_kind,
    derived: row.derived,
    sideMatters: row.side_matters === 1,
    entryRule: row.entry_rule,
    entryDigits: row.entry_digits,
    choices: row.choices === null ? [] : row.choices.split('|'),
    points: points.get(row.id) ?? pointsInCode(row.code),
  }));
}

/** Points that are too many to be rows of a workspace. */
const pointsInCode = (code: string): Quantity['points'] => {
  const known = findQuantity(code);
  return known?.pointsInCode ? known.points : [];
};

/** A quantity by its code, or undefined. */
export const findQuantityRow = (db: ReadDb, code: string) =>
  db.one(db.q.selectFrom('quantity').select(['id', 'words', 'family']).where('code', '=', code));

/** @throws RangeError when the workspace has no such quantity: the computes named one that was never brought in. */
export function getQuantityId(db: ReadDb, code: string): number {
  const found = findQuantityRow(db, code);
  if (!found) throw new RangeError(`no quantity ${code} in this workspace`);
  return found.id;
}

const asUnit = (text: string): UnitCode => {
  if (!isUnitCode(text)) throw new RangeError(`no such unit is known: ${text}`);
  return text;
};

/** A bench table for one casting, its rows switched on and off as kept for it; undefined when there is none. */
export function findTable(db: ReadDb, code: string, casting: CastingId): BenchTable | undefined {
  const table = db.one(
    db.q
      .selectFrom('bench_table as t')
      .leftJoin('operation_kind as k', 'k.id', 't.operation_kind_id')
      .select(['t.id', 't.code', 't.words', 't.casting_kind', 't.spot_kind', 'k.code as operation'])
      .where('t.code', '=', code),
  );
  if (!table) return undefined;
  const switched = new Map(
    db
      .all(
        db.q
          .selectFrom('casting_row')
          .select(['bench_table_row_id', 'shown'])
          .where('casting_id', '=', casting)
          .orderBy('id'),
      )
      .map((row) => [row.bench_table_row_id, row.shown === 1]),
  );
  const rows = db.all(
    db.q
      .selectFrom('bench_table_row as r')
      .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
      .select(['r.id', 'q.code', 'r.point', 'r.stage', 'r.shown'])
      .where('r.bench_table_id', '=', table.id)
      .orderBy('r.position'),
  );
  return {
    code: table.code,
    words: table.words,
    castingKind: table.casting_kind,
    spotKind: table.spot_kind,
    operation: table.operation,
    rows: rows.map((row) => ({
      quantity: row.code,
      point: row.point,
      stage: row.stage,
      shown: switched.get(row.id) ?? row.shown === 1,
    })),
  };
}

/** Codes of the tables of a kind of casting, in the order they were brought in. */
export const listTableCodes = (db: ReadDb, kind: BenchTable['castingKind']): readonly string[] =>
  db
    .all(db.q.selectFrom('bench_table').select('code').where('casting_kind', '=', kind).orderBy('id'))
    .map((row) => row.code);

/** Codes of the operations of a casting, done ones too. */
export const listOperationCodes = (db: ReadDb, casting: CastingId): ReadonlySet<string> =>
  new Set(
    db
      .all(
        db.q
          .selectFrom('operation as o')
          .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
          .select('k.code')
          .where('o.casting_id', '=', casting),
      )
      .map((row) => row.code),
  );

/** The row of a table that is switched for one casting; undefined when the table has no such row. */
export const findTableRow = (
  db: ReadDb,
  table: string,
  row: Readonly<{ quantity: string; point: string | null; stage: Stage }>,
) =>
  db
    .all(
      db.q
        .selectFrom('bench_table_row as r')
        .innerJoin('bench_table as t', 't.id', 'r.bench_table_id')
        .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
        .select(['r.id', 'r.point'])
        .where('t.code', '=', table)
        .where('q.code', '=', row.quantity)
        .where('r.stage', '=', row.stage),
    )
    .find((it) => it.point === row.point)?.id;

/** A stack the shop did not set: 1/16 in is what TM 5-3810-289-34 allows; in millimetres common practice, no source. */
const USUAL_STACK = { in: measureOf('0.060', 'in'), mm: measureOf('1.50', 'mm') };

/** Shims in stock by unit, thinnest first; a unit without any is left out. */
export function listShims(db: ReadDb): ShimStock[] {
  const shop = db.one(db.q.selectFrom('shop_setting').select(['shim_stack_inch_nm', 'shim_stack_mm_nm']));
  const items = db.all(
    db.q
      .selectFrom('stock_item')
      .select(['thickness_nm', 'thickness_typed', 'shim_unit'])
      .where('shim_unit', 'is not', null)
      .where('retired_on', 'is', null)
      .orderBy('thickness_nm'),
  );
  return (['in', 'mm'] as const).flatMap((unit) => {
    const thicknesses = items.flatMap((item) =>
      item.shim_unit === unit && item.thickness_nm !== null
        ? [{ thickness: item.thickness_nm as number, text: item.thickness_typed ?? '' }]
        : [],
    );
    const kept = unit === 'in' ? shop?.shim_stack_inch_nm : shop?.shim_stack_mm_nm;
    return thicknesses.length === 0 ? [] : [{ unit, thicknesses, maxStack: kept ?? USUAL_STACK[unit] }];
  });
}

/** Every gauge, retired ones too (old readings name them), with its next check. */
export function listToolRows(db: ReadDb, today: Day) {
  const checks = new Map(
    db
      .all(db.q.selectFrom('tool_check').select(['tool_id', 'on_day', 'next_due_on']).orderBy('id'))
      .map((check) => [check.tool_id, check]),
  );
  const rows = db.all(
    db.q
      .selectFrom('tool as t')
      .leftJoin('work_centre as w', 'w.id', 't.work_centre_id')
      .select([
        't.id',
        't.name',
        't.kind',
        't.serial',
        't.unit',
        't.uncertainty',
        't.uncertainty_bp',
        't.range_low',
        't.range_high',
        't.retired_on',
        't.version',
        'w.code as work_centre',
      ])
      .orderBy('t.name'),
  );
  return rows.map((row) => {
    const check = checks.get(row.id);
    return {
      tool: {
        id: row.id as ToolId,
        name: row.name,
        kind: row.kind,
        serial: row.serial,
        workCentre: row.work_centre,
        unit: asUnit(row.unit),
        uncertainty: row.uncertainty,
        uncertaintyBp: row.uncertainty_bp,
        nextDue: check?.next_due_on ?? null,
        overdue: check !== undefined && check.next_due_on < today,
        retired: row.retired_on !== null,
      } satisfies Tool,
      rangeLow: row.range_low,
      rangeHigh: row.range_high,
      lastCheck: (check?.on_day ?? null) as Day | null,
      version: row.version,
    };
  });
}
