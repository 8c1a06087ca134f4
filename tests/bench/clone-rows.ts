/**
 * Fills a workspace for measuring: the tickets of the practice shop are copied, row by row with new ids and numbers, onto
 * seeded customers. Copies have everything a ticket has, so lists, pages and indexes meet real rows; only the measuring
 * tool may write rows like this.
 */
import type { Database, Statement } from 'better-sqlite3';

/** Copied with their ticket, in an order in which parents come first. */
const TABLES = [
  'ticket',
  'casting',
  'container',
  'arrival_item',
  'item_fate',
  'piece_count',
  'condition_mark',
  'promise',
  'placement',
  'contact_log',
  'added_work',
  'added_work_option',
  'work_line',
  'work_line_factor',
  'work_line_casting',
  'part_line',
  'estimate',
  'estimate_line',
  'approval',
  'approval_line',
  'operation',
  'operation_run',
  'finding',
  'hold',
  'photo',
  'casting_fact',
  'reading',
  'sign_off',
  'release',
  'release_item',
  'invoice',
  'invoice_line',
  'invoice_tax',
  'payment',
  'allocation',
  'ticket_now',
] as const;
/** Columns that must not repeat: each copy steps them by this much. */
const NUMBERS: Readonly<Record<string, string>> = {
  ticket: 'number',
  casting: 'tag_no',
  invoice: 'number',
  payment: 'receipt_number',
  ticket_now: 'number',
};
/** Ids of copy n are the pattern's plus n times this. */
export const COPY_STEP = 10_000_000;

type Row = Record<string, string | number | null>;
type Prepared = Readonly<{
  table: string;
  insert: Statement;
  columns: readonly string[];
  shifted: ReadonlyMap<string, string>;
}>;
/** The rows of one ticket, table by table. */
export type Pattern = ReadonlyMap<string, readonly Row[]>;

/** Everything that belongs to a ticket. */
export function readPattern(sqlite: Database, ticketId: number): Pattern {
  const invoices = ids(sqlite, 'SELECT id FROM invoice WHERE ticket_id = ?', ticketId);
  const payments = ids(sqlite, 'SELECT payment_id AS id FROM allocation WHERE ticket_id = ?', ticketId);
  return new Map(
    TABLES.map((table) => {
      if (table === 'ticket') return [table, rows(sqlite, 'SELECT * FROM ticket WHERE id = ?', ticketId)];
      if (table === 'payment')
        return [table, payments.flatMap((id) => rows(sqlite, 'SELECT * FROM payment WHERE id = ?', id))];
      if (table === 'invoice')
        return [table, invoices.flatMap((id) => rows(sqlite, 'SELECT * FROM invoice WHERE id = ?', id))];
      return [table, rows(sqlite, `SELECT * FROM ${table} WHERE ticket_id = ?`, ticketId)];
    }),
  );
}

const rows = (sqlite: Database, sql: string, id: number): Row[] => sqlite.prepare(sql).all(id) as Row[];
const ids = (sqlite: Database, sql: string, id: number): number[] =>
  (sqlite.prepare(sql).all(id) as { id: number | null }[]).flatMap((r) => (r.id === null ? [] : [r.id]));

/** What makes one copy: its place among the copies, its customer and how many days earlier it happened. */
export type Copy = Readonly<{
  no: number;
  customerId: number;
  personId: number;
  numberFrom: number;
  daysEarlier: number;
}>;

/** A writer of copies. Take the guards off before (`withoutGuards`), put them on again after. */
export function makeCopier(sqlite: Database): (pattern: Pattern, copy: Copy) => void {
  const prepared = new Map(TABLES.map((table) => [table as string, prepare(sqlite, table)]));
  return (pattern, copy) => {
    for (const [table, list] of pattern) {
      const to = prepared.get(table);
      if (to) for (const row of list) to.insert.run(...values(to, row, copy));
    }
  };
}

function prepare(sqlite: Database, table: string): Prepared {
  const columns = (sqlite.pragma(`table_info(${table})`) as { name: string }[]).map((c) => c.name);
  const references = sqlite.pragma(`foreign_key_list(${table})`) as { from: string; table: string }[];
  const own = new Set<string>(TABLES);
  const shifted = new Map(references.filter((r) => own.has(r.table)).map((r) => [r.from, r.table]));
  if (columns.includes('id')) shifted.set('id', table);
  const insert = sqlite.prepare(
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
  );
  return { table, insert, columns, shifted };
}

function values(to: Prepared, row: Row, copy: Copy): (string | number | null)[] {
  return to.columns.map((column) => {
    const value = row[column] ?? null;
    return value === null ? null : (anew(to, column, copy) ?? shift(to, column, value, copy));
  });
}

/** Columns that say who the copy belongs to. */
function anew({ table }: Prepared, column: string, copy: Copy): number | undefined {
  if (column === 'customer_id') return copy.customerId;
  if (column === 'person_id' || column === 'contact_person_id') return copy.personId;
  return column === 'number' && (table === 'ticket' || table === 'ticket_now') ? copy.numberFrom : undefined;
}

function shift(to: Prepared, column: string, value: string | number, copy: Copy): string | number {
  if (to.shifted.has(column) || NUMBERS[to.table] === column) return Number(value) + COPY_STEP * copy.no;
  if (to.table === 'container' && column === 'label') return `${copy.no}-${value}`;
  return typeof value === 'string' ? earlier(value, copy.daysEarlier) : value;
}

const A_DAY = 86_400_000;
const dates = new Map<string, string>();

/** A day or moment, so many days earlier; other text as it is. */
function earlier(value: string, days: number): string {
  if (days === 0 || !/^\d{4}-\d\d-\d\d(T|$)/.test(value)) return value;
  const day = value.slice(0, 10);
  const key = `${day} ${days}`;
  let made = dates.get(key);
  if (made === undefined) {
    made = new Date(Date.parse(`${day}T00:00:00.000Z`) - days * A_DAY).toISOString().slice(0, 10);
    if (dates.size > 50_000) dates.clear();
    dates.set(key, made);
  }
  return made + value.slice(10);
}

/** Do work with the guards of the tables off (they check row by row), then put them on again as they were. */
export function withoutGuards(sqlite: Database, work: () => void): void {
  const guards = sqlite
    .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND name NOT LIKE 'find\\_\\_%' ESCAPE '\\'")
    .all() as { name: string; sql: string }[];
  for (const { name } of guards) sqlite.exec(`DROP TRIGGER ${name}`);
  work();
  for (const { sql } of guards) sqlite.exec(sql);
}
