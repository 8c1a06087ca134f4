/** What holds for every paper. Read back with Poppler and zbarimg, which know nothing of ours. */
import { describe, expect, it } from 'vitest';
import { drawNamed, drawPaper } from '#core/sheets/any-sheet.ts';
import type { PaperName } from '#core/sheets/contract/papers.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { boxesOf, codesOf, faultsOf, fonts, fontsOf, pagesOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const sizes = ['letter', 'a4'] as const;
const names = Object.keys(havePapers(havePaperHead())) as PaperName[];
const stockPapers: readonly PaperName[] = ['casting-tag', 'bag-tag', 'ready-label'];
const sheets = names.filter((name) => !stockPapers.includes(name));

const draw = (name: PaperName, changes: Parameters<typeof havePaperHead>[0] = {}) =>
  drawPaper(fonts, name, havePapers(havePaperHead(changes))[name] as never);

/** The code of the example of each sheet; null where nothing is numbered. */
const CODES: Readonly<Record<string, string | null>> = {
  'claim-ticket': 'BT T20455',
  traveller: 'BT C41235',
  estimate: 'BT E20455-E1',
  'added-work': 'BT A20455-A1',
  'build-sheet': 'BT T20417',
  invoice: 'BT I7004',
  receipt: 'BT RR102',
  release: 'BT L20417-1',
  'drop-off': null,
};

describe('drawPaper', () => {
  it.each(names)('draws %s twice with the same bytes', async (name) => {
    const [first, second] = [await draw(name), await draw(name)];

    expect(Buffer.compare(first, second)).toBe(0);
  });

  it('draws other bytes for another moment of printing', async () => {
    const later = await draw('invoice', { printedAt: '2027-03-09T13:31:01.000Z' });

    expect(Buffer.compare(await draw('invoice'), later)).not.toBe(0);
  });

  it.skipIf(lacks('pdftotext'))('lets no word stand on another or near the edge, on Letter and A4', async () => {
    const found: Record<string, string[]> = {};
    for (const paper of sizes)
      for (const name of sheets) found[`${name} ${paper}`] = faultsOf(await draw(name, { paper }));

    expect(Object.entries(found).filter(([, faults]) => faults.length > 0)).toEqual([]);
  });

  it.skipIf(lacks('pdftotext'))('keeps practice paper as long and as clean, with the mark on every page', async () => {
    for (const name of sheets) {
      const [real, practice] = [await draw(name), await draw(name, { practice: true })];
      const pages = pagesOf(practice);

      expect(pages.length, name).toBe(pagesOf(real).length);
      expect(
        pages.every((page) => page.includes('PRACTICE - not a real job')),
        name,
      ).toBe(true);
      expect(faultsOf(practice), name).toEqual([]);
    }
    for (const name of stockPapers) expect(textOf(await draw(name, { practice: true }))).toContain('PRACTICE');
    expect(textOf(await draw('invoice'))).not.toContain('PRACTICE');
  });

  // Letter 8.5 x 11 in (ANSI/ASME Y14.1 size A), A4 210 x 297 mm (ISO 216), in points; from memory.
  it.skipIf(lacks('pdftotext'))('draws on Letter and on A4', async () => {
    const letter = boxesOf(await draw('invoice')).pages[0];
    const a4 = boxesOf(await draw('invoice', { paper: 'a4' })).pages[0];

    expect(letter).toEqual({ width: 8.5 * 72, height: 11 * 72 });
    expect(a4?.width).toBeCloseTo((210 / 25.4) * 72, 1);
    expect(a4?.height).toBeCloseTo((297 / 25.4) * 72, 1);
  });

  it.skipIf(lacks('pdftotext'))(
    'says on every page which sheet, revision, when, by whom, and page n of m',
    async () => {
      for (const name of sheets) {
        const pages = pagesOf(await draw(name));
        for (const [index, page] of pages.entries()) {
          expect(page, name).toContain('revision 1');
          expect(page, name).toContain('Printed Tue 9 Mar 2027 08:31, Teodor Vaskelund');
          expect(page, name).toContain(`Page ${index + 1} of ${pages.length}`);
        }
      }
    },
  );

  it.skipIf(lacks('pdftoppm', 'zbarimg')).each(sheets)(
    'prints a code on %s that says the number beside it',
    async (name) => {
      const bytes = await draw(name);
      const expected = CODES[name];

      expect(codesOf(bytes, 1)).toEqual([expected ? [expected] : []]);
      if (expected) expect(textOf(bytes)).toContain(expected.slice(4));
    },
  );

  it.skipIf(lacks('pdffonts'))('embeds every face with its table of characters', async () => {
    for (const name of names) {
      const found = fontsOf(await draw(name));

      expect(found.length, name).toBeGreaterThan(1);
      expect(
        found.every(({ name: face }) => face.includes('SofiaSans')),
        name,
      ).toBe(true);
      expect(
        found.every(({ embedded, readable }) => embedded && readable),
        name,
      ).toBe(true);
    }
  });
});

describe('drawNamed', () => {
  it('refuses a name that is no paper', () => {
    expect(() => drawNamed(fonts, 'toString', {})).toThrow('no paper is called toString');
  });
});
