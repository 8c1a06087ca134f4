/** Where things lie in a workspace folder, and which workspace was open last on this computer. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

/** The files and folders of one workspace. */
export type WorkspacePaths = Readonly<{
  folder: string;
  database: string;
  attachments: string;
  backups: string;
  /** What a restore replaced. */
  setAside: string;
  log: string;
  /** Held open while a program owns the workspace. */
  owner: string;
  /** How the command line reaches the running program. */
  running: string;
}>;

export const pathsOf = (folder: string): WorkspacePaths => ({
  folder: resolve(folder),
  database: join(resolve(folder), 'benchtag.sqlite'),
  attachments: join(resolve(folder), 'attachments'),
  backups: join(resolve(folder), 'backups'),
  setAside: join(resolve(folder), 'set-aside'),
  log: join(resolve(folder), 'log'),
  owner: join(resolve(folder), 'owner.lock'),
  running: join(resolve(folder), 'running.json'),
});

/** The program's own folder of this person on this computer; `BENCHTAG_HOME` names another. */
function homeFolder(environment: NodeJS.ProcessEnv = process.env): string {
  if (environment.BENCHTAG_HOME) return resolve(environment.BENCHTAG_HOME);
  if (process.platform === 'win32') return join(environment.APPDATA ?? homedir(), 'Benchtag');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Benchtag');
  return join(environment.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'benchtag');
}

type Memory = Readonly<{ lastWorkspace?: string }>;

/** The workspace opened last, or the usual place for the first one. A folder that is gone counts as never opened. */
export function lastWorkspace(home: string = homeFolder()): string {
  const kept = readMemory(home).lastWorkspace;
  return kept && existsSync(kept) ? kept : join(home, 'workspace');
}

/** The practice shop lies apart from the shop's own workspace. */
export const practiceFolder = (home: string = homeFolder()): string => join(home, 'practice-shop');

export function rememberWorkspace(folder: string, home: string = homeFolder()): void {
  mkdirSync(home, { recursive: true });
  writeFileSync(
    join(home, 'memory.json'),
    `${JSON.stringify({ ...readMemory(home), lastWorkspace: resolve(folder) })}\n`,
  );
}

function readMemory(home: string): Memory {
  try {
    return JSON.parse(readFileSync(join(home, 'memory.json'), 'utf8')) as Memory;
  } catch {
    // Never written, or damaged: the program starts as on the first day.
    return {};
  }
}
