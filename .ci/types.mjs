/** Compiles the three projects without writing anything: what a browser may load, what runs in Node, the screens. */
import { runUnderNode24 } from './node24.mjs';

const codes = ['shared', 'node', 'renderer'].map((project) =>
  runUnderNode24('tsc', ['-p', `tsconfig.${project}.json`]),
);
process.exitCode = codes.every((code) => code === 0) ? 0 : 1;
