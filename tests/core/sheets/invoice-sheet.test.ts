import { describe, expect, it } from 'vitest';
import { drawInvoice } from '#core/sheets/invoice-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, pagesOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['invoice'];
const draw = (changes: Partial<Paper> = {}) => drawInvoice(fonts, { ...papers.invoice, ...changes });

describe.skipIf(lacks('pdftotext'))('drawInvoice', () => {
  it('keeps labour and parts apart, with tax, deposit and what is to pay', async () => {
    const page = pagesOf(await draw())[0] ?? '';

    // S01 of the demo data.
    for (const words of [
      'Labour 340.00',
      'Parts 20.20',
      'Shop supplies',
      '13.60',
      '380.30',
      '1.41',
      '381.71',
      '−100.00',
      '281.71',
    ])
      expect(page).toContain(words);
    expect(page).toContain('Corrections by credit note');
  });
});
