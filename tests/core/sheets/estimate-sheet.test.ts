import { describe, expect, it } from 'vitest';
import { drawEstimate } from '#core/sheets/estimate-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['estimate'];
const draw = (changes: Partial<Paper> = {}) => drawEstimate(fonts, { ...papers.estimate, ...changes });

describe.skipIf(lacks('pdftotext'))('drawEstimate', () => {
  it('lists work by casting with the total, until when it stands, and yes and no', async () => {
    const text = textOf(await draw());

    for (const figure of ['415.00', '80.50', '1,305.50', '−130.55', '1,272.35', '1,275.46'])
      expect(text).toContain(figure);
    expect(text).toContain('Thu 8 Apr 2027');
    expect(text).toContain('Yes, do all of it');
    expect(text).toContain('No. I collect it as it is');
  });
});
