import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { approveWords, digitSpellings, digitsOf, foldText, shortNameOf, stopWords } from '#core/customers/compute.ts';
import { day } from '#core/kernel/days.ts';
import { cents } from '#core/kernel/units.ts';

describe('foldText', () => {
  it.each([
    ['Zdzisława Żółwińska-Brzęk', 'zdzislawa zolwinska brzek'],
    ['Brøndlykke Motorværksted', 'brondlykke motorvaerksted'],
    ["Séverine d'Aubrequin", 'severine daubrequin'],
    ['O’Tarragh & Daughters', 'otarragh daughters'],
    ['Ευριδίκη Λιμενάρη', 'ευριδικη λιμεναρη'],
    ['Straße 12-A', 'strasse 12 a'],
    ['  🔧  ', ''],
  ])('%j is %j', (text, folded) => {
    expect(foldText(text)).toBe(folded);
  });
  it('does not change what is folded already', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (text) => foldText(foldText(text)) === foldText(text)));
  });
});

describe('digitsOf', () => {
  it.each([
    ['(555) 01-42', '5550142'],
    ['+44 7700 900123', '447700900123'],
    ['５５５', '555'],
    ['none', ''],
  ])('%j is %j', (text, digits) => {
    expect(digitsOf(text)).toBe(digits);
  });
  it('tries a number without its nought', () => {
    expect(digitSpellings('07700 900123')).toEqual(['07700900123', '7700900123']);
    expect(digitSpellings('0044 7700')).toEqual(['00447700', '447700']);
    expect(digitSpellings('abc')).toEqual([]);
  });
});

describe('shortNameOf', () => {
  it.each([
    ['Annelore Fisk', 'retail', 'Annelore Fisk'],
    ['Zdzisława Żółwińska-Brzęk', 'retail', 'Żółwińska-Brzęk'],
    ['Mudlark Lane Garage Limited', 'trade', 'Mudlark Lane Garage'],
    ['Amalgamatedlowerouvelquillmouth', 'trade', 'Amalgamatedlowerouve'],
  ] as const)('%s (%s) is %s', (name, kind, short) => {
    expect(shortNameOf(name, kind)).toBe(short);
  });
  it('always fits a tag', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', minLength: 1, maxLength: 80 }).filter((name) => name.trim() !== ''),
        fc.constantFrom('retail', 'trade'),
        (name, kind) => {
          const short = shortNameOf(name.trim(), kind as 'retail');
          return short.length > 0 && [...short].length <= 20;
        },
      ),
    );
  });
});

describe('approveWords', () => {
  it('says up to what a person may approve', () => {
    expect(approveWords({ mayApprove: true, approveLimit: null }, { language: 'en' })).toBe('may approve, any amount');
    expect(approveWords({ mayApprove: true, approveLimit: cents(60_000) }, { language: 'en' })).toBe(
      'may approve up to 600.00',
    );
    expect(approveWords({ mayApprove: false, approveLimit: cents(1) }, { language: 'en' })).toBe('may not approve');
  });
});

describe('stopWords', () => {
  it('ends with what to do', () => {
    expect(stopWords(day('2026-03-02'), 'two cheques came back.')).toBe(
      'Account on stop since Mon 2 Mar: two cheques came back. Ask the owner before unloading.',
    );
  });
});
