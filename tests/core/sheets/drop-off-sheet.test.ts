import { describe, expect, it } from 'vitest';
import { drawDropOff } from '#core/sheets/drop-off-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['drop-off'];
const draw = (changes: Partial<Paper> = {}) => drawDropOff(fonts, { ...papers['drop-off'], ...changes });

describe.skipIf(lacks('pdftotext'))('drawDropOff', () => {
  it('says what to take off and what not to do, and asks', async () => {
    const text = textOf(await draw());

    expect(text).toContain('abrasive disc');
    expect(text).toContain('Which gasket will be used');
  });

  it('carries the ticket and its code where it is known', async () => {
    const text = textOf(await draw({ number: '20455', customer: 'Mudlark Lane Garage Ltd' }));

    expect(text).toContain('20455');
    expect(text).toContain('Mudlark Lane Garage Ltd');
  });
});
