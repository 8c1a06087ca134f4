import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  digitStretches,
  globOf,
  longestRun,
  numberKey,
  placeOfKey,
  readTyped,
  stretchesOf,
} from '#core/search/compute/typed.ts';

describe('numberKey', () => {
  it('keeps letters, digits and unreadable characters', () => {
    expect(numberKey(' 4b?71-l ')).toBe('4B?71L');
  });
  it('holds nothing that a pattern reads but the question mark', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => !/[*[\]]/.test(globOf(numberKey(text)).slice(1, -1))),
    );
  });
});

describe('readTyped', () => {
  it('reads digits as telephone and number', () => {
    expect(readTyped('20455')).toMatchObject({ number: 20_455, phoneDigits: '20455' });
    expect(readTyped('(555) 01-42')).toMatchObject({ number: null, phoneDigits: '5550142' });
  });
  it('reads words folded, at most eight', () => {
    expect(readTyped('Żółw  ŁÓDKA').words).toEqual(['zolw', 'lodka']);
    expect(readTyped('a b c d e f g h i j').words).toHaveLength(8);
  });
});

describe('stretchesOf', () => {
  it('underlines what was typed in the shown text, marks included', () => {
    const shown = 'Zdzisława Żółwińska-Brzęk';
    const [hit] = stretchesOf(shown, ['zolw']);
    expect(hit && shown.slice(hit.from, hit.until)).toBe('Żółw');
  });
  it('never points outside the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.array(fc.string({ minLength: 1 })), (shown, words) =>
        stretchesOf(shown, words).every((hit) => hit.from >= 0 && hit.until <= shown.length && hit.from <= hit.until),
      ),
    );
  });
});

describe('digitStretches', () => {
  it('underlines digits with the signs between', () => {
    const [hit] = digitStretches('(555) 01-42', '50142');
    expect(hit && '(555) 01-42'.slice(hit.from, hit.until)).toBe('5) 01-42');
  });
  it('is empty when the digits are not there', () => {
    expect(digitStretches('555-0142', '999')).toEqual([]);
  });
});

describe('placeOfKey', () => {
  it.each([
    ['4B?71L', '4B871', 0],
    ['4B871R', '?71R', 2],
    ['710142B', '0142', 2],
    ['4B871R', '9', -1],
    ['', 'A', -1],
  ])('%s in %s', (number, key, place) => {
    expect(placeOfKey(number, key)).toBe(place);
  });
});

describe('longestRun', () => {
  it.each([
    ['4B?71L', '71L'],
    ['??', ''],
    ['ABC', 'ABC'],
    ['AB?CD', 'AB'],
  ])('of %s is %j', (key, run) => {
    expect(longestRun(key)).toBe(run);
  });
});
