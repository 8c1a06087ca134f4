/**
 * `npm test`: every check and every test, from a fresh clone on Node 20 or newer.
 *
 * All parts run even when an early one fails, so that one run tells everything. The last line is always
 * `N passed, N failed`; skipped tests are counted in the line before it.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { collectUnderNode24, installWhenStale } from './node24.mjs';

const MINUTE = 60_000;
const run = (script) => ['node', [`.ci/${script}.mjs`]];
const checks = [
  ['lint and format', 'biome', ['check', '--error-on-warnings', '.']],
  ['types', ...run('types')],
  ['boundaries', ...run('boundaries')],
  ['layout', ...run('check-layout')],
  ['dead code', 'knip', ['--treat-config-hints-as-errors']],
  ['build', ...run('build')],
  ['size', 'size-limit', []],
];

const count = { passed: 0, failed: 0, skipped: 0 };

async function check([name, command, args]) {
  const from = Date.now();
  const { code, said } = await collectUnderNode24(command, args, { limit: 10 * MINUTE });
  const seconds = ((Date.now() - from) / 1000).toFixed(1);
  if (code === 0) {
    count.passed += 1;
    process.stdout.write(`ok    ${name} (${seconds} s)\n`);
  } else {
    count.failed += 1;
    process.stdout.write(`FAIL  ${name} (${seconds} s)\n${said.trimEnd()}\n\n`);
  }
}

/** Counts what vitest wrote down; a run that ends badly without a failed test (a crash, no tests) counts as one failure. */
function countTests(report, code) {
  let tests;
  try {
    tests = JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    tests = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] };
  }
  const brokenFiles = tests.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  const failed = tests.numFailedTests + brokenFiles.length;
  count.passed += tests.numPassedTests;
  count.skipped += tests.numPendingTests + tests.numTodoTests;
  count.failed += failed === 0 && (code !== 0 || tests.numPassedTests === 0) ? 1 : failed;
}

async function test() {
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-tests-'));
  const report = join(folder, 'report.json');
  // Whatever a test leaves behind goes with this folder: a run makes some thousand small ones.
  process.env.TMPDIR = folder;
  const { code } = await collectUnderNode24(
    'vitest',
    ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${report}`],
    { limit: 30 * MINUTE, onText: (text) => process.stdout.write(text) },
  );
  countTests(report, code);
  rmSync(folder, { recursive: true, force: true });
}

installWhenStale();
for (const each of checks) {
  await check(each);
}
await test();
if (count.skipped > 0) {
  process.stdout.write(`${count.skipped} skipped: this computer lacks what they need (named above).\n`);
}
process.stdout.write(`${count.passed} passed, ${count.failed} failed\n`);
process.exit(count.failed > 0 ? 1 : 0);
