import { describe, expect, it } from 'vitest';
import { drawReceipt } from '#core/sheets/receipt-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['receipt'];
const draw = (changes: Partial<Paper> = {}) => drawReceipt(fonts, { ...papers.receipt, ...changes });

describe.skipIf(lacks('pdftotext'))('drawReceipt', () => {
  it('says how much, how, for what and what is left', async () => {
    const text = textOf(await draw());

    for (const words of ['R102', 'USD 281.71', 'card, slip 0071', 'Invoice 7004', 'Left to pay'])
      expect(text).toContain(words);
  });
});
