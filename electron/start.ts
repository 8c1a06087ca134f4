/**
 * Opens the app: the desktop window where there can be one, else the same app in a browser of this computer.
 *
 * Never loads the `electron` package itself (in plain Node that starts a download); it looks for the program that package
 * unpacks. Never hangs: the only thing that waits is one question to the download host, three seconds at most.
 */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runLan } from './lan/main.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const PACKAGE = join(ROOT, 'node_modules', 'electron');
const MAIN = join(ROOT, 'dist', 'electron', 'main.js');
const ANSWER_MS = 3000;
const INSTALL_MS = 5 * 60_000;
const DOWNLOADS = 'https://github.com/electron/electron/releases/download/';

/** Why there can be no window here, in words; undefined when there can. Asks nothing of the network. */
export function obstacleHere(
  environment: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
  uid = process.getuid?.(),
): string | undefined {
  if (platform !== 'linux') return undefined;
  if (!environment.DISPLAY && !environment.WAYLAND_DISPLAY) return 'this computer has no display';
  if (uid === 0) return 'the desktop window does not run as root';
  return undefined;
}

/** The Electron program, or undefined while it was never unpacked. */
export function findElectron(environment: NodeJS.ProcessEnv = process.env, unpacked = PACKAGE): string | undefined {
  const pathFile = join(unpacked, 'path.txt');
  if (!existsSync(pathFile)) return undefined;
  const program = join(
    environment.ELECTRON_OVERRIDE_DIST_PATH ?? join(unpacked, 'dist'),
    readFileSync(pathFile, 'utf8').trim(),
  );
  return existsSync(program) ? program : undefined;
}

/** Fetch the Electron program once, when its host answers at all. */
async function fetchElectron(environment: NodeJS.ProcessEnv = process.env): Promise<boolean> {
  const host = environment.ELECTRON_MIRROR ?? environment.npm_config_electron_mirror ?? DOWNLOADS;
  try {
    await fetch(host, { method: 'HEAD', signal: AbortSignal.timeout(ANSWER_MS) });
  } catch {
    return false;
  }
  process.stdout.write('Fetching the desktop window once (about 100 MB) ...\n');
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(PACKAGE, 'install.js')], { stdio: 'inherit', timeout: INSTALL_MS });
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
}

async function start(args: readonly string[]): Promise<void> {
  const obstacle = obstacleHere();
  if (obstacle) return runLan(args, obstacle);
  if (!existsSync(MAIN)) return runLan(args, 'it was not built');
  const program = findElectron() ?? ((await fetchElectron()) ? findElectron() : undefined);
  if (!program) return runLan(args, 'its program could not be fetched');
  const child = spawn(program, [MAIN, ...args], { stdio: 'inherit' });
  child.once('error', () => void runLan(args, 'its program did not start'));
  child.once('exit', (code) => {
    process.exitCode = code ?? 1;
  });
}

if (import.meta.main) await start(process.argv.slice(2));
