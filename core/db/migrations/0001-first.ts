/** Step 1: the tables of the first release. Shipped: never edited. */
import type { Database } from 'better-sqlite3';
import { knownTables } from './0001/castings-known.ts';
import { goodsTables } from './0001/goods.ts';
import { groundTables } from './0001/ground.ts';
import { jobTables } from './0001/job.ts';
import { limitTables } from './0001/limits-and-readings.ts';
import { lineTables } from './0001/lines.ts';
import { moneyTables } from './0001/money.ts';
import { operationKindTables } from './0001/operations-known.ts';
import { peopleTables } from './0001/people.ts';
import { rateTables } from './0001/rates-and-quantities.ts';
import { workTables } from './0001/work.ts';

/** Every table; references may point forward, SQLite resolves them when rows come. */
const tables = [
  ...groundTables,
  ...knownTables,
  ...operationKindTables,
  ...rateTables,
  ...peopleTables,
  ...jobTables,
  ...goodsTables,
  ...lineTables,
  ...workTables,
  ...limitTables,
  ...moneyTables,
];

export function up(sqlite: Database): void {
  for (const sql of tables) sqlite.exec(sql);
}
