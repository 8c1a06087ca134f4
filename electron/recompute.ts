/**
 * `npm run recompute [-- folder] [--write]`: works every word that lists read out again from facts and compares it with what
 * is stored. With `--write` what differs is put right. Exit code 1 when something differed and was left.
 */
import { parseArgs } from 'node:util';
import { readDb, writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';
import { AppError } from '#core/kernel/errors.ts';
import { compareAll, recomputeAll } from '#core/state/store/projections.ts';
import { openWorkspace } from './wiring/open-workspace.ts';
import { lastWorkspace } from './wiring/workspace-folder.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { write: { type: 'boolean', default: false } },
});

try {
  const workspace = openWorkspace(positionals[0] ?? lastWorkspace());
  const { sqlite, clock } = workspace.host();
  const stale = values.write
    ? sqlite
        .transaction(() => recomputeAll(writeDb(sqlite, { now: moment(clock().toISOString()), by: null })))
        .immediate()
    : compareAll(readDb(sqlite));
  for (const row of stale)
    process.stdout.write(
      `ticket ${row.ticketNumber}: ${row.column} is ${JSON.stringify(row.kept)}, the facts say ${JSON.stringify(row.facts)}\n`,
    );
  process.stdout.write(
    stale.length === 0
      ? 'Everything agrees with the facts.\n'
      : `${stale.length} differ${values.write ? 'ed and were put right' : ''}.\n`,
  );
  process.exitCode = stale.length > 0 && !values.write ? 1 : 0;
  await workspace.close();
} catch (error) {
  if (!(error instanceof AppError)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}
