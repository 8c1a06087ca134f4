/** Writes gauges and their checks. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { ToolId } from '../../kernel/ids.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';

export type NewTool = Readonly<{
  name: string;
  serial: string | null;
  kind: string;
  workCentre: number | null;
  unit: UnitCode;
  rangeLow: number | null;
  rangeHigh: number | null;
  resolution: number | null;
  uncertainty: number | null;
  uncertaintyBp: number | null;
  setAgainst: string | null;
}>;

export const insertTool = (db: WriteDb, it: NewTool): ToolId =>
  db.add('tool', {
    name: it.name,
    serial: it.serial,
    kind: it.kind,
    work_centre_id: it.workCentre as never,
    unit: it.unit,
    range_low: it.rangeLow,
    range_high: it.rangeHigh,
    resolution: it.resolution,
    uncertainty: it.uncertainty,
    uncertainty_bp: it.uncertaintyBp as never,
    set_against: it.setAgainst,
  });

/** Name and state of one gauge, or undefined. */
export const findTool = (db: ReadDb, id: ToolId) =>
  db.one(db.q.selectFrom('tool').select(['id', 'name', 'retired_on', 'version']).where('id', '=', id));

/** The gauge of this name in use, or undefined. */
export const findToolByName = (db: ReadDb, name: string) =>
  db.one(db.q.selectFrom('tool').select('id').where('name', '=', name));

export const retireTool = (db: WriteDb, id: ToolId, seen: number, on: Day): number =>
  db.step('tool', id, seen, { retired_on: on });

export const insertToolCheck = (
  db: WriteDb,
  check: Readonly<{ tool: ToolId; on: Day; result: string; nextDue: Day }>,
): void =>
  void db.add('tool_check', {
    tool_id: check.tool,
    on_day: check.on,
    result: check.result,
    next_due_on: check.nextDue,
  });
