import { describe, expect, it } from 'vitest';
import { drawRelease } from '#core/sheets/release-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['release'];
const draw = (changes: Partial<Paper> = {}) => drawRelease(fonts, { ...papers.release, ...changes });

describe.skipIf(lacks('pdftotext'))('drawRelease', () => {
  it('counts out each piece, and says who took it by which proof', async () => {
    const text = textOf(await draw());

    for (const words of ['41170', '41170-B', '2 pieces, all out', 'claim ticket', 'PAID: INVOICE 7004'])
      expect(text).toContain(words);
  });

  it('says what stays and why', async () => {
    const staying = [{ label: '41170-C', words: 'waits for the second driver' }];

    expect(textOf(await draw({ staying }))).toContain('41170-C waits for the second driver');
  });
});
