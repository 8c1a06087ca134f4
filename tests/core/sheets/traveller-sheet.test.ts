import { describe, expect, it } from 'vitest';
import { drawTraveller } from '#core/sheets/traveller-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, pagesOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['traveller'];
const draw = (changes: Partial<Paper> = {}) => drawTraveller(fonts, { ...papers.traveller, ...changes });

describe.skipIf(lacks('pdftotext'))('drawTraveller', () => {
  it('carries tag, side, metal in words and the promise, and no money or telephone', async () => {
    const text = textOf(await draw());

    for (const words of ['41235', 'RIGHT', 'ALUMINIUM - NO CAUSTIC', 'THU 11 MAR', 'Mudlark Lane'])
      expect(text).toContain(words);
    expect(text).not.toMatch(/555|USD|\d+\.\d\d (before|with) tax/);
  });

  it('shows sizes in both units and the operations in their order, a question mark where approval is wanted', async () => {
    const text = textOf(await draw());

    expect(text).toContain('38.00 ± 0.25 mm 1.496 in');
    expect(text).toContain('7?');
    expect(text.indexOf('Final clean')).toBeLessThan(text.indexOf('Assemble head'));
    expect(text.indexOf('Vacuum test')).toBeLessThan(text.indexOf('Wipe, oil, wrap'));
  });

  it('has a blank grid of all spots in bench order on its back, with the metal again', async () => {
    const back = pagesOf(await draw())[1] ?? '';

    expect(back).toContain('1I1 1I2 2I1 2I2 3I1 3I2 1E1 1E2 2E1 2E2 3E1 3E2');
    expect(back).toContain('Guide inside, top, mm');
    expect(back).toContain('at least 130.80 mm');
    expect(back).toContain('5.150 in');
    expect(back).toContain('ALUMINIUM - NO CAUSTIC');
  });

  it('says what changed since an earlier revision', async () => {
    const text = textOf(
      await draw({ changed: ['10 Installed height: new target 38.10 mm'], changedSince: 'revision 1' }),
    );

    expect(text).toContain('Changed since revision 1');
    expect(text).toContain('new target 38.10 mm');
  });

  it.each([
    ['not_known', 'METAL NOT KNOWN - DO NOT WASH'],
    ['other', 'OTHER METAL - ASK BEFORE WASHING'],
    ['aluminium', 'ALUMINIUM - NO CAUSTIC'],
  ] as const)('says the metal %s in words', async (metal, words) => {
    expect(textOf(await draw({ tag: { number: '41235', metal } }))).toContain(words);
  });
});
