/**
 * Runs dependency-cruiser over the rooms. Fails also when it saw next to nothing, because it exits 0 on TypeScript that
 * it cannot read; and lets `import type` through where only loading a package does harm, which it cannot tell apart.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { environmentOfNode24, root } from './node24.mjs';

const MODULES_AT_LEAST = 30;

/** Rules about loading a package: rule name to package name. */
const TYPES_ARE_FREE = {
  'only-db-opens-sqlite': 'better-sqlite3',
  'only-main-and-preload-load-electron': 'electron',
};

function importsTypesOnly(file, name) {
  const source = readFileSync(join(root, file), 'utf8');
  const mentions = source.match(new RegExp(`(from|import|require\\()\\s*['"]${name}['"]`, 'g')) ?? [];
  const types = source.match(new RegExp(`import type [^;]*? from ['"]${name}['"]`, 'g')) ?? [];
  return mentions.length === types.length && !source.includes(`import('${name}')`);
}

const isForbidden = ({ rule, from }) =>
  !(rule.name in TYPES_ARE_FREE) || !importsTypesOnly(from, TYPES_ARE_FREE[rule.name]);

const rooms = ['core', 'electron', 'renderer', 'demo-data'].filter((room) => existsSync(join(root, room)));
const program = join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruiser.mjs');
const ran = spawnSync('node', [program, ...rooms, '--output-type', 'json', '--config', '.dependency-cruiser.mjs'], {
  cwd: root,
  encoding: 'utf8',
  env: environmentOfNode24(),
  maxBuffer: 1e9,
});

try {
  const { summary } = JSON.parse(ran.stdout);
  const cruised = summary.totalCruised;
  const broken = summary.violations
    .filter(isForbidden)
    .map(
      ({ rule, from, to, cycle }) => `${rule.name}: ${from} -> ${cycle?.map((step) => step.name).join(' -> ') ?? to}`,
    );
  process.stdout.write(`${cruised} modules, ${broken.length} forbidden arrows\n`);
  process.stdout.write(broken.map((line) => `${line}\n`).join(''));
  if (cruised < MODULES_AT_LEAST) {
    process.stdout.write(`Only ${cruised} modules seen, at least ${MODULES_AT_LEAST} expected: the check is blind.\n`);
  }
  process.exitCode = broken.length > 0 || cruised < MODULES_AT_LEAST ? 1 : 0;
} catch {
  process.stdout.write(`dependency-cruiser did not answer:\n${ran.stdout}${ran.stderr}\n`);
  process.exitCode = 1;
}
