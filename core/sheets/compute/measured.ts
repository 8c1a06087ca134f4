/** A casting's readings opened for paper: the tables in which something was read, what the first run read, what was replaced. */
import type { BenchTable } from '../../catalogue/compute/bench-table.ts';
import { findQuantity } from '../../catalogue/compute/quantities.ts';
import type { Moment } from '../../kernel/days.ts';
import type { OperationId, ReadingId } from '../../kernel/ids.ts';
import { type Bench, openBench } from '../../readings/compute/bench.ts';
import type { Facts, Reading } from '../../readings/compute/model.ts';
import { composeSheet } from '../../readings/compute/sheet.ts';
import type { Cell, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';

/** What is known of a casting's measuring. */
export type Measuring = Readonly<{
  facts: Facts;
  tables: readonly BenchTable[];
  /** Operations that were done again: their readings are not of the first run. */
  redone: ReadonlySet<OperationId>;
  /** The first signature there ever was, also one that was reopened; null before. */
  firstSigned: Moment | null;
  /** A person's name by initials. */
  names: ReadonlyMap<string, string>;
  dayOf(at: Moment): string;
}>;

export type Measured = Measuring &
  Readonly<{
    bench: Bench;
    /** The same casting as if nobody had read anything: what the catalogue alone can say. */
    bare: Bench;
    /** Tables in which something was read, or that follow from readings. */
    sheets: readonly Sheet[];
    /** The same tables as the first run left them; empty where nothing was done again. */
    first: ReadonlyMap<string, Sheet>;
    /** The row that took the place of another. */
    later: ReadonlyMap<ReadingId, Reading>;
  }>;

/** Open them. Pure. */
export function openMeasured(measuring: Measuring): Measured {
  const { facts, tables, redone } = measuring;
  const bench = openBench(facts);
  const bare = openBench({ ...facts, readings: [] });
  const sheets = tables.map((table) => composeSheet(facts, table)).filter((sheet) => isUsed(sheet, bare));
  const firstRun = { ...facts, readings: facts.readings.filter((it) => !it.operation || !redone.has(it.operation)) };
  const isRedone = firstRun.readings.length < facts.readings.length;
  const first = isRedone ? tables.map((table) => [table.code, composeSheet(firstRun, table)] as const) : [];
  return {
    ...measuring,
    bench,
    bare,
    sheets,
    first: new Map(first),
    later: new Map(facts.readings.flatMap((it) => (it.supersedes === null ? [] : [[it.supersedes, it]]))),
  };
}

/** Something stands there that is more than a plan. */
export const isRead = (cell: Cell | undefined): cell is Cell =>
  cell !== undefined &&
  cell.text !== '' &&
  (cell.state === 'read' || cell.state === 'computed' || cell.state === 'not applicable');

/** Somebody read something in it, or it follows from something read. */
const isUsed = (sheet: Sheet, bare: Bench): boolean => sheet.rows.some((row) => isMeasured(bare, sheet, row));

/** Read, or worked out from readings: what the catalogue alone could compute is no measuring. */
export function isMeasured(bare: Bench, sheet: Pick<Sheet, 'columns'>, row: SheetRow): boolean {
  return row.cells.some((cell, index) => {
    if (cell.state === 'read' || cell.state === 'not applicable' || cell.earlier.length > 0) return true;
    if (cell.state !== 'computed') return false;
    const spot = bare.facts.spots.find(({ id }) => id === sheet.columns[index]?.spot) ?? null;
    return bare.known(row.quantity, spot, row.point, row.stage)?.value !== cell.value;
  });
}

/** A figure that was replaced: its text, and why, by whom and when. */
export type Replaced = Readonly<{ text: string; words: string }>;

/**
 * Figures of a cell that a paper must not pass over: replaced with a reason, or after the first signature. A slip mended while
 * measuring is not one.
 */
export function replacedIn({ later, firstSigned, names, dayOf }: Measured, cell: Cell): Replaced[] {
  return cell.earlier.flatMap((row) => {
    const by = later.get(row.id);
    if (!by || row.typed === by.typed || row.text === 'taken back') return [];
    const isLate = firstSigned !== null && by.at >= firstSigned;
    if (by.reason === null && !isLate) return [];
    const what = by.kind === 'taken_back' ? 'taken back' : 'replaced';
    const who = names.get(by.by) ?? by.by;
    const why = by.reason === null ? '' : `: ${by.reason}`;
    return [{ text: row.text, words: `${row.text} ${what} ${dayOf(by.at)} by ${who}${why}` }];
  });
}

/** Rows to print: what somebody read, and of computed ones those that the table shows. */
export const isPrinted = (measured: Measured, row: SheetRow): boolean =>
  row.cells.some(
    (cell) => (isRead(cell) && (row.shown || cell.state === 'read')) || replacedIn(measured, cell).length > 0,
  );

/** Rows of one quantity and point, as found first, then after. */
export function rowPairs(rows: readonly SheetRow[]): (readonly SheetRow[])[] {
  const groups = Map.groupBy(rows, (row) => `${row.quantity}|${row.point ?? ''}`);
  return [...groups.values()].map((pair) => pair.toSorted((a, b) => rank(a) - rank(b)));
}

const rank = (row: SheetRow): number => (row.stage === 'before' ? 0 : 1);

/** The row of the first run, where it said something else; undefined where nothing was done again. */
export function firstRow(measured: Measured, table: string, row: SheetRow): SheetRow | undefined {
  const found = measured.first.get(table)?.rows.find(({ key }) => key === row.key);
  const differs = found?.cells.some((cell, index) => isRead(cell) && cell.text !== row.cells[index]?.text);
  return differs ? found : undefined;
}

/** Bold: a figure after work that whoever builds the engine checks again. */
export const isEmphasised = (row: Pick<SheetRow, 'quantity' | 'stage'>): boolean =>
  row.stage === 'after' && findQuantity(row.quantity)?.checkAgain === true;
