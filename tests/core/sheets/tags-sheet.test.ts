import { describe, expect, it } from 'vitest';
import { drawTags } from '#core/sheets/tags-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { boxesOf, codesOf, fonts, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
const casting = papers['casting-tag'];
const bags = papers['bag-tag'];

describe.skipIf(lacks('pdftotext', 'pdftoppm', 'zbarimg'))('drawTags', () => {
  it('prints number, side, metal in words and lifting; on the back caps and counts', async () => {
    const text = textOf(await drawTags(fonts, casting));

    for (const words of [
      '41234',
      'LEFT, HEAD 1 of 2',
      'ALUMINIUM - NO CAUSTIC',
      'TWO PEOPLE',
      '8 cam caps, bolted in place',
    ])
      expect(text).toContain(words);
  });

  // Wired tag sizes #5, #3, #1 in inches: a published list of tag sizes, from memory.
  it('prints a page per tag in the size of its stock, fronts before backs, in the order of the pile', async () => {
    const bytes = await drawTags(fonts, {
      ...bags,
      layout: 'single',
      tags: [...casting.tags.slice(0, 1), ...bags.tags],
    });
    const sizes = boxesOf(bytes).pages.map(({ width, height }) => [width / 72, height / 72]);

    expect(sizes).toEqual([
      [4.75, 2.375],
      [4.75, 2.375],
      [3.75, 1.875],
      [3.75, 1.875],
      [2.75, 1.375],
      [2.75, 1.375],
    ]);
    expect(codesOf(bytes)).toEqual([['BT C41234'], [], ['BT B41234-A'], ['BT B41235-A'], ['BT B41235-B'], []]);
  });

  it('prints a spare without a number or a code', async () => {
    const spare = await drawTags(fonts, {
      ...bags,
      layout: 'single',
      tags: bags.tags.filter(({ number }) => number === null),
    });

    expect(codesOf(spare)).toEqual([[]]);
    expect(textOf(spare)).toBe('spare write on it');
  });

  it('prints every code of a sheet with cut lines so that it can be read', async () => {
    expect(codesOf(await drawTags(fonts, bags))).toEqual([['BT B41234-A', 'BT B41235-A', 'BT B41235-B']]);
  });

  it('keeps the figures of a small tag at least 5 mm high, of a casting tag at least 10 mm', async () => {
    // The face's figures are 0.655 em high; the box is 1.2 em. Needed heights: common practice, no source.
    const height = async (paper: typeof bags, number: string) => {
      const word = boxesOf(await drawTags(fonts, paper)).words.find((one) => one.word === number);
      return word ? (((word.bottom - word.top) / 1.2) * 0.655 * 25.4) / 72 : 0;
    };

    expect(await height(casting, '41234')).toBeGreaterThan(10);
    expect(await height(bags, '41235-B')).toBeGreaterThan(5);
  });
});
