/**
 * Step 4: numbers with an unreadable character, newest first. Shipped: never edited.
 *
 * They are compared one by one, and the first that fill the list are enough: the index gives them in that order, with the
 * number, so that the table itself is not read.
 */
import type { Database } from 'better-sqlite3';

export function up(sqlite: Database): void {
  sqlite.exec('CREATE INDEX find_casting__wild_newest ON find_casting (casting_id, number) WHERE wild = 1');
  sqlite.exec('DROP INDEX find_casting__wild');
}
