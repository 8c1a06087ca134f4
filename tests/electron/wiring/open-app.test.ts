import { describe, expect, it } from 'vitest';
import { readDb } from '#core/db/query.ts';
import { nobody } from '#core/host/session.ts';
import { findDevice } from '#core/staff/store.ts';
import { openApp } from '#electron/wiring/open-app.ts';
import { hashToken, pairDevice } from '#electron/wiring/sessions.ts';
import { lastWorkspace, practiceFolder } from '#electron/wiring/workspace-folder.ts';
import { firstRun, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const makePractice = async (folder: string): Promise<void> => {
  const made = openSmall(folder);
  await firstRun(made);
  await made.close();
};

describe('openApp', () => {
  it('goes into the practice shop and back, and a paired screen stays paired', async () => {
    const home = temporaryFolder();
    const app = openApp({ home, makePractice });
    const token = await pairDevice(app.workspace(), 'Counter', 'pc', 'test');
    const here = () => nobody(findDevice(readDb(app.host().sqlite), hashToken(token))?.id ?? null, 'test', true);

    const into = await app.answer({ name: 'shop/open-practice-shop', input: {} }, here());

    expect(into).toMatchObject({ ok: true });
    expect(app.workspace().paths.folder).toBe(practiceFolder(home));
    expect(here().device).not.toBeNull();
    const back = await app.answer({ name: 'shop/leave-practice-shop', input: {} }, here());
    expect(back).toMatchObject({ ok: true });
    expect(app.workspace().paths.folder).toBe(lastWorkspace(home));
    await app.close();
  });

  it('opens the workspace opened last', async () => {
    const [home, folder] = [temporaryFolder(), temporaryFolder()];
    const first = openApp({ folder, home });
    await first.close();

    expect(lastWorkspace(home)).toBe(folder);
  });

  it('says so when the practice shop cannot be made, and stays where it was', async () => {
    const home = temporaryFolder();
    const app = openApp({ home, makePractice: () => Promise.reject(new Error('disk')) });

    const reply = await app.answer({ name: 'shop/open-practice-shop', input: {} }, nobody(null, 'test', true));

    expect(reply).toMatchObject({ ok: false, error: { kind: 'bug' } });
    expect(app.workspace().paths.folder).toBe(lastWorkspace(home));
    await app.close();
  });
});
