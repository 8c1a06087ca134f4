import { afterAll, describe, expect, it } from 'vitest';
import { startDrawer } from '#core/paper/drawer.ts';
import { drawPaper } from '#core/sheets/any-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts } from '#tests/kit/pdf.ts';

const root = new URL('../../../', import.meta.url);
const drawer = startDrawer({
  worker: new URL('electron/wiring/paper-worker.ts', root),
  fonts: new URL('assets/fonts', root).pathname,
});
const papers = havePapers(havePaperHead());

afterAll(() => drawer.stop());

describe('startDrawer', () => {
  it('draws in its thread what is drawn here, byte for byte', async () => {
    const there = await drawer.draw('invoice', papers.invoice);

    expect(Buffer.compare(there, await drawPaper(fonts, 'invoice', papers.invoice))).toBe(0);
  });

  it('answers each of several papers asked at once with its own file', async () => {
    const [receipt, release] = await Promise.all([
      drawer.draw('receipt', papers.receipt),
      drawer.draw('release', papers.release),
    ]);

    expect(Buffer.compare(receipt, await drawPaper(fonts, 'receipt', papers.receipt))).toBe(0);
    expect(Buffer.compare(release, await drawPaper(fonts, 'release', papers.release))).toBe(0);
  });

  it('refuses a sheet it does not know and one that cannot be drawn, and draws on', async () => {
    await expect(drawer.draw('nothing', {})).rejects.toThrow('no paper is called nothing');
    await expect(drawer.draw('invoice', {})).rejects.toThrow();

    expect((await drawer.draw('receipt', papers.receipt)).length).toBeGreaterThan(1000);
  });

  it('starts a new thread after the old one has ended', async () => {
    await drawer.stop();

    expect((await drawer.draw('receipt', papers.receipt)).length).toBeGreaterThan(1000);
  });
});
