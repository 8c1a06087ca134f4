/** Compiles the three projects without writing anything: what a browser may load, what runs in Node, the screens. */
import { runUnderNode24 } from './node24.mjs';

for (const project of ['shared', 'node', 'renderer']) {
  if ((await runUnderNode24('tsc', ['-p', `tsconfig.${project}.json`])) !== 0) {
    process.exitCode = 1;
  }
}
