/** Turns whatever was thrown into an answer a person can act on; the cause stays in the log. */
import { randomBytes } from 'node:crypto';
import { AppError } from '../kernel/errors.ts';
import type { Host } from './host.ts';
import type { ReplyError } from './reply.ts';

/** SQLite result codes that mean the machine, not the program. Source: sqlite.org/rescode.html. */
const MACHINE: Readonly<Record<string, [code: string, message: string]>> = {
  SQLITE_FULL: [
    'host/disk-full',
    'The disk is full. Nothing was saved; what you typed is still here. Free some space, then try again.',
  ],
  SQLITE_READONLY: [
    'host/read-only',
    'The workspace cannot be written. Nothing was saved; what you typed is still here. Check the folder.',
  ],
  SQLITE_BUSY: [
    'host/busy',
    'The workspace is busy. Nothing was saved; what you typed is still here. Try again in a moment.',
  ],
  SQLITE_IOERR: [
    'host/disk-trouble',
    'The disk does not answer. Nothing was saved; what you typed is still here. Check the disk, then try again.',
  ],
};
const FILE_SYSTEM: Readonly<Record<string, string>> = {
  ENOSPC: 'SQLITE_FULL',
  EROFS: 'SQLITE_READONLY',
  EACCES: 'SQLITE_READONLY',
  EIO: 'SQLITE_IOERR',
};

/** The answer for a thrown value. */
export function toReplyError(error: unknown, host: Pick<Host, 'log'>, request: string): ReplyError {
  if (error instanceof AppError) {
    const { fields, offers, facts } = error.details;
    return {
      kind: error.kind,
      code: error.code,
      message: error.message,
      ...(fields && { fields }),
      ...(offers && { offers }),
      ...(facts && { facts }),
    };
  }
  const reference = randomBytes(4).toString('hex');
  host.log('error', {
    request,
    reference,
    error: error instanceof Error ? (error.stack ?? error.message) : String(error),
  });
  const code = codeOf(error);
  const known = MACHINE[code] ?? MACHINE[code.split('_').slice(0, 2).join('_')];
  if (known) return { kind: 'unavailable', code: known[0], message: known[1], reference };
  return {
    kind: 'bug',
    code: 'host/bug',
    message: `Something broke in the program. Nothing was saved; what you typed is still here. Quote ${reference} when you ask for help.`,
    reference,
  };
}

function codeOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return FILE_SYSTEM[code] ?? code;
}
