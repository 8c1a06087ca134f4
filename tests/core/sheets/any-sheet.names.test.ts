/** Names in any script, long names, many lines: nothing is lost and nothing overlaps. */
import { describe, expect, it } from 'vitest';
import { drawPaper } from '#core/sheets/any-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { faultsOf, fonts, pagesOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

/** 160 letters: the longest name of the demo data. */
const LONG =
  'The Amalgamated Lower Ouvel, Quillmouth and Outer Marshes Drainage, Pumping, Dredging and Navigation Commissioners (Mechanical Plant and Standby Power Division)';
const papers = havePapers(havePaperHead());
const inOneLine = (words: string): string => words.replace(/\s+/g, '');
const money = (n: number): string => `${n}.${String(n % 100).padStart(2, '0')}`;
const fifty = Array.from({ length: 50 }, (_, index) => ({
  words: `Guide renewed, step ${index + 1} of fifty, with words enough for two lines`,
  units: String(index + 1),
  price: '12.34',
  amount: money(1000 + index * 7),
}));

describe.skipIf(lacks('pdftotext'))('drawPaper', () => {
  it.each([
    'Zdzisława Żółwińska-Brzęk',
    'Стоян Речников',
    'Ευριδίκη Λιμενάρη',
    "Séverine d'Aubrequin",
    'Brøndlykke Motorværksted',
  ])('prints the name %s letter for letter', async (name) => {
    const bytes = await drawPaper(fonts, 'claim-ticket', { ...papers['claim-ticket'], leftBy: { name } });

    expect(textOf(bytes)).toContain(name);
  });

  it('leaves no trace of one paper in the next, though scripts share outlines', async () => {
    const latin = { ...papers.invoice, to: { name: 'Pram & Thole, Patina, Sluice', lines: [] } };
    const before = await drawPaper(fonts, 'invoice', latin);
    await drawPaper(fonts, 'invoice', { ...papers.invoice, to: { name: 'Речников Ρ Стоян', lines: [] } });
    const after = await drawPaper(fonts, 'invoice', latin);

    expect(Buffer.compare(before, after)).toBe(0);
    expect(textOf(after)).toContain('Pram & Thole, Patina, Sluice');
  });

  it('draws a box for each sign the faces lack, keeps the letters around it, and does not fail', async () => {
    const name = 'Ana 🛠️ Mill 李 שלום Ltd\u202e\u0007';
    const bytes = await drawPaper(fonts, 'invoice', { ...papers.invoice, to: { name, lines: [] } });

    expect(textOf(bytes)).toMatch(/Ana\s+Mill\s+Ltd/);
    expect(faultsOf(bytes)).toEqual([]);
  });

  it('prints a company name of 160 letters whole, on every paper that names the customer', async () => {
    expect(LONG).toHaveLength(160);
    const named = {
      'claim-ticket': { ...papers['claim-ticket'], leftBy: { name: LONG } },
      estimate: { ...papers.estimate, to: { name: LONG }, signFor: LONG },
      'added-work': { ...papers['added-work'], to: { name: LONG }, signFor: LONG },
      'build-sheet': { ...papers['build-sheet'], customer: { name: LONG } },
      invoice: { ...papers.invoice, to: { name: LONG, lines: ['1 Lock Road'] } },
      receipt: { ...papers.receipt, from: { name: LONG } },
      release: { ...papers.release, customer: { name: LONG }, signFor: LONG },
    };
    for (const [name, paper] of Object.entries(named)) {
      for (const size of ['letter', 'a4'] as const) {
        const bytes = await drawPaper(
          fonts,
          name as 'invoice',
          { ...paper, head: { ...paper.head, paper: size } } as never,
        );

        expect(inOneLine(textOf(bytes)), name).toContain(inOneLine(LONG));
        expect(faultsOf(bytes), `${name} ${size}`).toEqual([]);
      }
    }
  });

  it('prints a shop name of 160 letters whole', async () => {
    const head = havePaperHead({ shop: { name: LONG, line: '555-0100' } });
    const bytes = await drawPaper(fonts, 'receipt', { ...papers.receipt, head });

    expect(inOneLine(textOf(bytes))).toContain(inOneLine(LONG));
    expect(faultsOf(bytes)).toEqual([]);
  });

  it('breaks a word that is wider than its column and keeps every letter', async () => {
    const word = 'W'.repeat(190);
    const bytes = await drawPaper(fonts, 'invoice', { ...papers.invoice, to: { name: word, lines: [] } });

    expect(inOneLine(textOf(bytes))).toContain(word);
    expect(faultsOf(bytes)).toEqual([]);
  });

  it('prints fifty lines on an invoice: all of them, heads repeated, the total with its last lines', async () => {
    const [first, ...others] = papers.invoice.groups;
    const groups = first
      ? [{ ...first, lines: fifty, total: { words: 'Labour', amount: '88,888.88' } }, ...others]
      : [];
    const bytes = await drawPaper(fonts, 'invoice', { ...papers.invoice, groups });
    const pages = pagesOf(bytes);

    expect(faultsOf(bytes)).toEqual([]);
    for (const { amount } of fifty) expect(pages.join(' ')).toContain(amount);
    expect(pages.length).toBeGreaterThan(1);
    const withTotal = pages.find((page) => page.includes('88,888.88'));
    expect(withTotal).toContain('step 49 of fifty');
    expect(withTotal).toContain('step 50 of fifty');
    for (const page of pages) if (page.includes('of fifty')) expect(page).toContain('Amount USD');
  });

  it('prints fifty lines, six castings and 10 000 letters on a claim ticket, the condition before the signature', async () => {
    const { castings } = papers['claim-ticket'];
    const many = [...castings, ...castings, ...castings].map((casting, index) => ({
      ...casting,
      tag: { number: `4130${index}`, metal: 'not_known' as const },
    }));
    const said = 'ran hot '.repeat(1250);
    const bytes = await drawPaper(fonts, 'claim-ticket', {
      ...papers['claim-ticket'],
      castings: many,
      asked: fifty,
      said,
    });
    const text = textOf(bytes);

    expect(faultsOf(bytes)).toEqual([]);
    for (const { amount } of fifty) expect(text).toContain(amount);
    expect(text.match(/ran hot/g)).toHaveLength(1250);
    for (const { tag } of many) expect(text).toContain(tag.number);
    expect(text.lastIndexOf('Gouge at deck corner')).toBeLessThan(
      text.indexOf('I have read the condition notes above'),
    );
  });
});
