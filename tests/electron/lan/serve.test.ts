import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request as rawRequest } from 'node:http';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Serving, serveWorkspace } from '#electron/lan/serve.ts';
import { openApp, type RunningApp } from '#electron/wiring/open-app.ts';
import { readRunning } from '#electron/wiring/owner-lock.ts';
import { firstRun, OWNER_PIN, openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

type Started = Readonly<{ app: RunningApp; serving: Serving; owner: number; end(): Promise<void> }>;

async function start(): Promise<Started> {
  const folder = temporaryFolder();
  const small = openSmall(folder);
  const owner = await firstRun(small);
  await small.close();
  const screens = temporaryFolder();
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>Benchtag</title>');
  mkdirSync(join(screens, 'assets'));
  writeFileSync(join(screens, 'assets', 'main.js'), '1');
  const app = openApp({ folder, home: temporaryFolder() });
  const serving = await serveWorkspace(app, { port: 0, screens });
  return {
    app,
    serving,
    owner,
    async end() {
      await serving.stop();
      await app.close();
    },
  };
}

/** Open the pairing address as a browser would. @returns the cookie */
async function pair(serving: Serving): Promise<string> {
  const response = await fetch(serving.pairingAddress, { redirect: 'manual' });
  expect(response.status).toBe(303);
  return response.headers.get('set-cookie')?.split(';')[0] ?? '';
}

const call = async (serving: Serving, cookie: string, body: unknown, headers: Record<string, string> = {}) => {
  const response = await fetch(`${serving.address}call`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie, ...headers },
    body: JSON.stringify(body),
  });
  return {
    status: response.status,
    body: response.headers.get('content-type')?.includes('json') ? await response.json() : await response.text(),
  };
};

