/**
 * The programs outside npm that tests use as witnesses: a browser, readers of PDF and of bar codes, and a numeric library.
 *
 * `programs-setup.ts` fetches what is missing before any test; a test that needs one says `it.skipIf(lacks('pdftotext'))`,
 * so that on a computer without it the test is counted as skipped and never as passed.
 */
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { inject } from 'vitest';

/** Debian package by the program that a test calls. */
export const packageOf = {
  chromium: 'chromium',
  pdftotext: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  pdffonts: 'poppler-utils',
  zbarimg: 'zbar-tools',
  qpdf: 'qpdf',
  python3: 'python3',
  numpy: 'python3-numpy',
  scipy: 'python3-scipy',
} as const;

export type Program = keyof typeof packageOf;

declare module 'vitest' {
  export interface ProvidedContext {
    /** Programs that this computer has not, even after the try to fetch them. */
    missingPrograms: string[];
  }
}

/** Whether a command is on the PATH. */
export function isOnPath(command: string): boolean {
  const endings = process.platform === 'win32' ? ['.exe', '.cmd'] : [''];
  return (process.env.PATH ?? '').split(delimiter).some((folder) =>
    endings.some((ending) => {
      try {
        accessSync(join(folder, command + ending), constants.X_OK);
        return true;
      } catch {
        return false;
      }
    }),
  );
}

/** True when this computer lacks a program; for `it.skipIf`. */
export function lacks(...programs: readonly Program[]): boolean {
  const missing = inject('missingPrograms');
  return programs.some((program) => missing.includes(program));
}
