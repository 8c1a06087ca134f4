/**
 * Every file lies where a reader looks for it: top-level rooms, roles in core, mirrored tests, no file too long to read.
 *
 * A test `tests/<path>/<file>.test.ts` belongs to `<path>/<file>.ts`. One source may have several tests:
 * `<file>.<topic>.test.ts` beside it, or any name in a folder `<file>/`.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { root } from './node24.mjs';
import { coreFiles, features, ground } from './rooms.mjs';

const MOST_LINES = 300;
const ROOMS = ['core', 'electron', 'renderer', 'tests', 'assets', 'demo-data', '.ci'];
const TOP_FILES = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  'package.json',
  'package-lock.json',
  'biome.json',
  'knip.json',
  'electron-builder.config.ts',
];
const CONFIGURATION = /^(\.[\w-]+(\.[\w-]+)*|tsconfig(\.\w+)?\.json|(vite|vitest)(\.\w+)?\.config\.ts)$/;
/** Names that say nothing about what is inside. */
const EMPTY_NAMES = ['utils', 'util', 'helpers', 'helper', 'common', 'misc', 'manager', 'data', 'info', 'index'];
/** Rooms of tests that mirror no source. */
const FREE_TESTS = ['tests/kit/', 'tests/e2e/', 'tests/bench/', 'tests/reference/', 'tests/fixtures/', 'tests/whole/'];
const NOT_OURS = ['node_modules', 'dist', '.git', 'coverage'];
const WRITTEN_BY_PROGRAM = ['core/db/schema.ts'];
const ROLE =
  /^(contract\.ts|compute\.ts|store\.ts|handlers\.ts|[a-z0-9-]+-sheet\.ts|(contract|store|handlers)\/[a-z0-9-]+\.ts|compute\/([a-z0-9-]+\/)?[a-z0-9-]+\.ts)$/;

function listFiles(folder) {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (NOT_OURS.includes(entry.name)) {
      return [];
    }
    return entry.isDirectory() ? listFiles(path) : [path];
  });
}

const files = listFiles('');
const read = (path) => readFileSync(join(root, path), 'utf8');
const isCode = (path) => /\.(ts|tsx|mjs|css)$/.test(path);
const isTest = (path) => /^tests\/.*\.test\.tsx?$/.test(path);

function checkTop() {
  return readdirSync(root, { withFileTypes: true })
    .filter(({ name }) => !NOT_OURS.includes(name))
    .filter((entry) =>
      entry.isDirectory()
        ? !ROOMS.includes(entry.name)
        : !(TOP_FILES.includes(entry.name) || CONFIGURATION.test(entry.name)),
    )
    .map(({ name }) => `${name}: no such room at the top; the rooms are ${ROOMS.join(', ')}`);
}

function checkRoles() {
  return files
    .filter((path) => path.startsWith('core/'))
    .flatMap((path) => {
      const [, folder, ...rest] = path.split('/');
      if (rest.length === 0) {
        return coreFiles.includes(folder) ? [] : [`${path}: only ${coreFiles.join(', ')} lie directly in core`];
      }
      if (ground.includes(folder)) {
        return [];
      }
      if (!features.includes(folder)) {
        return [`${path}: "${folder}" is no feature of .ci/rooms.mjs`];
      }
      return ROLE.test(rest.join('/'))
        ? []
        : [`${path}: not a role (contract, compute, store, handlers as a file or as a folder of files; <name>-sheet)`];
    });
}

function checkNames() {
  return files
    .filter((path) => /^(core|electron|renderer|demo-data)\//.test(path) && isCode(path))
    .filter((path) => EMPTY_NAMES.includes(basename(path).split('.')[0]))
    .filter((path) => path !== 'core/db/migrations/index.ts')
    .map((path) => `${path}: this name says nothing; name what is inside`);
}

/** The sources a test may belong to, best first. */
function sourcesOf(test) {
  const stem = test.replace(/^tests\//, '').replace(/\.test\.tsx?$/, '');
  const stems = [stem, stem.replace(/\.[^./]+$/, ''), dirname(stem)];
  return stems.flatMap((name) => [`${name}.ts`, `${name}.tsx`]);
}

function checkTestsHaveSources() {
  return files
    .filter((path) => isTest(path) && !FREE_TESTS.some((room) => path.startsWith(room)))
    .filter((test) => !sourcesOf(test).some((source) => existsSync(join(root, source))))
    .map((test) => `${test}: its source is gone (${sourcesOf(test)[0]})`);
}

/** A compute or a sheet that does something: not only types, and not the list of a folder of the same name. */
function needsTest(path) {
  if (!/^core\/[^/]+\/(compute|[a-z0-9-]+-sheet)(\/[a-z0-9-]+){0,2}\.ts$/.test(path)) {
    return false;
  }
  const isListOfFolder = existsSync(join(root, path.replace(/\.ts$/, '')));
  return !isListOfFolder && /^export (async )?(function|const|class) /m.test(read(path));
}

function checkSourcesHaveTests() {
  const tested = new Set(files.filter(isTest).flatMap(sourcesOf));
  return (
    files
      .filter((path) => features.includes(path.split('/')[1]) && needsTest(path))
      // The parts of a list are proven by the test of the list they make up.
      .filter((path) => !tested.has(path) && !tested.has(`${dirname(path)}.ts`))
      .map((path) => `${path}: has no test (tests/${path.replace(/\.ts$/, '.test.ts')})`)
  );
}

/** Handlers are proven by what is asked of them: the name of each request stands in a test or in a helper of tests. */
function checkRequestsHaveTests() {
  const tests = files
    .filter((path) => /^tests\/.*\.tsx?$/.test(path))
    .map(read)
    .join('\n');
  return files
    .filter((path) => /^core\/[^/]+\/contract(\.ts|\/[a-z0-9-]+\.ts)$/.test(path))
    .flatMap((path) =>
      [...read(path).matchAll(/^ {2}'([a-z-]+\/[a-z-]+)': (?:query|command)\(/gm)].map(([, name]) => ({ path, name })),
    )
    .filter(({ name }) => !tests.includes(`'${name}'`))
    .map(({ path, name }) => `${path}: no test asks for ${name}`);
}

function checkMigrationsThatMoveRows() {
  return files
    .filter((path) => /^core\/db\/migrations\/\d{4}-.*\.ts$/.test(path))
    .filter((path) =>
      /\bUPDATE\s+\w+\s+SET\b|\bINSERT INTO\b[\s\S]*?\bSELECT\b/.test(
        read(path).replace(/CREATE TRIGGER[\s\S]*?END/g, ''),
      ),
    )
    .filter((path) => !existsSync(join(root, `tests/${path.replace(/\.ts$/, '.test.ts')}`)))
    .map((path) => `${path}: moves rows and has no test of its own`);
}

function checkLengths() {
  return files
    .filter((path) => isCode(path) && !WRITTEN_BY_PROGRAM.includes(path))
    .map((path) => ({ path, lines: read(path).trimEnd().split('\n').length }))
    .filter(({ lines }) => lines > MOST_LINES)
    .map(({ path, lines }) => `${path}: ${lines} lines, at most ${MOST_LINES}; a role may become a folder`);
}

const complaints = [
  checkTop,
  checkRoles,
  checkNames,
  checkTestsHaveSources,
  checkSourcesHaveTests,
  checkRequestsHaveTests,
  checkMigrationsThatMoveRows,
  checkLengths,
].flatMap((check) => check());

process.stdout.write(
  `${files.length} files, ${complaints.length} out of place\n${complaints.map((line) => `${line}\n`).join('')}`,
);
process.exitCode = complaints.length > 0 ? 1 : 0;
