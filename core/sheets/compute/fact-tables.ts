/** Figures read once, such as a deck's: as found beside after, both units, limit and small print below the words. */
import { otherDecimals, showValue, typedDecimals, withMark } from '../../kernel/measure-show.ts';
import { otherUnit } from '../../kernel/measure-units.ts';
import { showDoubt } from '../../readings/compute/doubt.ts';
import type { Cell, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import type { FactRow, FactTable, Figure } from '../contract/reading-tables.ts';
import { bothUnits } from './both-units.ts';
import {
  firstRow,
  isEmphasised,
  isMeasured,
  isPrinted,
  isRead,
  type Measured,
  replacedIn,
  rowPairs,
} from './measured.ts';
import { type TableOptions, verdictWord } from './place-tables.ts';
import { decisionNotes, marksOf, missingNotes, otherNotes, sourceNotes } from './table-notes.ts';
import { list, sentence } from './words.ts';

/** Every table of figures read once in which something is to be printed. A figure that two tables show is printed once. */
export function factTables(measured: Measured, options: TableOptions): FactTable[] {
  const tables = measured.sheets
    .filter(({ table }) => table.spotKind === null)
    .map((sheet) => ({ sheet, rows: factRows(measured, sheet) }))
    .toSorted((a, b) => weightOf(a.rows) - weightOf(b.rows));
  const seen = new Set<string>();
  return tables.flatMap(({ sheet, rows }) => {
    const fresh = rows.filter(({ key }) => !seen.has(key));
    for (const { key } of fresh) seen.add(key);
    return fresh.length === 0 ? [] : [factTable(measured, sheet, fresh, options)];
  });
}

/** Both stages of a figure of which one was measured or follows from what was; data of the engine alone are left out. */
const factRows = (measured: Measured, sheet: Sheet): SheetRow[] =>
  rowPairs(sheet.rows.filter((row) => isPrinted(measured, row)))
    .filter((pair) => pair.some((row) => isMeasured(measured.bare, sheet, row)))
    .flat();

/** What the builder checks again comes first, then what follows from other figures, then the record of the work. */
function weightOf(rows: readonly SheetRow[]): number {
  if (rows.some(isEmphasised)) return 0;
  return rows.filter(({ derived }) => derived).length * 2 > rows.length ? 1 : 2;
}

function factTable(
  measured: Measured,
  sheet: Sheet,
  rows: readonly SheetRow[],
  { certified, said }: TableOptions,
): FactTable {
  const pairs = rowPairs(rows);
  const shared = sharedMarks(pairs);
  return {
    heading: sheet.table.words,
    rows: pairs.map((pair) => factRow(measured, sheet, pair, { certified, shared })),
    notes: [
      ...shared.map((words, index) => ({ label: `${index + 1}`, words: `${words}.` })),
      ...sourceNotes(rows.filter(({ limits }) => limits.length > 0)),
      ...decisionNotes(measured, sheet, rows),
      ...missingNotes(sheet.rows),
      ...otherNotes(sheet, said),
    ],
  };
}

/** Small print of more than one row: said once, with a number. */
function sharedMarks(pairs: readonly (readonly SheetRow[])[]): string[] {
  const marks = pairs.flatMap(marksOfPair);
  return [...new Set(marks.filter((mark, index) => marks.indexOf(mark) !== index))];
}

/** Each mark of a figure once. What is worked out says for both stages nearly the same: the last one speaks. */
function marksOfPair(pair: readonly SheetRow[]): string[] {
  const spoken = pair.every(({ derived }) => derived) ? pair.slice(-1) : pair;
  return [...new Set(spoken.flatMap((row) => row.cells.flatMap((cell) => (isRead(cell) ? marksOf(cell) : []))))];
}

type FactOptions = Readonly<{ certified: boolean; shared: readonly string[] }>;

function factRow(
  measured: Measured,
  sheet: Sheet,
  pair: readonly SheetRow[],
  { certified, shared }: FactOptions,
): FactRow {
  const at = (stage: SheetRow['stage']) => pair.find((row) => row.stage === stage);
  const [found, after] = [at('before'), at('after')];
  const last = after ?? found;
  const figure = (row: SheetRow | undefined) => (row ? figureOf(measured, row, certified) : null);
  const first = pair.flatMap((row) => {
    const cell = firstRow(measured, sheet.table.code, row)?.cells[0];
    return cell && isRead(cell) ? [`first run ${textOf(cell, row)}`] : [];
  });
  const point = last?.pointWords == null ? '' : `, ${last.pointWords}`;
  const limits = [...new Set(pair.flatMap((row) => row.limits.map((limit) => bothUnits(limit).first)))];
  const marks = marksOfPair(pair);
  const numbers = marks.flatMap((mark) => (shared.includes(mark) ? [shared.indexOf(mark) + 1] : []));
  const own = marks.filter((mark) => !shared.includes(mark));
  const replaced = pair.flatMap((row) =>
    row.cells.flatMap((cell) => replacedIn(measured, cell).map(({ words }) => words)),
  );
  return {
    words: `${sentence(last?.words ?? '')}${point}`,
    small: list([
      ...limits.map((limit) => (limit.startsWith('target') ? limit : `limit ${limit}`)),
      ...first,
      ...own,
      ...replaced,
      notesOf(numbers),
    ]),
    found: figure(found),
    after: figure(after),
    ...(after && isEmphasised(after) && { strong: true }),
  };
}

const notesOf = (numbers: readonly number[]): string =>
  numbers.length === 0
    ? ''
    : `${numbers.length === 1 ? 'note' : 'notes'} ${numbers.toSorted((a, b) => a - b).join(' ')}`;

const textOf = (cell: Cell, row: SheetRow): string =>
  row.unit === null || cell.unit === null || cell.text.endsWith(row.unitMark)
    ? cell.text
    : withMark(cell.text, row.unit);

function figureOf(measured: Measured, row: SheetRow, certified: boolean): Figure | null {
  const [cell] = row.cells;
  if (!cell) return null;
  const struck = replacedIn(measured, cell)
    .map(({ text }) => text)
    .join(' ');
  if (!isRead(cell)) return struck === '' ? null : { text: 'not measured', struck };
  const verdict = verdictWord(cell);
  const known = certified ? measured.bench.known(row.quantity, null, row.point, row.stage) : null;
  const doubt = known?.uncertainty && row.unit !== null ? showDoubt(known.uncertainty, row.unit) : null;
  const other = otherOf(cell);
  return {
    text: textOf(cell, row),
    ...(other !== null && { other }),
    ...(doubt !== null && { doubt: `\u00b1${doubt}` }),
    ...(verdict !== null && { verdict, word: cell.word }),
    ...(struck !== '' && { struck }),
  };
}

/** The same figure in the other unit, from the exact value. */
function otherOf({ value, unit, text }: Cell): string | null {
  const other = unit && otherUnit(unit);
  if (value === null || !unit || !other) return null;
  return withMark(showValue(value, other, otherDecimals(unit, typedDecimals(text))), other);
}
