/** Folders that are gone after the test. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';

const made: string[] = [];

afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A new empty folder, removed after the running test. Import this file once in a test file to have it cleaned. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-test-'));
  made.push(folder);
  return folder;
}
