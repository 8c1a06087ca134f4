/**
 * Writes `core/db/schema.ts` from a freshly migrated file: the TypeScript face of every table.
 *
 * Run by `npm run schema`; a test fails when the file is stale. Column names say the unit (`_cents`, `_nm`, `_s` ...), so the
 * brand follows from the name; choices follow from the CHECK of the column.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Database } from 'better-sqlite3';
import { openDatabase } from './open-database.ts';

type Column = Readonly<{ name: string; type: string; notnull: number; dflt_value: string | null; pk: number }>;

const BRANDS: readonly [ending: RegExp, brand: string][] = [
  [/(^|_)cents$/, 'Cents'],
  [/(^|_)e4$/, 'PriceE4'],
  [/(^|_)bp$/, 'BasisPoints'],
  [/^factor$/, 'Factor'],
  [/(^|_)nm$/, 'Nanometres'],
  [/(^|_)udeg$/, 'Microdegrees'],
  [/(^|_)g$/, 'Grams'],
  [/(^|_)s$/, 'Seconds'],
  [/(^|_)at$/, 'Moment'],
  [/(_|^)on$|_until$|^due_by$|_day$/, 'Day'],
];
const UNITS = ['BasisPoints', 'Cents', 'Factor', 'Grams', 'Microdegrees', 'Nanometres', 'PriceE4', 'Seconds'];
/** Names that end like a unit and are none. */
const PLAIN = new Set(['found_on', 'depends_on']);

/** The text of schema.ts for a migrated database. */
export function schemaText(sqlite: Database): string {
  const tables = sqlite
    .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .all() as { name: string; sql: string }[];
  const plain = tables.filter(
    (t) => !/^CREATE VIRTUAL/i.test(t.sql) && !/^(find_\w+)_(data|idx|content|docsize|config)$/.test(t.name),
  );
  const bodies = plain.map((t) => tableType(sqlite, t.name, t.sql));
  const versioned = plain
    .filter((t) => columnsOf(sqlite, t.name).some((c) => c.name === 'version'))
    .map((t) => `'${t.name}'`);
  return [
    '/** Written by `npm run schema` from the migrations. Do not edit. */',
    "import type { Generated } from 'kysely';",
    "import type { Day, Moment } from '../kernel/days.ts';",
    "import type { Id } from '../kernel/ids.ts';",
    `import type { ${UNITS.join(', ')} } from '../kernel/units.ts';`,
    '',
    ...bodies.map((b) => b.text),
    'export type Schema = {',
    ...bodies.map((b) => `  ${b.name}: ${b.type};`),
    '};',
    '',
    '/** Tables whose rows carry a version. */',
    `export type Versioned = ${versioned.join(' | ')};`,
    '',
  ].join('\n');
}

const columnsOf = (sqlite: Database, table: string): Column[] => sqlite.pragma(`table_info(${table})`) as Column[];
const pascal = (name: string): string => name.replace(/(^|_)(\w)/g, (_, __, letter: string) => letter.toUpperCase());

function tableType(sqlite: Database, name: string, sql: string): { name: string; type: string; text: string } {
  const references = new Map(
    (sqlite.pragma(`foreign_key_list(${name})`) as { from: string; table: string }[]).map((r) => [r.from, r.table]),
  );
  const type = `${pascal(name)}Table`;
  const lines = columnsOf(sqlite, name).map(
    (column) => `  ${column.name}: ${columnType(column, { table: name, sql, references })};`,
  );
  return { name, type, text: [`export type ${type} = {`, ...lines, '};', ''].join('\n') };
}

type Around = Readonly<{ table: string; sql: string; references: ReadonlyMap<string, string> }>;

function columnType(column: Column, around: Around): string {
  const optional = column.notnull === 0 && column.pk === 0;
  const bare = bareType(column, around);
  const full = optional ? `${bare} | null` : bare;
  return column.pk === 1 || (column.dflt_value !== null && !optional) ? `Generated<${full}>` : full;
}

function bareType(column: Column, around: Around): string {
  const target = around.references.get(column.name);
  if (target) return `Id<'${target}'>`;
  if (column.pk === 1 && column.name === 'id') return `Id<'${around.table}'>`;
  const choices = choicesOf(column.name, around.sql);
  if (choices) return choices;
  const brand = PLAIN.has(column.name) ? undefined : BRANDS.find(([ending]) => ending.test(column.name))?.[1];
  const isText = column.type === 'TEXT';
  if (brand && isText === (brand === 'Day' || brand === 'Moment')) return brand;
  return isText ? 'string' : 'number';
}

function choicesOf(column: string, sql: string): string | undefined {
  const found = new RegExp(`CHECK \\(${column} IN \\(([^)]*)\\)\\)`).exec(sql);
  return found?.[1]?.split(', ').join(' | ');
}

if (import.meta.main) {
  const sqlite = openDatabase(':memory:');
  writeFileSync(fileURLToPath(new URL('./schema.ts', import.meta.url)), schemaText(sqlite));
  sqlite.close();
}
