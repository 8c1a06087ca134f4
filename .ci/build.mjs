/** Builds the screens and the desktop host into dist/. */
import { runUnderNode24 } from './node24.mjs';

const electron = ['--config', 'vite.electron.config.ts'];
for (const args of [[], electron, [...electron, '--mode', 'preload']]) {
  const code = await runUnderNode24('vite', ['build', '--logLevel', 'warn', ...args]);
  if (code !== 0) {
    process.exit(code);
  }
}
