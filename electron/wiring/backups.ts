/**
 * Backups of a workspace: `backups/<moment>/benchtag.sqlite` with `attachments/` beside it. Attachments never change once
 * kept, so the copy links to them where the disk can and copies them where it cannot.
 */
import {
  copyFileSync,
  cpSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { findFaults } from '#core/db/copy.ts';
import { versionOf } from '#core/db/migrate.ts';
import { steps } from '#core/db/migrations/index.ts';
import { openReadOnly } from '#core/db/open-database.ts';
import { AppError } from '#core/kernel/errors.ts';
import type { WorkspacePaths } from './workspace-folder.ts';

const DATABASE = 'benchtag.sqlite';
const ATTACHMENTS = 'attachments';

export type Backup = Readonly<{ file: string; bytes: number; seconds: number }>;
export type KeptBackup = Readonly<{ file: string; at: string; bytes: number; why: string }>;

const nameOf = (at: Date, why: string): string =>
  `${at.toISOString().replaceAll(':', '-')} ${why.replaceAll(/[^\w ]/g, '')}`;

/** Make a backup off the main thread and check it. @throws Error when the copy is not whole; the earlier ones stay. */
export async function makeBackup(paths: WorkspacePaths, why: string, at: Date): Promise<Backup> {
  const began = performance.now();
  const folder = join(paths.backups, nameOf(at, why));
  mkdirSync(folder, { recursive: true });
  try {
    const bytes = await copyInThread(paths.database, join(folder, DATABASE));
    linkTree(paths.attachments, join(folder, ATTACHMENTS));
    return { file: basename(folder), bytes, seconds: (performance.now() - began) / 1000 };
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
}

function copyInThread(from: string, to: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./backup-worker.ts', import.meta.url), { workerData: { from, to } });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the backup ended with ${code}`)));
  });
}

function linkTree(from: string, to: string): void {
  if (!existsSync(from)) return;
  mkdirSync(to, { recursive: true });
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const [source, target] = [join(from, entry.name), join(to, entry.name)];
    if (entry.isDirectory()) linkTree(source, target);
    else if (!entry.name.endsWith('.part') && !existsSync(target)) linkOrCopy(source, target);
  }
}

function linkOrCopy(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch {
    // Another disk, or one without links (a memory stick).
    copyFileSync(from, to);
  }
}

/** Backups that are there, newest first. */
export function listBackups(paths: WorkspacePaths): KeptBackup[] {
  if (!existsSync(paths.backups)) return [];
  return readdirSync(paths.backups)
    .filter((name) => existsSync(join(paths.backups, name, DATABASE)))
    .sort()
    .reverse()
    .map((name) => {
      const [stamp = '', ...why] = name.split(' ');
      return {
        file: name,
        at: stamp.replace(/T(\d\d)-(\d\d)-(\d\d)/, 'T$1:$2:$3'),
        bytes: statSync(join(paths.backups, name, DATABASE)).size,
        why: why.join(' '),
      };
    });
}

/**
 * Prove a backup before anything is replaced by it.
 *
 * @throws AppError `not-found` for a name that is not there, `unavailable` when it is not whole or of a newer program
 */
export function checkBackup(paths: WorkspacePaths, file: string): void {
  const database = join(paths.backups, basename(file), DATABASE);
  if (!existsSync(database))
    throw new AppError('not-found', 'backup/not-there', 'That backup is not there. Choose another one.');
  const faults = faultsOf(database);
  if (faults)
    throw new AppError(
      'unavailable',
      'backup/not-whole',
      `That backup is not whole (${faults}). Nothing was changed. Choose another one.`,
    );
}

function faultsOf(database: string): string | undefined {
  try {
    const [fault] = findFaults(database);
    if (fault) return fault;
    const sqlite = openReadOnly(database);
    const version = versionOf(sqlite);
    sqlite.close();
    return version > steps.length ? 'it comes from a newer Benchtag' : undefined;
  } catch (error) {
    return error instanceof Error ? error.message : 'it cannot be opened';
  }
}

/**
 * Put a checked backup in place. The database must be closed. What stood there is kept under `set-aside/<moment>`; when the
 * copy fails, it is put back.
 */
export function putInPlace(paths: WorkspacePaths, file: string, at: Date): string {
  const from = join(paths.backups, basename(file));
  addAttachments(join(from, ATTACHMENTS), paths.attachments);
  const aside = join(paths.setAside, nameOf(at, 'before restore'));
  mkdirSync(aside, { recursive: true });
  moveDatabase(paths.database, join(aside, DATABASE));
  try {
    copyFileSync(join(from, DATABASE), paths.database);
  } catch (error) {
    rmSync(paths.database, { force: true });
    moveDatabase(join(aside, DATABASE), paths.database);
    throw error;
  }
  return aside;
}

/** A database with the files that SQLite keeps beside it. */
function moveDatabase(from: string, to: string): void {
  for (const ending of ['', '-wal', '-shm']) {
    if (existsSync(from + ending)) renameSync(from + ending, to + ending);
  }
}

/** Attachments are named by what is in them: those that are there stay, and none is taken away. */
function addAttachments(from: string, to: string): void {
  if (!existsSync(from)) return;
  // A filter, since cpSync without `force` refuses whatever is there already (Node 24).
  const isMissing = (source: string, target: string) => statSync(source).isDirectory() || !existsSync(target);
  cpSync(from, to, { recursive: true, filter: isMissing });
}
