/**
 * What the commands of package.json need before any package is there: the dependencies of the lock file, and Node 24.
 * Uses nothing but Node itself and runs from Node 20 on.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

const onWindows = process.platform === 'win32';

/** True when node_modules is missing, or older than the lock file it was made from. */
export function packagesAreStale(folder = root) {
  const installed = join(folder, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) {
    return true;
  }
  return statSync(installed).mtimeMs < statSync(join(folder, 'package-lock.json')).mtimeMs;
}

/** Installs what the lock file names, with one sentence, when it is not there yet. Ends the process when that fails. */
export function installWhenStale() {
  if (!packagesAreStale()) {
    return;
  }
  process.stdout.write('Benchtag installs the packages of its lock file (npm ci); this takes a minute or two.\n');
  const done = spawnSync('npm', ['ci', '--ignore-scripts'], { cwd: root, stdio: 'inherit', shell: onWindows });
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

/** Runs a command under Node 24 on this terminal and answers with its exit code. */
export function runUnderNode24(command, args) {
  const done = spawnSync(command, args, { stdio: 'inherit', shell: onWindows, env: environmentOfNode24() });
  if (done.error !== undefined) {
    process.stderr.write(`${command} could not be started: ${done.error.message}\n`);
  }
  return done.status ?? 1;
}

/** Runs a command under Node 24 and collects what it says. Never rejects: `code` tells how it went. */
export function collectUnderNode24(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, shell: onWindows, env: { ...environmentOfNode24(), ...options.env } });
    let said = '';
    const hear = (chunk) => {
      said += chunk;
      options.onText?.(String(chunk));
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('error', (error) => resolve({ code: 1, said: `${said}${command} could not be started: ${error.message}\n` }));
    child.on('close', (code) => resolve({ code: code ?? 1, said }));
  });
}
