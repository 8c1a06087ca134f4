/**
 * `npm start`: installs what is missing, builds and opens the app. Works from a fresh clone on Node 20 or newer.
 *
 * Words after `npm start --` reach electron/start.ts.
 */
import { installWhenStale, runUnderNode24 } from './node24.mjs';

installWhenStale();

const builds = [
  ['vite', 'build', '--logLevel', 'warn'],
  ['vite', 'build', '--config', 'vite.electron.config.ts', '--logLevel', 'warn'],
  ['vite', 'build', '--config', 'vite.electron.config.ts', '--mode', 'preload', '--logLevel', 'warn'],
];
for (const [command, ...args] of builds) {
  const code = runUnderNode24(command, args);
  if (code !== 0) {
    process.stderr.write('Benchtag did not start: its screens could not be built (the reason is above).\n');
    process.exit(code);
  }
}
process.exit(runUnderNode24('node', ['electron/start.ts', ...process.argv.slice(2)]));
