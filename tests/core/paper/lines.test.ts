import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakLines } from '#core/paper/lines.ts';
import { type Ink, STYLES } from '#core/paper/styles.ts';
import { fonts } from '#tests/kit/pdf.ts';

/** Measuring needs the faces only. */
const ink = { fonts } as unknown as Ink;
const wordsOf = (rich: Parameters<typeof breakLines>[1], width: number): string[] =>
  breakLines(ink, rich, STYLES.body, width).map((line) => line.pieces.map(({ text }) => text).join(''));

describe('breakLines', () => {
  it('breaks between words and keeps bold runs that touch together', () => {
    expect(wordsOf('one two three', 1000)).toEqual(['one two three']);
    expect(wordsOf([{ b: 'Hill' }, ', Mara'], 1000)).toEqual(['Hill, Mara']);
    expect(wordsOf('one\ntwo', 1000)).toEqual(['one', 'two']);
    expect(wordsOf('', 1000)).toEqual(['']);
  });

  it('keeps words together at a no-break space', () => {
    expect(wordsOf('casting no.\u00a04B?71-L', 60)).toEqual(['casting', 'no.\u00a04B?71-L']);
  });

  it('is never wider than asked', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 120 }), fc.integer({ min: 30, max: 300 }), (text, width) => {
        for (const line of breakLines(ink, text, STYLES.body, width)) expect(line.width).toBeLessThan(width + 1.5);
      }),
    );
  });

  it('keeps every letter of any text, in order', () => {
    const letters = fc.constantFrom('a', 'W', 'ż', 'Д', 'Ω', ' ', '-', '3', '漢', '🔧');
    fc.assert(
      fc.property(fc.array(letters, { maxLength: 200 }), fc.integer({ min: 12, max: 200 }), (parts, width) => {
        const text = parts.join('');

        expect(wordsOf(text, width).join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''));
      }),
    );
  });
});
