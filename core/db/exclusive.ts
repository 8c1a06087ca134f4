/** A lock between programs that needs no cleaning up: an exclusive SQLite transaction held open on a small file. */
import Sqlite from 'better-sqlite3';

/** Hold `file` exclusively. @returns what lets go, or undefined when another program holds it. */
export function takeExclusively(file: string): (() => void) | undefined {
  const sqlite = new Sqlite(file, { timeout: 0 });
  try {
    sqlite.pragma('journal_mode = DELETE');
    sqlite.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    sqlite.close();
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY')) return undefined;
    throw error;
  }
  return () => {
    sqlite.exec('ROLLBACK');
    sqlite.close();
  };
}
