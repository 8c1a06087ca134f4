/** While somebody types: the sheet as it would stand with this figure in it. Nothing is kept. */
import type { BenchTable } from '../../catalogue/compute/bench-table.ts';
import { moment } from '../../kernel/days.ts';
import type { ReadingId } from '../../kernel/ids.ts';
import { withMark } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import { openBench } from './bench.ts';
import { cellAt } from './cells.ts';
import { type Entry, readEntry } from './entry.ts';
import type { Facts, Reading, ReadOn, Tool } from './model.ts';
import { placeAt } from './place.ts';
import { composeSheet } from './sheet.ts';
import type { Cell, Column, Preview, Sheet } from './sheet-model.ts';

export type Trial = Readonly<{
  cell: Pick<Reading, 'quantity' | 'spot' | 'point' | 'stage'>;
  typed: string;
  unit: UnitCode | null;
  tool: Tool['id'] | null;
  readOn: ReadOn | null;
}>;

/** What the figure would become and do. */
export function previewOf(facts: Facts, table: BenchTable, trial: Trial): Preview {
  const bench = openBench(facts);
  const place = placeAt(bench, trial.cell);
  if (!place)
    return { read: { kind: 'empty' }, becomes: '', doubt: null, cell: null, column: null, judged: null, sentence: '' };
  const entry = readEntry(bench, place, trial.typed, trial.unit);
  const { read, becomes, doubt } = entry;
  if (!entry.keep) return { read, becomes, doubt, cell: null, column: null, judged: null, sentence: '' };
  const before = bench.rows(trial.cell.quantity, place.spot, trial.cell.point, trial.cell.stage);
  const superseded = before.current?.id ?? null;
  const triedFacts = { ...facts, readings: [...facts.readings, tried(trial, entry, superseded)] };
  const sheet = composeSheet(triedFacts, table);
  const index = sheet.columns.findIndex((column) => column.spot === trial.cell.spot);
  const column = sheet.columns[index] ?? null;
  // A point of a survey stands in no row of the table.
  const cell = cellIn(sheet, trial, index) ?? cellAt(openBench(triedFacts), place);
  return {
    read,
    becomes,
    doubt,
    cell,
    column,
    judged: (trial.cell.quantity === 'installed-height' ? heightMade(sheet, index) : null) ?? cell,
    sentence: sentenceOf(sheet, index, column),
  };
}

/** Greater than any kept id, so that it stands last. */
const NEXT = Number.MAX_SAFE_INTEGER as ReadingId;
const NOT_YET = moment('9999-12-31T00:00:00.000Z');

function tried(trial: Trial, entry: Entry, supersedes: ReadingId | null): Reading {
  const kept = entry.keep ?? { kind: 'text', typed: '', unit: null, value: null, mark: 'entered' };
  return {
    ...trial.cell,
    ...kept,
    id: NEXT,
    operation: null,
    readOn: trial.readOn,
    tool: trial.tool,
    at: NOT_YET,
    by: '',
    supersedes,
    reason: null,
    note: null,
  };
}

function cellIn(sheet: Sheet, trial: Trial, index: number): Cell | null {
  const { quantity, point, stage } = trial.cell;
  return sheet.rows.find((row) => row.key === `${quantity}|${point ?? ''}|${stage}`)?.cells[index] ?? null;
}

/** The height with shims under it, where it could be made. */
function heightMade(sheet: Sheet, index: number): Cell | null {
  const cell = sheet.rows.find((row) => row.quantity === 'height-with-shim')?.cells[index];
  return cell && cell.value !== null ? cell : null;
}

/** `1.0 under it makes 35.10 mm, load 241 N`; empty for tables without shims. */
function sentenceOf(sheet: Sheet, index: number, column: Column | null): string {
  const text = (quantity: string) => {
    const row = sheet.rows.find((it) => it.quantity === quantity);
    const cell = row?.cells[index];
    return row?.unit && cell && cell.text !== '' ? withMark(cell.text, row.unit) : null;
  };
  const height = text('height-with-shim');
  if (!column?.shims || height === null) return '';
  const made =
    column.shims.thicknesses.length === 0 ? `no shim: ${height}` : `${column.shims.text} under it makes ${height}`;
  const load = text('seat-load');
  return load === null ? made : `${made}, load ${load}`;
}
