/** Runs a command under Node 24: this one if it is new enough, else the one that npm installed. Works from Node 20. */
import { runUnderNode24 } from './node24.mjs';

const [command, ...args] = process.argv.slice(2);
if (command === undefined) {
  process.stderr.write('Usage: node .ci/with-node24.mjs <command> [arguments]\n');
  process.exit(2);
}
process.exitCode = await runUnderNode24(command, args);
