import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openLog } from '#electron/wiring/log.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

describe('openLog', () => {
  it('writes JSON lines with level and reference', () => {
    const folder = temporaryFolder();
    openLog(folder)('error', { reference: 'ab12' });

    expect(JSON.parse(readFileSync(join(folder, 'benchtag.log'), 'utf8'))).toMatchObject({
      level: 'error',
      reference: 'ab12',
      at: expect.any(String),
    });
  });

  it('keeps at most two files', () => {
    const folder = temporaryFolder();
    const log = openLog(folder, 200);
    for (let i = 0; i < 50; i += 1) log('info', { line: i });

    expect(readdirSync(folder).sort()).toEqual(['benchtag.log', 'benchtag.old.log']);
    expect(readFileSync(join(folder, 'benchtag.log'), 'utf8')).toContain('"line":49');
  });

  it('never throws, even where it cannot write', () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'x'));
    writeFileSync(join(folder, 'x', 'log'), 'a file where the folder should be');

    expect(() => openLog(join(folder, 'x', 'log'))('info', {})).not.toThrow();
  });
});
