/**
 * Runs once before the end-to-end tests: builds the screens when `dist/renderer` is missing or older than its sources.
 *
 * In a process of its own with NODE_ENV=production: under vitest's own environment the build would be React's slow
 * development one.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const sources = ['renderer', 'core', 'assets', 'package-lock.json', 'vite.config.ts'];

/** The latest change below a folder, in milliseconds since 1970; 0 when there is none. */
function latestChange(path: string): number {
  if (!existsSync(path)) {
    return 0;
  }
  const own = statSync(path);
  return own.isDirectory()
    ? Math.max(own.mtimeMs, ...readdirSync(path).map((name) => latestChange(join(path, name))))
    : own.mtimeMs;
}

/** Called by vitest. */
export function setup(): void {
  const built = latestChange(join(root, 'dist/renderer/index.html'));
  if (built > Math.max(...sources.map((source) => latestChange(join(root, source))))) {
    return;
  }
  const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');
  const { NODE_ENV: _, VITEST: __, ...environment } = process.env;
  const done = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: root,
    env: { ...environment, NODE_ENV: 'production' },
    encoding: 'utf8',
    timeout: 120_000,
  });
  if (done.status !== 0) {
    throw new Error(`The screens did not build:\n${done.stdout}${done.stderr}`);
  }
}
