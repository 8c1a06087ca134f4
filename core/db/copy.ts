/** Copies of a workspace file and the proof that one is whole. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { openReadOnly } from './open-database.ts';

/**
 * Copy a database that may be in use, check the copy with `integrity_check`, then give it its name.
 *
 * VACUUM INTO reads one moment of the file and never restarts, however much is written meanwhile.
 *
 * @returns bytes of the copy
 * @throws Error when the copy is not whole; nothing stands under `to` then
 */
export function copyAndCheck(from: string, to: string): number {
  const part = `${to}.part`;
  rmSync(part, { force: true });
  const source = openReadOnly(from);
  try {
    source.prepare('VACUUM INTO ?').run(part);
  } finally {
    source.close();
  }
  const faults = findFaults(part);
  if (faults.length > 0) {
    rmSync(part, { force: true });
    throw new Error(`the copy is not whole: ${faults[0]}`);
  }
  const file = openSync(part, 'r+');
  fsyncSync(file);
  closeSync(file);
  renameSync(part, to);
  return statSync(to).size;
}

/** What `integrity_check` and `foreign_key_check` say; empty for a whole file. @throws when it cannot be opened at all. */
export function findFaults(file: string): string[] {
  const sqlite = openReadOnly(file);
  try {
    const said = (sqlite.pragma('integrity_check') as { integrity_check: string }[]).map((row) => row.integrity_check);
    const dangling = (sqlite.pragma('foreign_key_check') as unknown[]).length;
    return [...said.filter((line) => line !== 'ok'), ...(dangling > 0 ? [`${dangling} dangling references`] : [])];
  } finally {
    sqlite.close();
  }
}