describe('serveWorkspace', () => {
  it('answers on 127.0.0.1 only and says where it runs', async () => {
    const { app, serving, end } = await start();

    expect(serving.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect(readRunning(app.workspace().paths)).toMatchObject({ address: serving.address, pid: process.pid });
    await end();
    expect(readRunning(app.workspace().paths)).toBeUndefined();
  });

  it('gives a browser that is not paired the pairing page and nothing else', async () => {
    const { serving, end } = await start();

    for (const path of ['', 'assets/main.js', 'events', `files/${'0'.repeat(64)}`]) {
      const response = await fetch(serving.address + path);
      expect(response.status).toBe(401);
      expect(await response.text()).toContain('not paired');
    }
    expect(await call(serving, '', { name: 'shop/get-face', input: {} })).toMatchObject({ status: 401 });
    await end();
  });

  it('refuses a wrong pairing code, and after twenty even the right one', async () => {
    const { serving, end } = await start();

    for (let i = 0; i < 20; i += 1)
      expect((await fetch(`${serving.address}pair?code=00000000`, { redirect: 'manual' })).status).toBe(403);

    expect((await fetch(serving.pairingAddress, { redirect: 'manual' })).status).toBe(403);
    await end();
  });

  it('lets a paired browser in, signs a person in and answers as that person', async () => {
    const { serving, owner, end } = await start();
    const cookie = await pair(serving);

    const nobodyYet = await call(serving, cookie, { name: 'staff/get-me', input: {} });
    const before = await call(serving, cookie, { name: 'staff/get-me', input: {}, as: owner });
    const signedIn = await call(serving, cookie, { name: 'staff/sign-in', input: { staff: owner, pin: OWNER_PIN } });
    const after = await call(serving, cookie, { name: 'staff/get-me', input: {}, as: owner });

    expect(nobodyYet.body).toMatchObject({ ok: false, error: { code: 'host/nobody-signed-in' } });
    expect(before.body).toMatchObject({ ok: false, error: { code: 'staff/not-signed-in-here' } });
    expect(signedIn.body).toMatchObject({ ok: true, output: { signedIn: true, me: { initials: 'AF' } } });
    expect(after.body).toMatchObject({ ok: true, output: { name: 'Ada Ferrow' } });
    await end();
  });

  it('makes a device wait after five wrong PINs in a row, and keeps each try', async () => {
    const { app, serving, owner, end } = await start();
    const cookie = await pair(serving);
    const attempt = (pin: string) => call(serving, cookie, { name: 'staff/sign-in', input: { staff: owner, pin } });
    for (let i = 0; i < 5; i += 1) await attempt('111222');

    const answer = await attempt(OWNER_PIN);

    expect(answer.body).toMatchObject({
      ok: true,
      output: { signedIn: false, message: expect.stringContaining('waits 5 minutes') },
    });
    expect(app.host().sqlite.prepare('SELECT count(*) AS n FROM pin_try WHERE matched = 0').get()).toEqual({ n: 5 });
    await end();
  });

  it('sends the headers that keep a page to itself', async () => {
    const { serving, end } = await start();
    const cookie = await pair(serving);

    const response = await fetch(serving.address, { headers: { cookie } });

    expect(response.headers.get('content-security-policy')).toContain("script-src 'self'");
    expect(response.headers.get('content-security-policy')).toContain("object-src 'none'");
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
    expect(await response.text()).toContain('<title>Benchtag</title>');
    await end();
  });

  it('answers no other host name, so that a name server cannot point a strange page here', async () => {
    const { serving, end } = await start();
    const { port } = new URL(serving.address);

    const status = await new Promise<number>((resolve) => {
      rawRequest({ host: '127.0.0.1', port, path: '/', headers: { host: 'evil.example.com' } }, (r) =>
        resolve(r.statusCode ?? 0),
      ).end();
    });

    expect(status).toBe(421);
    await end();
  });

  it('takes no write from another origin, no other content type, no file outside the screens', async () => {
    const { serving, end } = await start();
    const cookie = await pair(serving);

    expect((await call(serving, cookie, { name: 'shop/get-face' }, { origin: 'http://evil.example.com' })).status).toBe(
      403,
    );
    expect((await call(serving, cookie, { name: 'shop/get-face' }, { 'content-type': 'text/plain' })).status).toBe(415);
    expect((await fetch(`${serving.address}assets/..%2f..%2fbenchtag.sqlite`, { headers: { cookie } })).status).toBe(
      404,
    );
    await end();
  });

  it('keeps a picture under its hash and gives it back; refuses one that is none in a sentence', async () => {
    const { serving, end } = await start();
    const cookie = await pair(serving);
    const picture = readFileSync(new URL('../../fixtures/one-pixel.png', import.meta.url));
    const send = async (body: Uint8Array | string) =>
      (
        await fetch(`${serving.address}files`, {
          method: 'POST',
          headers: { cookie, 'content-type': 'image/png' },
          body: typeof body === 'string' ? body : new Blob([new Uint8Array(body)]),
        })
      ).json();

    const kept = (await send(picture)) as { output: { sha256: string } };
    const refused = await send('no picture at all');

    const back = await fetch(`${serving.address}files/${kept.output.sha256}`, { headers: { cookie } });
    expect(back.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await back.arrayBuffer()).equals(picture)).toBe(true);
    expect(refused).toMatchObject({
      ok: false,
      error: { code: 'files/not-kept', message: expect.stringContaining('no picture') },
    });
    await end();
  });

  it('tells every page what was done, after it is on disk', async () => {
    const { serving, owner, end } = await start();
    const cookie = await pair(serving);
    const events = await fetch(`${serving.address}events`, { headers: { cookie } });
    const reader = events.body?.pipeThrough(new TextDecoderStream()).getReader();
    await reader?.read();

    await call(serving, cookie, { name: 'staff/sign-in', input: { staff: owner, pin: OWNER_PIN } });

    const heard = await reader?.read();
    expect(heard?.value).toBe('data: {"name":"staff/sign-in","touched":[]}\n\n');
    await reader?.cancel();
    await end();
  });

  it('lets a person who left meanwhile go no further, in words', async () => {
    const { app, serving, owner, end } = await start();
    const cookie = await pair(serving);
    await call(serving, cookie, { name: 'staff/sign-in', input: { staff: owner, pin: OWNER_PIN } });
    app.host().sqlite.prepare("UPDATE staff SET retired_on = '2026-03-01' WHERE id = ?").run(owner);

    const answer = await call(serving, cookie, { name: 'staff/get-me', input: {}, as: owner });

    expect(answer.body).toMatchObject({
      ok: false,
      error: { code: 'staff/retired', message: expect.stringContaining('What you typed is kept') },
    });
    await end();
  });
});
