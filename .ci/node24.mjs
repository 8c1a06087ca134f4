/**
 * What the commands of package.json need before any package is there: the dependencies of the lock file, and Node 24.
 * Uses nothing but Node itself and runs from Node 20 on.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

const onWindows = process.platform === 'win32';

const readPackages = (file) => JSON.parse(readFileSync(file, 'utf8')).packages;

/**
 * True when node_modules lacks something that the lock file names, or has it in another version.
 *
 * Compares what is written there and not the dates of the files, so that a pull which only touches the lock file does not
 * install everything again. Packages for other systems are optional and may be missing.
 *
 * @public the test of the launcher asks for it by name
 */
export function packagesAreStale(folder = root) {
  const marker = join(folder, 'node_modules', '.package-lock.json');
  if (!existsSync(marker)) {
    return true;
  }
  const installed = readPackages(marker);
  return Object.entries(readPackages(join(folder, 'package-lock.json'))).some(([path, wanted]) => {
    const found = installed[path];
    return (
      path !== '' && (found === undefined ? !wanted.optional && !wanted.devOptional : found.version !== wanted.version)
    );
  });
}

/** Installs what the lock file names, with one sentence, when it is not there yet. Ends the process when that fails. */
export function installWhenStale() {
  if (!packagesAreStale()) {
    return;
  }
  process.stdout.write('Benchtag installs the packages of its lock file (npm ci); this takes a minute or two.\n');
  const done = spawnSync('npm', ['ci', '--ignore-scripts'], {
    cwd: root,
    stdio: 'inherit',
    shell: onWindows,
    timeout: 20 * 60_000,
  });
  if (done.status !== 0) {
    process.stderr.write(
      'Benchtag could not install its packages: npm ci failed (its words are above). ' +
        'Check that this computer reaches the npm registry and that the disk has 1 GB free, then run the command again.\n',
    );
    process.exit(1);
  }
}

/** The folder with the program of Node 24, or undefined when this computer has none that we know of. */
function folderOfNode24() {
  if (Number(process.versions.node.split('.')[0]) >= 24) {
    return dirname(process.execPath);
  }
  const system = onWindows ? 'win' : process.platform;
  try {
    const resolve = createRequire(join(root, 'package.json')).resolve;
    return join(dirname(resolve(`node-${system}-${process.arch}/package.json`)), 'bin');
  } catch {
    return undefined;
  }
}

/** The environment in which `node` is Node 24 and the tools of node_modules are found by name. */
export function environmentOfNode24() {
  const folder = folderOfNode24();
  if (folder === undefined) {
    const hint =
      process.platform === 'darwin' && process.arch === 'arm64'
        ? 'Macs with Apple silicon need a Node 24 of their own: install it from nodejs.org.'
        : 'Run "npm ci", or install Node 24 on this computer.';
    process.stderr.write(`Benchtag needs Node 24 and this is Node ${process.versions.node}. ${hint}\n`);
    process.exit(1);
  }
  // On Windows the variable may be spelt Path; two spellings in one environment would hide each other.
  const { PATH, Path, ...rest } = process.env;
  return { ...rest, PATH: [folder, join(root, 'node_modules', '.bin'), PATH ?? Path ?? ''].join(delimiter) };
}

/** Runs a command under Node 24 on this terminal, hands signals on to it, and answers with its exit code. */
export function runUnderNode24(command, args) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', shell: onWindows, env: environmentOfNode24() });
    const handOn = ['SIGINT', 'SIGTERM', 'SIGHUP'].map((signal) => [signal, () => child.kill(signal)]);
    for (const [signal, hand] of handOn) {
      process.on(signal, hand);
    }
    const end = (code) => {
      for (const [signal, hand] of handOn) {
        process.off(signal, hand);
      }
      resolve(code);
    };
    child.on('error', (error) => {
      process.stderr.write(`${command} could not be started: ${error.message}\n`);
      end(1);
    });
    child.on('close', (code) => end(code ?? 1));
  });
}

/**
 * Runs a command under Node 24 and collects what it says. Never rejects: `code` tells how it went.
 *
 * `limit` is the longest it may run, in milliseconds: a command that hangs is ended and counts as failed.
 */
export function collectUnderNode24(command, args, { limit, onText } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, shell: onWindows, env: environmentOfNode24(), timeout: limit });
    let said = '';
    const hear = (chunk) => {
      said += chunk;
      onText?.(String(chunk));
    };
    child.stdout.setEncoding('utf8').on('data', hear);
    child.stderr.setEncoding('utf8').on('data', hear);
    child.on('error', (error) =>
      resolve({ code: 1, said: `${said}${command} could not be started: ${error.message}\n` }),
    );
    const end = (code, signal) =>
      resolve({ code: code ?? 1, said: signal ? `${said}${command} was ended after ${limit / 1000} s.\n` : said });
    child.on('close', end);
    // A grandchild that lives on would hold the pipes open for ever.
    child.on('exit', (code, signal) => setTimeout(end, 5000, code, signal).unref());
  });
}
