/** Tables with places across: as found above after, the limit at the end, what does not pass marked, what was replaced struck. */
import { showDoubt } from '../../readings/compute/doubt.ts';
import type { Cell, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import { countVerdicts } from '../../readings/compute/verdict.ts';
import type { ReadingRow, ReadingTable, Said, VerdictWord } from '../contract/reading-tables.ts';
import { firstRow, isEmphasised, isPrinted, isRead, type Measured, replacedIn, rowPairs } from './measured.ts';
import { decisionNotes, limitWords, markNotes, missingNotes, otherNotes, sourceNotes } from './table-notes.ts';
import { list, sentence } from './words.ts';

/** Options of one sheet of paper. */
export type TableOptions = Readonly<{
  /** Say the uncertainty of each row. */
  certified: boolean;
  /** Sentences said already; filled as tables are made. */
  said: Set<string>;
}>;

/** Letters of replaced figures, in the order of the table. */
type Letters = { readonly notes: Said[]; next(words: string): string };

const letters = (): Letters => {
  const notes: Said[] = [];
  return {
    notes,
    next(words) {
      const letter = letterAt(notes.length);
      notes.push({ label: letter, words: `${words}.` });
      return letter;
    },
  };
};

/** a to z, then aa, ab and so on. */
export const letterAt = (index: number): string =>
  (index >= 26 ? letterAt(Math.floor(index / 26) - 1) : '') + String.fromCharCode(97 + (index % 26));

/** Every table of places in which something is to be printed. */
export function placeTables(measured: Measured, options: TableOptions): ReadingTable[] {
  const sheets = measured.sheets.filter(({ table }) => table.spotKind !== null);
  return sheets.flatMap((sheet) => {
    const rows = sheet.rows.filter((row) => isPrinted(measured, row));
    return rows.length === 0 ? [] : [placeTable(measured, sheet, rows, options)];
  });
}

function placeTable(
  measured: Measured,
  sheet: Sheet,
  rows: readonly SheetRow[],
  { certified, said }: TableOptions,
): ReadingTable {
  const struck = letters();
  const groups = [...Map.groupBy(sheet.columns, ({ group }) => group)].map(([title, columns]) => ({
    title: sentence(title.toLowerCase()),
    spots: columns.map(({ label }) => label),
  }));
  const drawn = rowPairs(rows).flatMap((pair) => pairRows(measured, sheet, pair, struck, certified));
  const after = sheet.rows.filter((row) => row.shown && rows.some(({ quantity }) => quantity === row.quantity));
  return {
    heading: sheet.table.words,
    groups,
    rows: drawn,
    ...verdictOf(rows),
    notes: [
      ...sourceNotes(rows),
      ...markNotes(sheet, rows),
      ...decisionNotes(measured, sheet, rows),
      ...struck.notes,
      ...missingNotes(after),
      ...otherNotes(sheet, said),
    ],
  };
}

/** One quantity: found, first run, after; one row where both say the same. */
function pairRows(
  measured: Measured,
  sheet: Sheet,
  pair: readonly SheetRow[],
  struck: Letters,
  certified: boolean,
): ReadingRow[] {
  const [found, after] = [pair.find(({ stage }) => stage === 'before'), pair.find(({ stage }) => stage === 'after')];
  const isSame = found && after && found.cells.every((cell, index) => cell.text === after.cells[index]?.text);
  const staged = (
    isSame ? [{ row: after, stage: 'found, after' }] : pair.map((row) => ({ row, stage: STAGES[row.stage] }))
  ).flatMap(({ row, stage }) => {
    const first = firstRow(measured, sheet.table.code, row);
    return [
      ...(first ? [{ row: first, stage: `${stage}, first` }] : []),
      { row, stage: first ? `${stage}, again` : stage },
    ];
  });
  const isAlone = staged.length === 1 && staged[0]?.row.stage === 'after' && !isSame;
  const limitOf = (row: SheetRow | undefined): string => (row?.limits ?? []).map(limitWords).join('\n');
  return staged.map(({ row, stage }, index) => ({
    ...rowWords(measured, sheet, row, struck, certified),
    // The same limit stands once.
    limit: index > 0 && limitOf(row) === limitOf(staged[index - 1]?.row) ? '' : limitOf(row),
    ...(!isAlone && { stage }),
    ...(index > 0 && { again: true }),
    ...(index === staged.length - 1 && isEmphasised(row) && { key: true }),
  }));
}

const STAGES = { before: 'found', after: 'after' } as const;

function rowWords(
  measured: Measured,
  sheet: Sheet,
  row: SheetRow,
  struck: Letters,
  certified: boolean,
): Omit<ReadingRow, 'limit'> {
  const point = row.pointWords === null ? '' : `, ${row.pointWords}`;
  const mark = row.unitMark === '' ? '' : `, ${row.unitMark}`;
  const verdicts = row.cells.map(verdictWord);
  const gone = row.cells.map((cell, index) => {
    const old = replacedIn(measured, cell);
    const place = sheet.columns[index]?.label ?? '';
    return old.map(({ text, words }) => `${text} ${struck.next(`${place} ${row.words}: ${words}`)}`).join(' ') || null;
  });
  const doubt = certified ? doubtOf(measured, sheet, row) : '';
  return {
    label: `${sentence(row.words)}${point}${mark}`,
    // A stack of shims breaks between its shims.
    values: row.cells.map((cell) => (isRead(cell) ? cell.text.replace(/\s*\+\s*/g, ' + ') : twoReadings(cell))),
    ...(doubt !== '' && { doubt }),
    ...(verdicts.some((verdict) => verdict !== null) && { verdicts }),
    ...(gone.some((old) => old !== null) && { struck: gone }),
  };
}

/** Two people's figures that nobody chose between. */
const twoReadings = ({ choose }: Cell): string => choose.map(({ text }) => text).join(' or ');

/** Passing cells carry no mark, so that the others stand out. */
export function verdictWord(cell: Cell): VerdictWord | null {
  if (cell.verdict === null || !isRead(cell)) return null;
  if (cell.verdict.name === 'fail') return cell.verdict.direction ?? 'over';
  return cell.verdict.name === 'too close to call' ? 'close' : null;
}

/** The greatest uncertainty in a row: `±0.0010`; empty where no gauge says one. */
function doubtOf(measured: Measured, sheet: Sheet, row: SheetRow): string {
  const doubts = row.cells.flatMap((cell, index) => {
    const spot = measured.facts.spots.find(({ id }) => id === sheet.columns[index]?.spot) ?? null;
    const known = isRead(cell) ? measured.bench.known(row.quantity, spot, row.point, row.stage) : null;
    return known?.uncertainty ? [known.uncertainty] : [];
  });
  const text = doubts.length > 0 && row.unit !== null ? showDoubt(Math.max(...doubts), row.unit) : null;
  return text === null ? '' : `\u00b1${text}`;
}

/** Counts of what is judged. A missing figure is said, and keeps the pass mark away. */
function verdictOf(rows: readonly SheetRow[]): Pick<ReadingTable, 'verdict' | 'verdictWords'> {
  const judged = rows.filter((row) => row.cells.some((cell) => isRead(cell) && isJudged(cell)));
  const counts = countVerdicts(judged.flatMap((row) => row.cells.flatMap(({ verdict }) => verdict?.name ?? [])));
  const said = JUDGED.filter((name) => counts[name] > 0);
  if (said.length === 0) return { verdictWords: '' };
  const isPass = said.length === 1 && said[0] === 'pass';
  return {
    ...(isPass && { verdict: 'pass' }),
    verdictWords: `Figures with a limit: ${list(said.map((name) => `${counts[name]} ${name}`))}.`,
  };
}

const JUDGED = ['pass', 'fail', 'too close to call', 'not measured'] as const;

const isJudged = ({ verdict }: Cell): boolean =>
  verdict !== null && verdict.name !== 'not measured' && verdict.name !== 'no limit known';
