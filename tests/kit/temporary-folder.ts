/** Folders that are gone after the test, or after the file. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach } from 'vitest';

const ofTest: string[] = [];
const ofFile: string[] = [];

afterEach(() => remove(ofTest));
afterAll(() => remove(ofFile));

function remove(folders: string[]): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
}

function make(list: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-test-'));
  list.push(folder);
  return folder;
}

/** A new empty folder, removed after the running test. */
export const temporaryFolder = (): string => make(ofTest);
/** One that several tests of a file share, removed after the last. */
export const folderOfFile = (): string => make(ofFile);
