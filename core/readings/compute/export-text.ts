/**
 * Readings as a file: CSV for a spreadsheet, JSON for a program. Both carry the same rows and the same names of columns.
 *
 * CSV is RFC 4180: UTF-8 without a mark at its head, commas, CR LF, a quotation mark doubled inside quotes, one line of names.
 * A cell that is nothing is empty. Figures are written with a point and a hyphen for minus. Words that begin like a formula
 * get an apostrophe before them, so that a spreadsheet shows them and does not run them; figures never do.
 */
import type { ExportRow, ReadingsExport } from './export-model.ts';

type Field = string | number | boolean | null | readonly string[];
type ColumnOf = Readonly<{ name: string; of(row: ExportRow): Field }>;

const column = (name: string, of: ColumnOf['of']): ColumnOf => ({ name, of });

/** Names and order of the columns; JSON has the same names as keys. */
const COLUMNS: readonly ColumnOf[] = [
  column('tag', (row) => row.tag),
  column('ticket', (row) => row.ticket),
  column('casting_number', (row) => row.castingNumber),
  column('table', (row) => row.table),
  column('place', (row) => row.place),
  column('place_words', (row) => row.placeWords),
  column('quantity', (row) => row.quantity),
  column('quantity_words', (row) => row.words),
  column('point', (row) => row.point),
  column('stage', (row) => row.stage),
  column('status', (row) => row.status),
  column('measured', (row) => row.measured),
  column('typed', (row) => row.typed),
  column('value', (row) => row.value),
  column('unit', (row) => row.unit),
  column('other_value', (row) => row.otherValue),
  column('other_unit', (row) => row.otherUnit),
  column('base', (row) => row.base),
  column('base_unit', (row) => row.baseUnit),
  column('said', (row) => row.said),
  column('low', (row) => row.low),
  column('high', (row) => row.high),
  column('target', (row) => row.target),
  column('limit_unit', (row) => row.limitUnit),
  column('limit_source', (row) => row.source),
  column('verdict', (row) => row.verdict),
  column('direction', (row) => row.direction),
  column('marks', (row) => row.marks),
  column('decision', (row) => row.decision),
  column('gauge', (row) => row.gauge),
  column('gauge_serial', (row) => row.gaugeSerial),
  column('uncertainty', (row) => row.uncertainty),
  column('by', (row) => row.by),
  column('at', (row) => row.at),
  column('replaced_why', (row) => row.replacedWhy),
  column('replaced_by', (row) => row.replacedBy),
  column('replaced_at', (row) => row.replacedAt),
];

/** The rows as CSV. */
export function csvOf({ rows }: ReadingsExport): string {
  const lines = [COLUMNS.map(({ name }) => name), ...rows.map((row) => COLUMNS.map(({ of }) => cellText(of(row))))];
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/** Everything as JSON, indented so that a person can read it too. */
export function jsonOf({ rows, ...about }: ReadingsExport): string {
  const named = rows.map((row) => Object.fromEntries(COLUMNS.map(({ name, of }) => [name, of(row)])));
  return `${JSON.stringify({ ...about, rows: named }, null, 1)}\n`;
}

function cellText(field: Field): string {
  if (field === null) return '';
  if (typeof field === 'number' || typeof field === 'boolean') return String(field);
  return harmless(typeof field === 'string' ? field : field.join('; '));
}

const FIGURE = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;
/** How a spreadsheet tells a formula, also behind a tab or the end of a line. */
const FORMULA = /^[=+\-@\t\r\n]/;

const harmless = (words: string): string => (FORMULA.test(words) && !FIGURE.test(words) ? `'${words}` : words);

const quoted = (words: string): string => (/[",\r\n]/.test(words) ? `"${words.replaceAll('"', '""')}"` : words);
