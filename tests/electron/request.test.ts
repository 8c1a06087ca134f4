import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { serveWorkspace } from '#electron/lan/serve.ts';
import { openApp } from '#electron/wiring/open-app.ts';
import { firstRun, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Run the command line; the reply it prints and how it ended. */
function request(...args: string[]): Promise<{
  reply: { ok: boolean; output?: Record<string, unknown>; error?: { code: string; message: string } };
  code: number;
}> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['electron/request.ts', ...args], { cwd: ROOT }, (error, stdout) => {
      resolve({ reply: JSON.parse(stdout), code: typeof error?.code === 'number' ? error.code : 0 });
    });
  });
}

async function madeShop(): Promise<string> {
  const folder = join(temporaryFolder(), 'shop');
  const workspace = openSmall(folder);
  await firstRun(workspace);
  await workspace.close();
  return folder;
}

describe('npm run request', () => {
  it('opens the workspace itself when nobody has it, checks the right, and prints the reply', async () => {
    const folder = await madeShop();

    const { reply, code } = await request('staff/list-staff', '{}', '--as', 'AF', '--workspace', folder);

    expect(reply).toMatchObject({ ok: true, output: { people: [{ initials: 'AF' }] } });
    expect(code).toBe(0);
  });

  it('talks to the running program when there is one, so that there are never two owners', async () => {
    const folder = await madeShop();
    const app = openApp({ folder, home: temporaryFolder() });
    const serving = await serveWorkspace(app, { port: 0 });

    const { reply } = await request(
      'promises/add-holiday',
      '{"day":"2027-05-03","words":"Lock Day"}',
      '--as',
      'AF',
      '--workspace',
      folder,
    );

    expect(reply).toMatchObject({ ok: true });
    expect(
      app.host().sqlite.prepare("SELECT came_from FROM activity WHERE command = 'promises/add-holiday'").get(),
    ).toEqual({ came_from: 'command line' });
    await serving.stop();
    await app.close();
  });

  it("says who it knows when the initials are nobody's, and what is wrong with the input", async () => {
    const folder = await madeShop();

    expect(await request('staff/list-staff', '{}', '--as', 'ZZ', '--workspace', folder)).toMatchObject({
      code: 1,
      reply: { error: { code: 'request/nobody', message: expect.stringContaining('AF') } },
    });
    expect(await request('staff/list-staff', '{oops', '--as', 'AF', '--workspace', folder)).toMatchObject({
      code: 1,
      reply: { error: { code: 'request/not-json' } },
    });
  });
});
