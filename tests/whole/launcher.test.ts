/** The launcher of all commands: `.ci/node24.mjs` and `.ci/with-node24.mjs`. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const launch = (...words: string[]) =>
  spawnSync(process.execPath, [at('.ci/with-node24.mjs'), ...words], { encoding: 'utf8' });

type Packages = Record<string, Readonly<{ version?: string; optional?: boolean }>>;

/** What the launcher thinks of a folder whose lock file and whose installed packages are these. */
function isStale(wanted: Packages, installed: Packages | undefined): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-launcher-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  writeFileSync(join(folder, 'package-lock.json'), JSON.stringify({ packages: { '': {}, ...wanted } }));
  if (installed !== undefined) {
    mkdirSync(join(folder, 'node_modules'));
    writeFileSync(join(folder, 'node_modules/.package-lock.json'), JSON.stringify({ packages: installed }));
  }
  const question = `import(${JSON.stringify(at('.ci/node24.mjs'))}).then((l) => console.log(l.packagesAreStale(${JSON.stringify(folder)})))`;
  return spawnSync(process.execPath, ['-e', question], { encoding: 'utf8' }).stdout.trim() === 'true';
}

describe('with-node24', () => {
  it('runs a command under Node 24 or newer', () => {
    const { stdout } = launch('node', '--print', 'process.versions.node');

    expect(Number(stdout.split('.')[0])).toBeGreaterThanOrEqual(24);
  });

  it('answers with the exit code of the command', () => {
    expect(launch('node', '--eval', 'process.exit(7)').status).toBe(7);
  });

  it('says in words that a command is not there, and fails', () => {
    const { status, stderr } = launch('no-such-command-of-benchtag');

    expect(status).toBe(1);
    expect(stderr).toMatch(/no-such-command-of-benchtag/);
  });

  it.skipIf(process.platform === 'win32')('hands an end signal on, so that nothing is left running', async () => {
    const program = 'process.on("SIGTERM", () => process.exit(9)); setInterval(() => {}, 1000); console.log("here")';
    const launcher = spawn(process.execPath, [at('.ci/with-node24.mjs'), 'node', '--eval', program]);
    await once(launcher.stdout, 'data');

    launcher.kill('SIGTERM');

    expect(await once(launcher, 'close')).toEqual([9, null]);
  });
});

describe('packagesAreStale', () => {
  const wanted: Packages = {
    'node_modules/a': { version: '1.0.0' },
    'node_modules/for-another-system': { version: '2.0.0', optional: true },
  };

  it.each<[string, Packages | undefined, boolean]>([
    ['nothing is installed', undefined, true],
    ['all is installed but what is for another system', { 'node_modules/a': { version: '1.0.0' } }, false],
    ['a package is missing', {}, true],
    ['a package has another version', { 'node_modules/a': { version: '0.9.0' } }, true],
  ])('when %s', (_, installed, stale) => {
    expect(isStale(wanted, installed)).toBe(stale);
  });
});
