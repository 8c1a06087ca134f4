import { describe, expect, it } from 'vitest';
import { listBackups } from '#electron/wiring/backups.ts';
import { startDailyBackup } from '#electron/wiring/daily-backup.ts';
import { firstRun, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const until = async (seen: () => boolean): Promise<void> => {
  for (let i = 0; i < 400 && !seen(); i += 1) await new Promise((done) => setTimeout(done, 20));
};

describe('startDailyBackup', () => {
  it('makes one a day, also for a program that is never closed', async () => {
    let now = new Date('2026-03-09T14:00:00.000Z');
    const workspace = openSmall(temporaryFolder(), () => now);
    await firstRun(workspace);
    const days = () => listBackups(workspace.paths).map((b) => b.at.slice(0, 10));

    const end = startDailyBackup({ workspace: () => workspace }, () => undefined, 30);
    await until(() => days().length === 1);
    now = new Date('2026-03-10T08:00:00.000Z');
    await until(() => days().length === 2);
    end();

    expect(days()).toEqual(['2026-03-10', '2026-03-09']);
    await workspace.close();
  });

  it('says what went wrong and tries again', async () => {
    const said: unknown[] = [];
    const broken = { backupOfTheDay: () => Promise.reject(new Error('disk')) };

    const end = startDailyBackup({ workspace: () => broken as never }, (error) => said.push(String(error)), 10);
    await until(() => said.length >= 2);
    end();

    expect(said[0]).toBe('Error: disk');
  });
});
