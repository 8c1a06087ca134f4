/** Opens the one SQLite file of a workspace. The only place that imports better-sqlite3 as a value. */
import Sqlite, { type Database } from 'better-sqlite3';
import { AppError } from '../kernel/errors.ts';
import { migrate } from './migrate.ts';
import type { Step } from './migrations/index.ts';

type Options = Readonly<{
  /** Called before a file that has data is brought to a newer version. */
  beforeMigrating?: (sqlite: Database) => void;
  steps?: readonly Step[];
}>;

/** 2 = FULL: nobody can key in the last minute of a shop again after a power cut. */
const FULL = 2;

/**
 * Open and migrate.
 *
 * @param file a path, or `:memory:`
 * @throws AppError `unavailable` when the file is no workspace, is damaged or comes from a newer program.
 */
export function openDatabase(file: string, options: Options = {}): Database {
  const sqlite = openFile(file);
  try {
    sqlite.pragma('journal_mode = WAL');
    sqlite.pragma('foreign_keys = ON');
    sqlite.pragma('busy_timeout = 5000');
    sqlite.pragma('trusted_schema = OFF');
    sqlite.pragma('synchronous = FULL');
    migrate(sqlite, options.steps, () => options.beforeMigrating?.(sqlite));
    keepFull(sqlite);
    return sqlite;
  } catch (error) {
    sqlite.close();
    throw error instanceof AppError ? error : damaged(file, error);
  }
}

/** This build of SQLite reports NORMAL in WAL after the first write unless told again: set it, then read it back. */
function keepFull(sqlite: Database): void {
  sqlite.pragma('synchronous = FULL');
  const read = Number(sqlite.pragma('synchronous', { simple: true }));
  if (read !== FULL) throw new Error(`synchronous reads ${read}, wanted FULL (${FULL})`);
}

function openFile(file: string): Database {
  try {
    return new Sqlite(file);
  } catch (error) {
    throw damaged(file, error);
  }
}

const damaged = (file: string, cause: unknown): AppError =>
  new AppError(
    'unavailable',
    'db/cannot-open',
    `The workspace file cannot be opened: ${file}. It was left as it is. Restore the last backup, or choose another folder.`,
    { cause },
  );

/** Open a copy read only, for checks and backups. */
export const openReadOnly = (file: string): Database => new Sqlite(file, { readonly: true, fileMustExist: true });
