import { describe, expect, it } from 'vitest';
import { drawClaimTicket } from '#core/sheets/claim-ticket-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { faultsOf, fonts, ONE_POINT, pagesOf, picturesIn, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['claim-ticket'];
const draw = (changes: Partial<Paper> = {}) => drawClaimTicket(fonts, { ...papers['claim-ticket'], ...changes });

describe.skipIf(lacks('pdftotext'))('drawClaimTicket', () => {
  it('names who left what, its metal, and the condition seen', async () => {
    const text = textOf(await draw());

    expect(text).toContain('Mudlark Lane Garage Ltd, Ysolde Kerrow');
    expect(text).toContain('casting no. 4B?71-L');
    expect(text).toContain('ALUMINIUM');
    expect(text).toContain('1 dowel of 2');
    expect(text).toContain('Gouge at deck corner, 30 mm from edge');
  });

  it('says the lines, the total with tax, the promise and what it depends on', async () => {
    const text = textOf(await draw());

    for (const figure of ['830.00', '172.50', '−130.55', '1,272.35', '3.11', '1,275.46'])
      expect(text).toContain(figure);
    expect(text).toContain('Thursday 11 March, 16:30 if no cracks are found');
    expect(text).toContain('If a head cannot be saved you still owe about 131.75');
    expect(text).toContain('paint L = tag 41234');
  });

  it('fits one page up to three castings', async () => {
    const { castings } = papers['claim-ticket'];
    const third = castings
      .slice(0, 1)
      .map((casting) => ({ ...casting, tag: { number: '41236', metal: 'iron' as const } }));
    const three = await draw({ castings: [...castings, ...third] });

    expect(pagesOf(await draw())).toHaveLength(1);
    expect(pagesOf(three)).toHaveLength(1);
  });

  it('carries the signature drawn on the glass, beside the name', async () => {
    const signature = { label: 'Signed, for Mudlark Lane', written: 'Wendolin Aubry', date: '9 Mar', png: ONE_POINT };
    const signed = await draw({ signature });

    expect(textOf(signed)).toContain('Wendolin Aubry');
    expect(picturesIn(signed)).toBeGreaterThan(picturesIn(await draw()));
    expect(faultsOf(signed)).toEqual([]);
    expect(pagesOf(signed)).toHaveLength(1);
  });

  it('says that it was left unsigned', async () => {
    const signature = {
      label: 'Left in the night drop, not signed. Conditions lock at the first operation.',
      written: 'unsigned',
    };

    expect(textOf(await draw({ signature }))).toContain('Left in the night drop, not signed');
  });
});
