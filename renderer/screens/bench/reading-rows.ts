/** Which rows of a sheet stand on the screen, in which order they are seen and typed, and what they are called beside the figures. */
import type { Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { type At, isTyped, labelOf, startAt } from './reading-view.ts';

/** The readings before work, those after it, or both one under the other. */
export type StageShown = 'before' | 'after' | 'both';

/** A table this short shows both stages at once. */
const SHORT = 6;

/** Quantities with shown rows of both stages. */
function readTwice(sheet: Sheet): ReadonlySet<string> {
  const shown = sheet.rows.filter((row) => row.shown);
  const twice = shown.filter((row) =>
    shown.some((other) => other.quantity === row.quantity && other.stage !== row.stage),
  );
  return new Set(twice.map((row) => row.quantity));
}

/** Whether there is enough before and after to look at one of them alone. */
export const hasStages = (sheet: Sheet): boolean =>
  readTwice(sheet).size > 0 && sheet.rows.filter((row) => row.shown).length > SHORT;

/** The stage a row belongs to on the screen: rows of quantities read once belong to every stage. */
export function stageOfRow(sheet: Sheet, key: string | undefined): 'before' | 'after' | null {
  const row = sheet.rows.find((one) => one.key === key);
  return row && readTwice(sheet).has(row.quantity) ? row.stage : null;
}

const samePlace = (a: SheetRow, b: SheetRow): boolean => a.quantity === b.quantity && a.point === b.point;

/** Rows as they are seen. With both stages each reading after work stands under the one before it. */
export function rowsShown(sheet: Sheet, stage: StageShown): SheetRow[] {
  const shown = sheet.rows.filter((row) => row.shown);
  const twice = readTwice(sheet);
  if (stage !== 'both') return shown.filter((row) => row.stage === stage || !twice.has(row.quantity));
  const done = new Set<string>();
  return shown.flatMap((row) => {
    if (done.has(row.key)) return [];
    const pair = shown.filter((one) => samePlace(one, row));
    for (const one of pair) done.add(one.key);
    return pair;
  });
}

/** Rows as they are typed: in the order of the bench, all before work first. */
export function rowsTyped(sheet: Sheet, stage: StageShown): SheetRow[] {
  const seen = new Set(rowsShown(sheet, stage).map((row) => row.key));
  return sheet.rows.filter((row) => seen.has(row.key) && isTyped(row));
}

/** Where the hand goes when a stage is chosen: what is not read yet of that stage, else its first row. */
export function stageStart(sheet: Sheet, order: readonly string[], stage: StageShown): At | null {
  const typed = rowsTyped(sheet, stage);
  const own = typed.filter((row) => row.stage === stage);
  return startAt(sheet, order, own.length > 0 ? own : typed);
}

export type RowLabel = Readonly<{
  /** As it stands in the table: `Across, top`, then `middle`, `bottom`. */
  label: string;
  /** In full, for a screen reader. */
  full: string;
  /** Another quantity or another axis begins here. */
  starts: boolean;
}>;

/** What the rows are called, one under the other: what the row above says already is left out. */
export function rowLabels(sheet: Sheet, rows: readonly SheetRow[]): ReadonlyMap<string, RowLabel> {
  return new Map(rows.map((row, n) => [row.key, labelUnder(sheet, row, rows[n - 1], rows[n + 1])]));
}

function labelUnder(sheet: Sheet, row: SheetRow, above: SheetRow | undefined, below: SheetRow | undefined): RowLabel {
  const full = labelOf(sheet, row);
  // The same place after work, right under the reading before it.
  if (above && samePlace(above, row)) return { label: row.stage, full, starts: false };
  const stage = below && samePlace(row, below) ? ` ${row.stage}` : '';
  return row.pointWords === null ? wholeLabel(row, above, stage, full) : pointLabel(sheet, row, above, stage, full);
}

function wholeLabel(row: SheetRow, above: SheetRow | undefined, stage: string, full: string): RowLabel {
  const starts = above !== undefined && (above.point !== null || (row.derived && !above.derived));
  return { label: `${row.words}${stage}${row.unitMark === '' ? '' : `, ${row.unitMark}`}`, full, starts };
}

function pointLabel(sheet: Sheet, row: SheetRow, above: SheetRow | undefined, stage: string, full: string): RowLabel {
  const { place, axis } = pointParts(sheet, row);
  const goesOn = above?.quantity === row.quantity && above.pointWords !== null;
  const sameAxis = goesOn && pointParts(sheet, above).axis === axis;
  const only = sheet.rows.every((one) => !one.shown || !isAlike(one, row) || pointParts(sheet, one).axis === axis);
  const point = sameAxis || only || axis === '' ? place : `${axis}, ${place}`;
  const named = goesOn || sheet.table.words.toLowerCase().includes(row.words) ? '' : `${row.words}, `;
  return { label: `${named}${point}${stage}`, full, starts: above !== undefined && !sameAxis };
}

/** Another point of the same quantity. */
const isAlike = (one: SheetRow, row: SheetRow): boolean => one.quantity === row.quantity && one.pointWords !== null;

/**
 * `thrust, top` or `top, along the rocker`: the place and the axis it is read on. Which of the two is the axis is seen from the
 * shown points of the quantity: there are fewer axes than places.
 */
export function pointParts(sheet: Sheet, row: SheetRow): Readonly<{ place: string; axis: string }> {
  const all = sheet.rows.filter((one) => one.shown && one.quantity === row.quantity && one.pointWords?.includes(', '));
  const parts = all.map((one) => cut(one.pointWords ?? ''));
  const [firsts, seconds] = [new Set(parts.map(([first]) => first)), new Set(parts.map(([, second]) => second))];
  const [first, second] = cut(row.pointWords ?? '');
  if (second === '') return { place: first, axis: '' };
  return firsts.size <= seconds.size ? { place: second, axis: first } : { place: first, axis: second };
}

function cut(words: string): readonly [string, string] {
  const [first = '', ...rest] = words.split(', ');
  return [first, rest.join(', ')];
}
