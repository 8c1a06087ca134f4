/**
 * `npm run recompute -- [--workspace DIR] [--write]`: computes the state of every ticket from its facts and compares it with
 * what lists read. `--write` writes all of it anew. Opens the workspace itself: the program must not be running on it.
 */
import { parseArgs } from 'node:util';
import { readDb, writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';
import { AppError } from '#core/kernel/errors.ts';
import { compareAll, recomputeAll, type Stale } from '#core/state/store/projections.ts';
import { openWorkspace } from './wiring/open-workspace.ts';
import { lastWorkspace } from './wiring/workspace-folder.ts';

/** Differences printed; the count says how many there are. */
const SHOWN = 50;

async function recompute(folder: string, write: boolean): Promise<readonly Stale[]> {
  const workspace = openWorkspace(folder);
  try {
    const { sqlite, clock } = workspace.host();
    if (!write) return compareAll(readDb(sqlite));
    const db = writeDb(sqlite, { now: moment(clock().toISOString()), by: null });
    return sqlite.transaction(() => recomputeAll(db)).immediate();
  } finally {
    await workspace.close();
  }
}

try {
  const { values } = parseArgs({
    options: { workspace: { type: 'string' }, write: { type: 'boolean', default: false } },
  });
  const stale = await recompute(values.workspace ?? lastWorkspace(), values.write);
  const answer = { stale: stale.length, written: values.write, differences: stale.slice(0, SHOWN) };
  process.stdout.write(`${JSON.stringify(answer, null, 2)}\n`);
  process.exitCode = stale.length > 0 && !values.write ? 1 : 0;
} catch (error) {
  if (!(error instanceof AppError)) throw error;
  process.stdout.write(`${JSON.stringify({ error: { code: error.code, message: error.message } }, null, 2)}\n`);
  process.exitCode = 1;
}
