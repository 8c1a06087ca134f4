/** A judged sheet of the host as the table shows it: pages, rows, marks, and what waits on this tablet. Computes nothing. */

import type { Verdict } from '#core/readings/compute/model.ts';
import type { Cell, Column, LimitShown, Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { type ColumnSpot, groupColumns, pageGroups } from '../../kit/bench-columns.ts';
import type { ReadingCell, ReadingGroup, ReadingRow } from '../../kit/bench-reading-table.tsx';
import type { Mark } from '../../kit/mark.tsx';

/** The key of a column: its spot, or `once` in a table of figures read once. */
export const columnKey = (column: Pick<Column, 'spot'>): string => String(column.spot ?? 'once');

/** The name of a cell across reloads: casting, quantity, spot, point, stage. */
export const placeOf = (casting: number, row: Pick<SheetRow, 'key'>, column: string): string =>
  `${casting}|${row.key}|${column}`;

/** The parts of a place's name: a row's key holds the same sign, so only the ends are cut off. */
export function placeParts(place: string): Readonly<{ casting: number; row: string; column: string }> {
  const [first, last] = [place.indexOf('|'), place.lastIndexOf('|')];
  return { casting: Number(place.slice(0, first)), row: place.slice(first + 1, last), column: place.slice(last + 1) };
}

/** Words or choices instead of a figure. */
export const isWords = (row: SheetRow): boolean => row.family === 'text' || row.family === 'choice';
/** The choice a digit stands for: `2` is the second; undefined for anything else, and where the digit is a choice itself. */
export const choiceOfDigit = (row: SheetRow, text: string): string | undefined =>
  /^[1-9]$/.test(text) && !row.choices.includes(text) ? row.choices[Number(text) - 1] : undefined;

/** Rows the hand types into. */
export const isTyped = (row: SheetRow): boolean => !row.derived;

/** The mark of a verdict; null where nothing is judged. */
export function markOf(verdict: Verdict | null): Mark | null {
  switch (verdict?.name) {
    case undefined:
      return null;
    case 'pass':
      return 'pass';
    case 'fail':
      return verdict?.direction === 'under' ? 'under' : 'over';
    case 'too close to call':
      return 'close';
    case 'not measured':
      return 'not-measured';
    case 'no limit known':
      return 'no-limit';
  }
}

/** Colour of the pointer on a limit scale. */
export function colourOf(verdict: Verdict | null): 'pass' | 'fail' | 'close' | 'blank' {
  const mark = markOf(verdict);
  if (mark === 'pass' || mark === 'close') return mark;
  return mark === 'over' || mark === 'under' ? 'fail' : 'blank';
}

/** The limit of a row for a column: its side's own one before the common one. */
export const limitFor = (row: SheetRow, side: Column['side']): LimitShown | null =>
  row.limits.find((limit) => limit.side === side) ?? row.limits.find((limit) => limit.side === 'any') ?? null;

/** One place of the sheet. */
export type Spot = Readonly<{ sheet: Sheet; row: SheetRow; column: Column; cell: Cell | undefined }>;

export type Page = Readonly<{
  groups: readonly ReadingGroup[];
  /** `INTAKE SIDE`. */
  words: string;
  /** What is wrong on it: `1 too close`; empty when nothing is. */
  trouble: string;
}>;

/** Columns in the order on the bench, on as many pages as the width asks for. */
export function pagesOf(sheet: Sheet, turned: boolean, most: number): Page[] {
  const spots = sheet.columns.map(
    (column): ColumnSpot => ({
      key: columnKey(column),
      label: column.label || column.words,
      row: column.row,
      benchOrder: column.benchOrder,
      group: column.group,
    }),
  );
  return pageGroups(groupColumns(spots, turned), most).map((groups) => ({
    groups,
    words: groups.map((group) => group.words).join(' '),
    trouble: troubleOf(sheet, groups),
  }));
}

/** Counts of what does not pass among these columns, in the host's own words. */
function troubleOf(sheet: Sheet, groups: readonly ReadingGroup[]): string {
  const here = new Set(groups.flatMap((group) => group.columns.map((column) => column.key)));
  const counts = new Map<string, number>();
  for (const column of sheet.columns) {
    const bad = column.verdict.name === 'fail' || column.verdict.name === 'too close to call';
    if (bad && here.has(columnKey(column))) counts.set(column.word, (counts.get(column.word) ?? 0) + 1);
  }
  return [...counts].map(([word, count]) => `${count} ${word}`).join(', ');
}

/** What was entered here and does not stand in the sheet yet. */
export type Fresh = Readonly<{
  text: string;
  /** True until the host has kept it. */
  waiting: boolean;
  /** How it was judged while it was typed; null where that is not known. */
  cell: Cell | null;
  column: Column | null;
}>;

/** Rows of the table as they are given, and the verdict of each column last. `fresh` by place. */
export function rowsOf(
  sheet: Sheet,
  fresh: ReadonlyMap<string, Fresh>,
  shown: readonly SheetRow[] = sheet.rows.filter((row) => row.shown),
  labels: ReadonlyMap<string, Pick<ReadingRow, 'label' | 'full' | 'starts'>> = new Map(),
): ReadingRow[] {
  const rows = shown.map((row) => ({ ...rowOf(sheet, row, fresh), ...labels.get(row.key) }));
  const judged = sheet.columns.some((column) => column.verdict.name !== 'no limit known');
  return judged || sheet.columns.length > 1 ? [...rows, verdictRow(sheet, fresh)] : rows;
}

function rowOf(sheet: Sheet, row: SheetRow, fresh: ReadonlyMap<string, Fresh>): ReadingRow {
  const cells: Record<string, ReadingCell> = {};
  for (const [n, column] of sheet.columns.entries()) {
    const cell = row.cells[n];
    const key = columnKey(column);
    const here = fresh.get(placeOf(sheet.casting.id, row, key));
    if (here) cells[key] = freshCell(here);
    else if (cell) cells[key] = isPlanned(row, cell) ? plannedCell(column) : cellOf(cell, row);
  }
  return {
    key: row.key,
    label: labelOf(sheet, row),
    kind: row.derived ? 'derived' : isWords(row) ? 'plain' : 'read',
    limits: row.limits.map((limit) => sideText(limit)).join(', '),
    cells,
  };
}

function freshCell({ text, waiting, cell }: Fresh): ReadingCell {
  const mark = markOf(cell?.verdict ?? null);
  return {
    lines: text === '' ? [] : [text],
    ...(waiting && { waiting }),
    ...(mark && { mark, markWords: cell?.word ?? '' }),
  };
}

/** `height read, mm`, `guide inside, middle`; before and after are said where a quantity stands at both. */
export function labelOf(sheet: Sheet, row: SheetRow): string {
  const both = sheet.rows.some((one) => one.quantity === row.quantity && one.stage !== row.stage && one.shown);
  const stage = both ? ` ${row.stage}` : '';
  const point = row.pointWords ? `, ${shortPoint(sheet, row)}` : '';
  return `${row.words}${stage}${point}${row.unitMark && !row.pointWords ? `, ${row.unitMark}` : ''}`;
}

/** `top` of `top, along the rocker`, unless another shown row of the quantity begins the same. */
function shortPoint(sheet: Sheet, row: SheetRow): string {
  const first = (words: string | null) => words?.split(',')[0] ?? '';
  const mates = sheet.rows.filter((one) => one.shown && one.quantity === row.quantity && one.stage === row.stage);
  const alike = mates.filter((one) => first(one.pointWords) === first(row.pointWords));
  return alike.length > 1 ? (row.pointWords ?? '') : first(row.pointWords);
}

const sideText = (limit: LimitShown): string => {
  const text = limit.text || (limit.targetText === null ? '' : `target ${limit.targetText}`);
  return limit.side === 'any' ? text : `${limit.side} ${text}`;
};

function cellOf(cell: Cell, row: SheetRow): ReadingCell {
  const mark = markOf(cell.verdict);
  // A taken-back row has no unit: the figure before it is what stood here.
  const last = cell.earlier.find((one) => one.unit !== null && one.text !== cell.text);
  return {
    lines: cell.state === 'two readings' ? cell.choose.map((one) => one.text) : linesOf(cell, row),
    ...(mark && { mark }),
    ...(cell.word && { markWords: cell.word }),
    ...(last && !row.derived && { struck: last.text }),
  };
}

/** Shims are shown as chosen until somebody says what was fitted. */
const isPlanned = (row: SheetRow, cell: Cell): boolean => row.quantity === 'shims-fitted' && !cell.reading;
const plannedCell = (column: Column): ReadingCell => ({ lines: column.shims ? stackLines(column.shims.text) : [] });

/** A stack of shims stands in two lines, as it is laid under the spring. */
const stackLines = (text: string): string[] => text.split(/ (?=\+ )/);

function linesOf(cell: Cell, row: SheetRow): string[] {
  if (cell.text === '') return [];
  return row.quantity === 'shims-fitted' ? stackLines(cell.text) : [cell.text];
}

function verdictRow(sheet: Sheet, fresh: ReadonlyMap<string, Fresh>): ReadingRow {
  const cells: Record<string, ReadingCell> = {};
  // A figure just entered is judged already: the column says so before the whole table has been worked out again.
  const judged = new Map([...fresh.values()].flatMap(({ column }) => (column ? [[columnKey(column), column]] : [])));
  for (const standing of sheet.columns) {
    const column = judged.get(columnKey(standing)) ?? standing;
    const mark = markOf(column.verdict);
    cells[columnKey(column)] = { lines: [], ...(mark && { mark }), markWords: column.word };
  }
  return { key: 'verdict', label: 'Verdict', kind: 'verdict', cells };
}

export type At = Readonly<{ row: string; column: string }>;

const typedRows = (sheet: Sheet): readonly SheetRow[] => sheet.rows.filter((row) => row.shown && isTyped(row));

/** Where the hand starts: the first of the typed rows with something not measured, at its first such column. */
export function startAt(sheet: Sheet, order: readonly string[], typed = typedRows(sheet)): At | null {
  for (const row of typed) {
    const column = order.find((key) => !isRead(sheet, row, key));
    if (column !== undefined) return { row: row.key, column };
  }
  const [row] = typed;
  const [column] = order;
  return row && column !== undefined ? { row: row.key, column } : null;
}

/** True when the cell holds a reading or a dash. */
export function isRead(sheet: Sheet, row: SheetRow, column: string): boolean {
  const cell = row.cells[sheet.columns.findIndex((one) => columnKey(one) === column)];
  return (
    cell !== undefined && (cell.state === 'read' || cell.state === 'not applicable' || cell.state === 'two readings')
  );
}

/**
 * One step on the bench: along the row, then to the next typed row. `by` 1 forward, -1 back. Null at the end.
 *
 * `order` is all columns as they lie, over all pages.
 */
export function stepFrom(
  sheet: Sheet,
  order: readonly string[],
  at: At,
  by: 1 | -1,
  typed = typedRows(sheet),
): At | null {
  const column = order.indexOf(at.column) + by;
  const next = order[column];
  if (column >= 0 && next !== undefined) return { row: at.row, column: next };
  const row = typed[typed.findIndex((one) => one.key === at.row) + by];
  const first = by === 1 ? order[0] : order.at(-1);
  return row && first !== undefined ? { row: row.key, column: first } : null;
}

/** A cell with its row and column; null when the sheet has no such place. */
export function spotAt(sheet: Sheet, rowKey: string, key: string): Spot | null {
  const n = sheet.columns.findIndex((one) => columnKey(one) === key);
  const row = sheet.rows.find((one) => one.key === rowKey);
  const column = sheet.columns[n];
  return row && column ? { sheet, row, column, cell: row.cells[n] } : null;
}

/** The row whose limits judge this place: where shims decide, the height with them and not the bare one. */
export const judgedRow = ({ sheet, row }: Spot): SheetRow =>
  (SHIMMED.includes(row.quantity) && sheet.rows.find((one) => one.quantity === 'height-with-shim')) || row;
const SHIMMED = ['installed-height', 'shims-fitted'];

/** The limit that judges this place; null when none is known. */
export const judgingLimit = (spot: Spot): LimitShown | null =>
  limitFor(judgedRow(spot), spot.column.side) ?? limitFor(spot.row, spot.column.side);

/** Computed rows with limits for this column: what a figure without limits of its own goes into, of its own stage first. */
export function judgedRows({ sheet, row, column }: Spot): SheetRow[] {
  const judged = sheet.rows.filter(
    (one) => one.derived && one.shown && (limitFor(one, column.side)?.text ?? '') !== '',
  );
  const own = judged.filter((one) => one.stage === row.stage);
  return own.length > 0 ? own : judged;
}

/** Sentences of the sheet that are not said beside a limit already. */
export const loudNotes = (sheet: Sheet): readonly string[] =>
  sheet.notes.filter((note) => !note.endsWith('not checked'));
