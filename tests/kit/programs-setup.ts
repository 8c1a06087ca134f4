/**
 * Runs once before all tests: finds the programs of `programs.ts` and fetches the missing ones in one call.
 *
 * Root on Debian fetches by apt and fails when one is missing afterwards. Elsewhere each missing one is told in a sentence
 * and the tests that need it are skipped and counted. One call only: two at a time would meet the lock of the package system.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { findBrowser } from './browser.ts';
import { isOnPath, type Program, packageOf } from './programs.ts';

const MINUTE = 60_000;
const programs = Object.keys(packageOf) as Program[];
const canUseApt = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get') && existsSync('/etc/debian_version');

function hasPython(module: string): boolean {
  return spawnSync('python3', ['-c', `import ${module}`], { timeout: MINUTE }).status === 0;
}

function isThere(program: Program): boolean {
  if (program === 'chromium') {
    return findBrowser() !== undefined;
  }
  return program === 'numpy' || program === 'scipy' ? hasPython(program) : isOnPath(program);
}

const say = (sentence: string) => process.stderr.write(`${sentence}\n`);

function fetchByApt(packages: readonly string[]): void {
  say(`The tests fetch what this computer lacks: apt-get install ${packages.join(' ')}.`);
  const run = (...args: string[]) =>
    spawnSync('/usr/bin/apt-get', args, {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      stdio: ['ignore', 'ignore', 'inherit'],
      timeout: 10 * MINUTE,
    });
  run('update', '-qq');
  run('install', '-y', '-qq', '--no-install-recommends', ...packages);
}

function fetchBrowserByPlaywright(): void {
  say('The tests fetch a browser: playwright install chromium.');
  const folder = dirname(createRequire(import.meta.url).resolve('@playwright/test/package.json'));
  spawnSync(process.execPath, [join(folder, 'cli.js'), 'install', 'chromium'], {
    stdio: ['ignore', 'ignore', 'inherit'],
    timeout: 5 * MINUTE,
  });
}

/** Called by vitest. */
export function setup(project: TestProject): void {
  let missing = programs.filter((program) => !isThere(program));
  const packages = () => [...new Set(missing.map((program) => packageOf[program]))];

  if (missing.length > 0 && canUseApt) {
    fetchByApt(packages());
    missing = missing.filter((program) => !isThere(program));
    if (missing.length > 0) {
      throw new Error(`The tests need ${missing.join(', ')}, and apt-get did not bring ${packages().join(' ')}.`);
    }
  }
  if (missing.includes('chromium')) {
    fetchBrowserByPlaywright();
    missing = missing.filter((program) => !isThere(program));
  }
  for (const program of missing) {
    say(
      `${program} is not on this computer, so tests that need it are skipped. Install ${packageOf[program]} to run them.`,
    );
  }
  project.provide('missingPrograms', missing);
}
