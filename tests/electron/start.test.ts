import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findElectron, obstacleHere } from '#electron/start.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

describe('obstacleHere', () => {
  it.each([
    ['no display', {}, 'linux', 1000, 'this computer has no display'],
    ['root', { DISPLAY: ':0' }, 'linux', 0, 'the desktop window does not run as root'],
    ['a desktop', { DISPLAY: ':0' }, 'linux', 1000, undefined],
    ['a Wayland desktop', { WAYLAND_DISPLAY: 'wayland-0' }, 'linux', 1000, undefined],
    ['Windows', {}, 'win32', undefined, undefined],
    ['a Mac', {}, 'darwin', 501, undefined],
  ] as const)('sees %s', (_, environment, platform, uid, sentence) => {
    expect(obstacleHere(environment, platform, uid)).toBe(sentence);
  });
});

describe('findElectron', () => {
  it('finds the program that the package has unpacked, and none before that', () => {
    const electron = temporaryFolder();
    expect(findElectron({}, electron)).toBeUndefined();
    writeFileSync(join(electron, 'path.txt'), 'electron');
    expect(findElectron({}, electron)).toBeUndefined();

    mkdirSync(join(electron, 'dist'));
    writeFileSync(join(electron, 'dist', 'electron'), '');

    expect(findElectron({}, electron)).toBe(join(electron, 'dist', 'electron'));
  });

  it('looks where ELECTRON_OVERRIDE_DIST_PATH says', () => {
    const [electron, elsewhere] = [temporaryFolder(), temporaryFolder()];
    writeFileSync(join(electron, 'path.txt'), 'electron');
    writeFileSync(join(elsewhere, 'electron'), '');

    expect(findElectron({ ELECTRON_OVERRIDE_DIST_PATH: elsewhere }, electron)).toBe(join(elsewhere, 'electron'));
  });
});

/** Run `node <args>` until a line matches; then end it. */
function runUntil(args: readonly string[], environment: Record<string, string>, wanted: RegExp): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: ROOT,
      env: { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '', ...environment },
    });
    let said = '';
    const hear = (part: Buffer): void => {
      said += part.toString();
      if (!wanted.test(said)) return;
      child.once('exit', () => resolve(said));
      child.kill('SIGTERM');
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', () =>
      wanted.test(said) ? resolve(said) : reject(new Error(`ended without the line: ${said}`)),
    );
  });
}

describe('npm start, where there can be no window', () => {
  it('says so in one sentence, serves the same app on 127.0.0.1 and prints the address', async () => {
    const folder = temporaryFolder();

    const said = await runUntil(
      ['electron/start.ts', join(folder, 'shop'), '--port', '0'],
      { BENCHTAG_HOME: folder },
      /Ctrl C ends it/,
    );

    expect(said).toMatch(
      /No desktop window: this computer has no display\. The same app runs in a browser of this computer\./,
    );
    expect(said).toMatch(/Open http:\/\/127\.0\.0\.1:\d+\/pair\?code=\d{8} in a browser/);
  });

  it('says in words that a workspace is open already, and ends', async () => {
    const folder = temporaryFolder();
    const shop = join(folder, 'shop');
    mkdirSync(shop);
    const first = runUntil(['electron/start.ts', shop, '--port', '0'], { BENCHTAG_HOME: folder }, /never said/).catch(
      () => '',
    );
    for (let i = 0; i < 100; i += 1) {
      await new Promise((done) => setTimeout(done, 50));
      if (existsSync(join(shop, 'running.json'))) break;
    }

    const said = await runUntil(
      ['electron/lan/main.ts', shop, '--port', '0'],
      { BENCHTAG_HOME: folder },
      /open already/,
    );

    expect(said).toMatch(/open already at http:\/\/127\.0\.0\.1:\d+\/\. Nothing was changed/);
    process.kill((JSON.parse(readFileSync(join(shop, 'running.json'), 'utf8')) as { pid: number }).pid, 'SIGTERM');
    await first;
  });
});
