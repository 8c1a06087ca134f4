import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makePapers } from '#electron/desktop/papers.ts';
import { openSmall } from '#tests/kit/small-workspace.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

const PDF = new TextEncoder().encode('%PDF-1.7\nclaim ticket\n%%EOF');

async function start(answer: { canceled: boolean; filePath?: string }) {
  const workspace = openSmall(temporaryFolder());
  const { sha256 } = await workspace.host().services.files.put(PDF, 'application/pdf');
  const printed: unknown[] = [];
  const opened: string[] = [];
  const papers = makePapers({
    host: workspace.host,
    window: () => undefined,
    makeWindow: () =>
      ({
        loadFile: async (path: string) => void opened.push(path),
        webContents: {
          print: (options: unknown, done: (ok: boolean) => void) => {
            printed.push(options);
            done(true);
          },
        },
        destroy: () => undefined,
      }) as never,
    dialog: { showSaveDialog: async () => answer } as never,
    shell: {
      openPath: async (path: string) => {
        opened.push(path);
        return '';
      },
    },
  });
  return { papers, sha256, printed, opened, close: workspace.close };
}

describe('makePapers', () => {
  it('saves a paper where the person says', async () => {
    const path = join(temporaryFolder(), 'claim.pdf');
    const { papers, sha256, close } = await start({ canceled: false, filePath: path });

    const reply = await papers.answer({
      name: 'desktop/save-paper',
      input: { sha256, name: 'Claim ticket 20417.pdf' },
    });

    expect(reply).toMatchObject({ ok: true, output: { saved: path } });
    expect(readFileSync(path)).toEqual(Buffer.from(PDF));
    await close();
  });

  it('saves figures written out as text where the person says, letters of all scripts whole', async () => {
    const path = join(temporaryFolder(), 'readings.csv');
    const { papers, close } = await start({ canceled: false, filePath: path });
    const text = 'tag,words\r\n41170,"Führung, Ω 溝"\r\n';

    const reply = await papers.answer({ name: 'desktop/save-text', input: { name: 'readings-41170.csv', text } });

    expect(reply).toMatchObject({ ok: true, output: { saved: path } });
    expect(readFileSync(path, 'utf8')).toBe(text);
    await close();
  });

  it.each([{}, null, { name: 'x.csv' }, { name: 4, text: 'x' }])('saves no text from %j', async (input) => {
    const { papers, close } = await start({ canceled: false, filePath: join(temporaryFolder(), 'x.csv') });

    expect(await papers.answer({ name: 'desktop/save-text', input })).toMatchObject({
      ok: false,
      error: { code: 'desktop/no-text' },
    });
    await close();
  });

  it('says in words when the disk does not take the text', async () => {
    const { papers, close } = await start({
      canceled: false,
      filePath: join(temporaryFolder(), 'no', 'such', 'x.csv'),
    });

    expect(await papers.answer({ name: 'desktop/save-text', input: { name: 'x.csv', text: 'tag' } })).toMatchObject({
      ok: false,
      error: { code: 'desktop/not-taken' },
    });
    await close();
  });

  it('says nothing was saved when the person turns back', async () => {
    const { papers, sha256, close } = await start({ canceled: true });

    expect(await papers.answer({ name: 'desktop/save-paper', input: { sha256, name: 'x.pdf' } })).toMatchObject({
      ok: true,
      output: { saved: null },
    });
    await close();
  });

  it('prints and shows under a telling name, never outside a folder of its own', async () => {
    const { papers, sha256, printed, opened, close } = await start({ canceled: true });

    await papers.answer({ name: 'desktop/print-paper', input: { sha256, name: 'Traveller 41170.pdf' } });
    await papers.answer({ name: 'desktop/view-paper', input: { sha256, name: '../../etc/Traveller.pdf' } });

    expect(printed).toMatchObject([{ silent: false }]);
    expect(opened[0]).toMatch(/benchtag-.*\/Traveller 41170\.pdf$/);
    expect(opened[1]).not.toContain('/etc/');
    await close();
  });

  it('answers an unknown paper in words and leaves other requests alone', async () => {
    const { papers, close } = await start({ canceled: true });

    expect(
      await papers.answer({ name: 'desktop/view-paper', input: { sha256: 'f'.repeat(64), name: 'x' } }),
    ).toMatchObject({ ok: false, error: { code: 'desktop/no-paper' } });
    expect(await papers.answer({ name: 'toString', input: {} })).toBeUndefined();
    expect(await papers.answer({ name: 'shop/get-face', input: {} })).toBeUndefined();
    await close();
  });
});
