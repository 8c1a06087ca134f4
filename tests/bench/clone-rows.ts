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

type Value = string | number | null;
type Row = Readonly<Record<string, Value>>;
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

/** What one row of a pattern becomes in a copy: its values as they are, and the places that are made anew. */
type Plan = Readonly<{ insert: Statement; base: readonly Value[]; changes: readonly Change[] }>;
type Change = Readonly<{ at: number; make: (copy: Copy) => Value }>;

/** A writer of copies. Take the guards off before (`withoutGuards`), put them on again after. */
export function makeCopier(sqlite: Database): (pattern: Pattern, copy: Copy) => void {
  const plans = new Map<Pattern, readonly Plan[]>();
  return (pattern, copy) => {
    let plan = plans.get(pattern);
    if (!plan) {
      plan = [...planRows(sqlite, pattern), ...planFind(sqlite, pattern)];
      plans.set(pattern, plan);
    }
    for (const row of plan) {
      const values = [...row.base];
      for (const { at, make } of row.changes) values[at] = make(copy);
      row.insert.run(values);
    }
  };
}

function planRows(sqlite: Database, pattern: Pattern): Plan[] {
  return [...pattern].flatMap(([table, list]) => {
    const shifted = new Set(ownReferences(sqlite, table).map((r) => r.from));
    return list.map((row) => planRow(sqlite, table, row, (column, value) => changeOf(table, shifted, column, value)));
  });
}

function planRow(
  sqlite: Database,
  table: string,
  row: Row,
  change: (column: string, value: Value) => Change['make'] | undefined,
): Plan {
  const columns = Object.keys(row).filter((column) => row[column] !== null);
  const base = columns.map((column) => row[column] ?? null);
  const marks = columns.map(() => '?').join(', ');
  return {
    insert: sqlite.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${marks})`),
    base,
    changes: columns.flatMap((column, at) => {
      const make = change(column, base[at] ?? null);
      return make ? [{ at, make }] : [];
    }),
  };
}

/** What the find box looks in for this ticket: the copy has the same words under its own ids. */
function planFind(sqlite: Database, pattern: Pattern): Plan[] {
  const ticket = Number(pattern.get('ticket')?.[0]?.id);
  const castings = (pattern.get('casting') ?? []).map((row) => Number(row.id));
  const stepId = (column: string, value: Value): Change['make'] | undefined =>
    column === 'rowid' || column === 'casting_id' ? ({ no }) => Number(value) + COPY_STEP * no : undefined;
  const of = (table: string, found: readonly Row[]): Plan[] => found.map((row) => planRow(sqlite, table, row, stepId));
  return [
    ...of('find_ticket', rows(sqlite, 'SELECT rowid, orders, engine, rest FROM find_ticket WHERE rowid = ?', ticket)),
    ...castings.flatMap((id) => [
      ...of('find_number', rows(sqlite, 'SELECT rowid, number FROM find_number WHERE rowid = ?', id)),
      ...of('find_casting', rows(sqlite, 'SELECT * FROM find_casting WHERE casting_id = ?', id)),
    ]),
  ];
}

/** References of a table to rows that are copied too. */
function ownReferences(sqlite: Database, table: string): { from: string; table: string }[] {
  const own = new Set<string>(TABLES);
  const list = sqlite.pragma(`foreign_key_list(${table})`) as { from: string; table: string }[];
  return list.filter((r) => own.has(r.table));
}

/**
 * A pattern with at most so many rows of each named table; what hung on a row left out goes with it. Sums on the ticket's
 * invoices stay as they were.
 */
export function thin(sqlite: Database, pattern: Pattern, atMost: Readonly<Record<string, number>>): Pattern {
  const kept = new Map<string, Set<Value>>(TABLES.map((table) => [table, new Set<Value>()]));
  return new Map(
    TABLES.map((table) => {
      const references = ownReferences(sqlite, table);
      const list: Row[] = [];
      for (const row of pattern.get(table) ?? []) {
        const whole = references.every((r) => {
          const to = row[r.from] ?? null;
          return to === null || kept.get(r.table)?.has(to) === true;
        });
        if (!whole || list.length >= (atMost[table] ?? Number.POSITIVE_INFINITY)) continue;
        list.push(row);
        kept.get(table)?.add(row.id ?? null);
      }
      return [table, list];
    }),
  );
}

/** How a column's value is made for a copy; undefined for one that stays. */
function changeOf(
  table: string,
  shifted: ReadonlySet<string>,
  column: string,
  value: Value,
): Change['make'] | undefined {
  if (column === 'customer_id') return (copy) => copy.customerId;
  if (column === 'person_id' || column === 'contact_person_id') return (copy) => copy.personId;
  if (column === 'number' && (table === 'ticket' || table === 'ticket_now')) return (copy) => copy.numberFrom;
  if (column === 'id' || shifted.has(column) || NUMBERS[table] === column)
    return ({ no }) => Number(value) + COPY_STEP * no;
  if (table === 'container' && column === 'label') return ({ no }) => `${no}-${value}`;
  if (typeof value === 'string' && A_DATE.test(value)) return ({ daysEarlier }) => earlier(value, daysEarlier);
  return undefined;
}

const A_DATE = /^\d{4}-\d\d-\d\d(T|$)/;
const A_DAY = 86_400_000;
const dates = new Map<string, string>();

/** A day or moment, so many days earlier. */
function earlier(value: string, days: number): string {
  if (days === 0) return value;
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

/**
 * Do work with the triggers of the tables off and references unchecked (both work row by row), then put them on as they were.
 * Copies point to copies, and their rows of the find box are written with them.
 */
export function withoutGuards(sqlite: Database, work: () => void): void {
  const guards = sqlite.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").all() as {
    name: string;
    sql: string;
  }[];
  for (const { name } of guards) sqlite.exec(`DROP TRIGGER ${name}`);
  sqlite.pragma('foreign_keys = OFF');
  work();
  sqlite.pragma('foreign_keys = ON');
  for (const { sql } of guards) sqlite.exec(sql);
}
