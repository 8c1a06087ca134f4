import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CALL, CHANGED } from '#electron/desktop/ipc-adapter.ts';
import {
  app,
  BrowserWindow,
  bridge,
  dialog,
  ipcMain,
  ipcRenderer,
  Menu,
  protocol,
  session,
} from '#tests/kit/electron.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const ours = { senderFrame: { url: 'app://benchtag/index.html', parent: null } };
const call = (event: unknown, request: unknown) =>
  (
    ipcMain.handlers.get(CALL) as (
      ...args: unknown[]
    ) => Promise<{ ok: boolean; output?: never; error?: { code: string } }>
  )(event, request);
const [window] = [() => BrowserWindow.made[0] as BrowserWindow];

// One program for all: it is started by importing it, as Electron does.
let folder = '';

beforeAll(async () => {
  folder = temporaryFolder();
  app.userData = folder;
  process.argv = ['electron', 'main.js', join(folder, 'shop')];
  await import('#electron/desktop/main.ts');
  for (let i = 0; i < 200 && BrowserWindow.made.length === 0; i += 1) await new Promise((done) => setTimeout(done, 20));
});

afterAll(async () => {
  app.emit('before-quit', { preventDefault: () => undefined });
  for (let i = 0; i < 200 && app.quits === 0; i += 1) await new Promise((done) => setTimeout(done, 20));
});

describe('the desktop program', () => {
  it('opens one window that is isolated, sandboxed and without Node', () => {
    expect(BrowserWindow.made).toHaveLength(1);
    expect(window().options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
    expect(window().loaded).toEqual(['app://benchtag/']);
    window().emit('ready-to-show');
    expect(window().shown).toBe(true);
  });

  it('goes nowhere else: no other page, no second window, no web view', () => {
    const tried = (name: string, url: string) => {
      let prevented = false;
      window().webContents.emit(name, { url, preventDefault: () => (prevented = true) });
      return prevented;
    };

    expect(tried('will-navigate', 'https://evil.example.com/')).toBe(true);
    expect(tried('will-navigate', 'file:///etc/passwd')).toBe(true);
    expect(tried('will-redirect', 'http://127.0.0.1:4170/')).toBe(true);
    expect(tried('will-navigate', 'app://benchtag/#/counter')).toBe(false);
    expect(tried('will-attach-webview', 'x:y')).toBe(true);
    expect(window().webContents.openHandler?.()).toEqual({ action: 'deny' });
  });

  it('permits nothing: asked, checked or by device', () => {
    const answers: boolean[] = [];
    (session.defaultSession.request as (...args: unknown[]) => void)(null, 'media', (granted: boolean) =>
      answers.push(granted),
    );

    expect(answers).toEqual([false]);
    expect((session.defaultSession.check as (...args: unknown[]) => boolean)(null, 'geolocation')).toBe(false);
    expect((session.defaultSession.device as (...args: unknown[]) => boolean)({})).toBe(false);
  });

  it('answers requests of our page, and of nobody else', async () => {
    expect(await call(ours, { name: 'shop/get-face', input: {} })).toMatchObject({ ok: true });
    for (const senderFrame of [
      null,
      { url: 'https://evil.example.com/', parent: null },
      { url: 'app://benchtag/', parent: {} },
    ]) {
      expect(await call({ senderFrame }, { name: 'shop/get-face', input: {} })).toMatchObject({
        ok: false,
        error: { code: 'desktop/not-ours' },
      });
    }
    expect(await call(ours, 'nonsense')).toMatchObject({ ok: false, error: { code: 'desktop/no-name' } });
  });

  it('pairs its own window, so that a person can sign in and first run works', async () => {
    const done = await call(ours, {
      name: 'shop/first-run',
      input: {
        name: 'Lantern Heads',
        currencyCode: 'USD',
        currencySign: '$',
        units: 'inch',
        paper: 'letter',
        timeZone: 'UTC',
        personName: 'Ada Ferrow',
        personInitials: 'AF',
        pin: '482915',
      },
    });
    expect(done).toMatchObject({ ok: true });
    const { staff } = (done as unknown as { output: { staff: number } }).output;

    expect(await call(ours, { name: 'staff/get-me', input: {}, as: staff })).toMatchObject({
      ok: true,
      output: { initials: 'AF' },
    });
    expect(window().webContents.sent).toContainEqual([CHANGED, { name: 'shop/first-run', touched: [] }]);
  });

  it('serves the screens under its own scheme and never a file of the computer', async () => {
    const get = (path: string) =>
      (protocol.handlers.get('app') as (request: Request) => Promise<Response>)(new Request(`app://benchtag${path}`));

    expect(protocol.privileged).toMatchObject([{ scheme: 'app', privileges: { standard: true, secure: true } }]);
    expect((await get('/../../package.json')).status).toBe(404);
    expect((await get('/%2e%2e/%2e%2e/etc/passwd')).status).toBe(404);
    expect((await get('/nothing.js')).headers.get('content-security-policy')).toContain("default-src 'self'");
  });

  it('loads the page again after a crash, and asks after a hang', async () => {
    const before = window().webContents.reloads;
    window().webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 1 });
    expect(window().webContents.reloads).toBe(before + 1);

    window().emit('unresponsive');
    await new Promise((done) => setTimeout(done, 10));
    expect(JSON.stringify(dialog.asked)).toContain('does not answer');
    expect(window().webContents.reloads).toBe(before + 2);
  });

  it('remembers where the window stood and comes to the front at a second start', () => {
    window().emit('close');
    expect(existsSync(join(folder, 'window.json'))).toBe(true);

    app.emit('second-instance');
    expect(window().focused).toBe(1);
  });

  it("has a menu with the platform's own roles", () => {
    expect(JSON.stringify(Menu.set)).toContain('"role":"editMenu"');
    expect(JSON.stringify(Menu.set)).toContain('Open workspace ...');
  });

  it('makes the backup of the day, shuts the workspace, then quits', async () => {
    let prevented = false;
    app.emit('before-quit', { preventDefault: () => (prevented = true) });
    for (let i = 0; i < 300 && app.quits === 0; i += 1) await new Promise((done) => setTimeout(done, 20));

    expect(prevented).toBe(true);
    expect(app.quits).toBe(1);
    expect(existsSync(join(folder, 'shop', 'backups'))).toBe(true);
    expect(existsSync(join(folder, 'shop', 'running.json'))).toBe(false);
  });
});

describe('the preload script', () => {
  it('gives the page one call and one listener, on the channels of the main process', async () => {
    await import('#electron/desktop/preload.ts');
    const heard: unknown[] = [];

    const page = bridge.benchtag as unknown as {
      call(request: unknown): Promise<unknown>;
      onChange(listener: (what: unknown) => void): () => void;
    };
    await page.call({ name: 'shop/get-face' });
    const end = page.onChange((what) => heard.push(what));
    ipcRenderer.emit(CHANGED, {}, { name: 'x' });
    end();
    ipcRenderer.emit(CHANGED, {}, { name: 'y' });

    expect(Object.keys(bridge.benchtag ?? {}).sort()).toEqual(['call', 'onChange']);
    expect(ipcRenderer.invoked).toEqual([[CALL, { name: 'shop/get-face' }]]);
    expect(heard).toEqual([{ name: 'x' }]);
  });
});
