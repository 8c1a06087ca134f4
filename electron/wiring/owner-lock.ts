/**
 * One program owns a workspace. The lock is an exclusive transaction on a small file of its own: the operating system lets
 * go of it when the program ends, however it ends, so a crash never leaves a workspace shut.
 */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { takeExclusively } from '#core/db/exclusive.ts';
import { AppError } from '#core/kernel/errors.ts';
import type { WorkspacePaths } from './workspace-folder.ts';

/** What the owner tells others on this computer. */
export type Running = Readonly<{ pid: number; address: string | null; token: string | null }>;

export type OwnerLock = Readonly<{ tell(running: Running): void; release(): void }>;

/**
 * Take the workspace.
 *
 * @throws AppError `unavailable` `workspace/open-elsewhere` when another program has it.
 */
export function takeOwnership(paths: WorkspacePaths): OwnerLock {
  const letGo = takeExclusively(paths.owner);
  if (!letGo) {
    const other = readRunning(paths);
    throw new AppError(
      'unavailable',
      'workspace/open-elsewhere',
      `This workspace is open already${other?.address ? ` at ${other.address}` : ' in another Benchtag'}. Nothing was changed. Use that one, or close it first.`,
      { facts: { address: other?.address ?? null } },
    );
  }
  return {
    // Readable by this person only: it holds the word that lets the command line in.
    tell: (running) => writeFileSync(paths.running, `${JSON.stringify(running)}\n`, { mode: 0o600 }),
    release() {
      rmSync(paths.running, { force: true });
      letGo();
    },
  };
}

/** What the running owner told, or undefined. A stale file of a crashed program is possible: the lock decides. */
export function readRunning(paths: WorkspacePaths): Running | undefined {
  try {
    return JSON.parse(readFileSync(paths.running, 'utf8')) as Running;
  } catch {
    return undefined;
  }
}
