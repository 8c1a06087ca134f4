/** Figures read once, such as a deck's: as found beside after, both units, limit and small print below the words. */
import { otherDecimals, showValue, typedDecimals, withMark } from '../../kernel/measure-show.ts';
import { otherUnit } from '../../kernel/measure-units.ts';
import { showDoubt } from '../../readings/compute/doubt.ts';
import type { Cell, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import type { FactRow, FactTable, Figure } from '../contract/reading-tables.ts';
import { firstRow, isEmphasised, isPrinted, isRead, type Measured, replacedIn, rowPairs } from './measured.ts';
import { type TableOptions, verdictWord } from './place-tables.ts';
import { decisionNotes, limitWords, marksOf, missingNotes, otherNotes, sourceNotes } from './table-notes.ts';
import { list, sentence } from './words.ts';

/** Every table of figures read once in which something is to be printed. A figure that two tables show is read once. */
export function factTables(measured: Measured, options: TableOptions): FactTable[] {
  const seen = new Set<string>();
  return measured.sheets.flatMap((sheet) => {
    if (sheet.table.spotKind !== null) return [];
    const rows = sheet.rows.filter((row) => isPrinted(measured, row) && (row.derived || !seen.has(row.key)));
    for (const row of rows) seen.add(row.key);
    return rows.length === 0 ? [] : [factTable(measured, sheet, rows, options)];
  });
}

function factTable(
  measured: Measured,
  sheet: Sheet,
  rows: readonly SheetRow[],
  { certified, said }: TableOptions,
): FactTable {
  return {
    heading: sheet.table.words,
    rows: rowPairs(rows).map((pair) => factRow(measured, sheet, pair, certified)),
    notes: [
      ...sourceNotes(rows.filter(({ limits }) => limits.length > 0)),
      ...decisionNotes(measured, sheet, rows),
      ...missingNotes(sheet.rows),
      ...otherNotes(sheet, said),
    ],
  };
}

function factRow(measured: Measured, sheet: Sheet, pair: readonly SheetRow[], certified: boolean): FactRow {
  const at = (stage: SheetRow['stage']) => pair.find((row) => row.stage === stage);
  const [found, after] = [at('before'), at('after')];
  const last = after ?? found;
  const figure = (row: SheetRow | undefined) => (row ? figureOf(measured, row, certified) : null);
  const first = pair.flatMap((row) => {
    const cell = firstRow(measured, sheet.table.code, row)?.cells[0];
    return cell && isRead(cell) ? [`first run ${textOf(cell, row)}`] : [];
  });
  const point = last?.pointWords == null ? '' : `, ${last.pointWords}`;
  const limits = [...new Set(pair.flatMap((row) => row.limits.map(limitWords)))];
  const unit = last?.unitMark ? ` ${last.unitMark}` : '';
  const marks = pair.flatMap((row) => row.cells.flatMap((cell) => (isRead(cell) ? marksOf(cell) : [])));
  const replaced = pair.flatMap((row) =>
    row.cells.flatMap((cell) => replacedIn(measured, cell).map(({ words }) => words)),
  );
  return {
    words: `${sentence(last?.words ?? '')}${point}`,
    small: list([...limits.map((limit) => `limit ${limit}${unit}`), ...first, ...new Set(marks), ...replaced]),
    found: figure(found),
    after: figure(after),
    ...(after && isEmphasised(after) && { strong: true }),
  };
}

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
