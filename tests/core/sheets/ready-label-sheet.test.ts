import { describe, expect, it } from 'vitest';
import { drawReadyLabels } from '#core/sheets/ready-label-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { boxesOf, codesOf, faultsOf, fonts, pagesOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const paper = havePapers(havePaperHead())['ready-label'];

describe.skipIf(lacks('pdftotext', 'pdftoppm', 'zbarimg'))('drawReadyLabels', () => {
  it.each(['label-100x50', 'label-3x2', 'label-4x6'] as const)('prints place and piece n of m on %s', async (stock) => {
    const bytes = await drawReadyLabels(fonts, { ...paper, stock });
    const pages = pagesOf(bytes);

    expect(pages).toHaveLength(2);
    expect(pages[0]).toContain('READY');
    expect(pages[0]).toContain('D-4-6');
    expect(pages[0]).toContain('piece 1 of 2');
    expect(faultsOf(bytes)).toEqual([]);
    expect(codesOf(bytes)).toEqual([['BT C41170'], ['BT B41170-B']]);
  });

  it('prints in the size of the stock', async () => {
    const [size] = boxesOf(await drawReadyLabels(fonts, { ...paper, stock: 'label-4x6' })).pages;

    expect(size).toEqual({ width: 4 * 72, height: 6 * 72 });
  });
});
