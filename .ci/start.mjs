/**
 * `npm start`: installs what is missing, builds and opens the app. Works from a fresh clone on Node 20 or newer.
 *
 * Words after `npm start --` reach electron/start.ts.
 */
import { installWhenStale, runUnderNode24 } from './node24.mjs';

installWhenStale();

const built = await runUnderNode24('node', ['.ci/build.mjs']);
if (built === 0) {
  process.exitCode = await runUnderNode24('node', ['electron/start.ts', ...process.argv.slice(2)]);
} else {
  process.stderr.write('Benchtag did not start: its screens could not be built (the reason is above).\n');
  process.exitCode = built;
}
