/** The program's own log: JSON lines, at most two files of a few megabytes, with the reference that a person sees. */
import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Host } from '#core/host/host.ts';

const MOST_BYTES = 4 * 1024 * 1024;

/** A log in a folder. Writing it never throws: a full disk must not stop the work that is still possible. */
export function openLog(folder: string, most: number = MOST_BYTES): Host['log'] {
  const file = join(folder, 'benchtag.log');
  return (level, line) => {
    try {
      mkdirSync(folder, { recursive: true });
      if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > most)
        renameSync(file, join(folder, 'benchtag.old.log'));
      appendFileSync(file, `${JSON.stringify({ at: new Date().toISOString(), level, ...line })}\n`);
    } catch {
      // Nothing to be done about it here; the request itself answers what is wrong with the disk.
    }
  };
}
