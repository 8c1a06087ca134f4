/** Makes a workspace look as an older program wrote it: one quantity is not known yet. */
import type { Database } from 'better-sqlite3';

const TABLES = ['limit_row', 'bench_table_row', 'needed_reading'];

/** Take a quantity out of the file, with its limits and rows, as if it had never been there. */
export function forgetQuantity(sqlite: Database, code: string): void {
  const id = sqlite.prepare('SELECT id FROM quantity WHERE code = ?').pluck().get(code) as number;
  for (const table of [...TABLES, 'quantity']) sqlite.exec(`DROP TRIGGER IF EXISTS ${table}__no_delete`);
  for (const table of TABLES) sqlite.prepare(`DELETE FROM ${table} WHERE quantity_id = ?`).run(id);
  sqlite.prepare('DELETE FROM quantity WHERE id = ?').run(id);
}
