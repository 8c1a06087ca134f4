/** Brings a workspace file to this program's version, one step at a time, each in its own transaction. */
import type { Database } from 'better-sqlite3';
import { AppError } from '../kernel/errors.ts';
import { steps as allSteps, type Step } from './migrations/index.ts';

/** The version of a file: the number of steps it has seen. */
export const versionOf = (sqlite: Database): number => Number(sqlite.pragma('user_version', { simple: true }));

/**
 * Run the missing steps.
 *
 * @param before called once when at least one step is missing from a file that has seen some (the backup before migrating).
 * @throws AppError `unavailable` `db/newer-file` when the file comes from a newer program; the file is left untouched.
 */
export function migrate(sqlite: Database, steps: readonly Step[] = allSteps, before?: () => void): void {
  const from = versionOf(sqlite);
  if (from > steps.length) {
    throw new AppError(
      'unavailable',
      'db/newer-file',
      `This workspace was last opened by a newer Benchtag (version ${from} of the file, this program knows ${steps.length}). Nothing was changed. Update Benchtag on this computer, then open it again.`,
    );
  }
  if (from > 0 && from < steps.length) before?.();
  for (const [index, step] of steps.entries()) {
    if (index < from) continue;
    runStep(sqlite, step, index + 1);
  }
}

function runStep(sqlite: Database, step: Step, version: number): void {
  // Rebuilding a table drops rows that others point to; the check below proves that nothing dangles afterwards.
  sqlite.pragma('foreign_keys = OFF');
  try {
    sqlite
      .transaction(() => {
        step(sqlite);
        const dangling = sqlite.pragma('foreign_key_check') as unknown[];
        if (dangling.length > 0) throw new Error(`step ${version} leaves ${dangling.length} dangling references`);
        sqlite.pragma(`user_version = ${version}`);
      })
      .immediate();
  } finally {
    sqlite.pragma('foreign_keys = ON');
  }
}
