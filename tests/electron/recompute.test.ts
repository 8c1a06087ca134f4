import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '#core/db/open-database.ts';
import { firstRun, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Run it as a person does; what it prints and how it ended. */
function recompute(...args: string[]): Promise<{ printed: string; code: number }> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['electron/recompute.ts', ...args], { cwd: ROOT }, (error, stdout, stderr) => {
      resolve({ printed: stdout + stderr, code: typeof error?.code === 'number' ? error.code : 0 });
    });
  });
}

describe('npm run recompute', () => {
  it('finds a ticket that lists do not know, says so by its exit, and mends it when told to', async () => {
    const folder = join(temporaryFolder(), 'shop');
    const workspace = openSmall(folder);
    await firstRun(workspace);
    await workspace.close();
    const sqlite = openDatabase(join(folder, 'benchtag.sqlite'));
    const at = '2026-03-09T14:00:00.000Z';
    const terms =
      (sqlite.prepare('SELECT id FROM terms').get() as { id: number } | undefined)?.id ??
      sqlite
        .prepare("INSERT INTO terms (code, words, kind, days, created_at) VALUES ('cash', 'cash', 'on_receipt', 0, ?)")
        .run(at).lastInsertRowid;
    const customer = sqlite
      .prepare(
        "INSERT INTO customer (kind, name, short_name, terms_id, price_list, created_at) VALUES ('retail', 'Petra', 'Petra', ?, 'standard', ?)",
      )
      .run(terms, at).lastInsertRowid;
    sqlite
      .prepare("INSERT INTO ticket (number, customer_id, price_day, created_at) VALUES (77, ?, '2026-03-09', ?)")
      .run(customer, at);
    sqlite.close();

    const found = await recompute(folder);
    expect(found).toEqual({ code: 1, printed: expect.stringContaining('ticket 77: row is null, the facts say {') });
    expect(await recompute(folder, '--write')).toEqual({
      code: 0,
      printed: expect.stringMatching(/1 differed and were put right\.\n$/),
    });
    expect(await recompute(folder)).toEqual({ code: 0, printed: 'Everything agrees with the facts.\n' });
  });
});
