import { execFileSync } from 'node:child_process';
import { closeSync, openSync, statfsSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findFaults } from '#core/db/copy.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { firstRun, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

/** A disk of a few megabytes in memory; false where this person may not mount one. */
function mountSmall(folder: string): boolean {
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=16m', 'tmpfs', folder], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** Fill what is left of a disk. */
function fillUp(folder: string): void {
  const file = openSync(join(folder, 'filler'), 'w');
  const block = Buffer.alloc(64 * 1024);
  try {
    for (;;) writeSync(file, block);
  } catch {
    // Full: as wanted.
  } finally {
    closeSync(file);
  }
}

describe('a full disk', () => {
  it('is said in words, nothing is half saved, and the work goes on when there is room', async (context) => {
    const folder = temporaryFolder();
    if (!mountSmall(folder)) return context.skip('Only a person who may mount a disk in memory can run this.');
    try {
      const workspace = openSmall(join(folder, 'shop'));
      await firstRun(workspace);
      const owner = commandLineSession(workspace.host(), 'AF');
      const words = 'x'.repeat(7000);
      const add = (from: string) =>
        workspace.answer({ name: 'shop/add-text-version', input: { kind: 'warranty', body: words, from } }, owner);
      fillUp(folder);
      let reply = await add('2026-01-01');
      for (let i = 0; i < 400 && reply.ok; i += 1) reply = await add('2026-01-01');

      expect(reply).toMatchObject({
        ok: false,
        error: {
          kind: 'unavailable',
          message: expect.stringContaining('Nothing was saved; what you typed is still here'),
        },
      });
      execFileSync('rm', [join(folder, 'filler')]);
      expect(statfsSync(folder).bavail).toBeGreaterThan(0);
      expect(await add('2026-02-02')).toMatchObject({ ok: true });
      await workspace.close();
      expect(findFaults(join(folder, 'shop', 'benchtag.sqlite'))).toEqual([]);
    } finally {
      execFileSync('umount', ['-l', folder]);
    }
  });
});
