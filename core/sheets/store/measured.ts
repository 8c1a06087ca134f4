/** Gathers a casting's measuring for paper. */
import { isOnPaper } from '../../catalogue/compute/bench-tables.ts';
import type { Moment } from '../../kernel/days.ts';
import { formatDayYear } from '../../kernel/format.ts';
import type { OperationId } from '../../kernel/ids.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import { composeSheet } from '../../readings/compute/sheet.ts';
import type { Sheet } from '../../readings/compute/sheet-model.ts';
import { readFacts } from '../../readings/store/facts.ts';
import { listTables } from '../../readings/store/needed.ts';
import { type Measured, openMeasured } from '../compute/measured.ts';
import type { PrintedCasting } from './castings.ts';
import type { Scene } from './scene.ts';

/** The tables that fit a casting: a table of places it has none of is left out. */
export function readTables({ db, today }: Scene, casting: PrintedCasting) {
  const facts = readFacts(db, casting.id, today);
  const tables = listTables(db, facts).filter(
    (table) =>
      isOnPaper(table.code) && (table.spotKind === null || facts.spots.some((spot) => spot.kind === table.spotKind)),
  );
  return { facts, tables };
}

/** Every bench table of a casting, filled in. */
export function readSheets(scene: Scene, casting: PrintedCasting): Sheet[] {
  const { facts, tables } = readTables(scene, casting);
  return tables.map((table) => composeSheet(facts, table));
}

/** What was measured on a casting, with everything replaced and the first run of what was done again. */
export function readMeasured(scene: Scene, casting: PrintedCasting): Measured {
  const { db } = scene;
  const redone = db.all(
    db.q.selectFrom('operation').select('id').where('casting_id', '=', casting.id).where('redo_of_id', 'is not', null),
  );
  const signed = db.one(
    db.q.selectFrom('sign_off').select('created_at').where('casting_id', '=', casting.id).orderBy('id'),
  );
  const staff = db.all(db.q.selectFrom('staff').select(['initials', 'name']));
  return openMeasured({
    ...readTables(scene, casting),
    redone: new Set(redone.map(({ id }): OperationId => id)),
    firstSigned: (signed?.created_at ?? null) as Moment | null,
    names: new Map(staff.map(({ initials, name }) => [initials, name])),
    dayOf: (at) => formatDayYear(scene.localDay(at)),
  });
}

/** Unit marks of sheets, each once. */
export const unitsOf = (sheets: readonly Sheet[]): string[] => {
  const units = sheets.flatMap(({ rows }) => rows.flatMap((row) => (row.unit === null ? [] : [row.unit])));
  return [...new Set(units.map((unit: UnitCode) => unitShape(unit).mark))].filter(Boolean);
};
