import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  conditionLock,
  letterAfter,
  metalView,
  metalWarning,
  titleOf,
  weightClassOf,
  weightWords,
} from '#core/castings/compute.ts';
import { grams } from '#core/kernel/units.ts';

describe('titleOf', () => {
  it.each([
    ['head', 1, 2, 'left', 'Head 1 of 2, left'],
    ['head', 2, 2, 'not_known', 'Head 2 of 2, side not known'],
    ['block', 1, 1, 'single', 'Block'],
    ['block', 1, 1, 'not_known', 'Block'],
    ['exhaust_manifold', 1, 1, 'front_bank', 'Exhaust manifold, front bank'],
  ] as const)('%s %i of %i %s', (kind, piece, of, position, title) => {
    expect(titleOf(kind, piece, of, position)).toBe(title);
  });
});

describe('metalView', () => {
  it.each([
    ['iron_grey', 'IRON', null],
    ['steel', 'IRON', null],
    ['aluminium', 'ALUMINIUM', 'ALUMINIUM - NO CAUSTIC'],
    ['other', 'OTHER METAL', 'OTHER METAL - NO CAUSTIC, ASK A LEAD'],
    ['not_known', 'METAL NOT KNOWN', 'METAL NOT KNOWN - NO WASH BEFORE IT IS CONFIRMED'],
  ] as const)('%s prints %s', (material, word, warning) => {
    expect(metalView(material, null).word).toBe(word);
    expect(metalWarning(material)).toBe(warning);
  });
});

describe('weightClassOf', () => {
  // Common practice, no source: 15, 25 and 45 kg, the bound itself in the lighter class.
  it.each([
    [15_000, 'one'],
    [15_001, 'one_careful'],
    [25_000, 'one_careful'],
    [25_001, 'two'],
    [45_000, 'two'],
    [45_001, 'hoist'],
  ])('%i g: %s', (weight, word) => {
    expect(weightClassOf(grams(weight))).toBe(word);
  });
  it('says how to lift it', () => {
    expect(weightWords(grams(74_000), 'hoist', { language: 'en' })).toBe('74 kg, use a hoist');
    expect(weightWords(null, 'two', { language: 'en' })).toBe('two people');
  });
});

describe('letterAfter', () => {
  it('goes on after Z', () => {
    expect([0, 25, 26, 27, 51, 52, 701, 702].map(letterAfter)).toEqual(['A', 'Z', 'AA', 'AB', 'AZ', 'BA', 'ZZ', 'AAA']);
  });
  it('never gives a letter twice', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.nat(5000), { minLength: 2 }),
        (used) => new Set(used.map(letterAfter)).size === used.length,
      ),
    );
  });
});

describe('conditionLock', () => {
  it.each([
    ['drawn', false, 'The customer signed this list. Add it as a finding.'],
    ['on_paper', false, 'The customer signed this list. Add it as a finding.'],
    ['left_unsigned', false, null],
    ['left_unsigned', true, 'Left unsigned, and work has begun: the list is locked. Add it as a finding.'],
    [null, false, null],
    [null, true, 'Work has begun: the list is locked. Add it as a finding.'],
  ] as const)('signed %s, work begun %s', (signedHow, workBegun, words) => {
    expect(conditionLock({ signedHow, workBegun })).toBe(words);
  });
});
