/** Adds one quantity to a workspace as its rows of data, the way a bench table and its quantities are kept. */
import type { Database } from 'better-sqlite3';

const NOW = '2026-03-09T14:00:00.000Z';

/** The quantity, and one row for what is read after work at the end of a table. @returns nothing */
export function bringInQuantity(
  sqlite: Database,
  table: string,
  {
    code,
    words,
    spotKind = null,
    derived = null,
  }: Readonly<{ code: string; words: string; spotKind?: string | null; derived?: string | null }>,
): void {
  const { lastInsertRowid } = sqlite
    .prepare(
      "INSERT INTO quantity (code, words, family, spot_kind, derived, side_matters, created_at) VALUES (?, ?, 'length', ?, ?, 0, ?)",
    )
    .run(code, words, spotKind, derived, NOW);
  sqlite
    .prepare(
      `INSERT INTO bench_table_row (bench_table_id, quantity_id, stage, position, shown, created_at)
       SELECT id, ?, 'after', 999, 1, ? FROM bench_table WHERE code = ?`,
    )
    .run(lastInsertRowid, NOW, table);
}
