import { describe, expect, it } from 'vitest';
import { cents } from '#core/kernel/units.ts';
import { castingStops, containerStop, type DoorMoney, doorMoney, type LeavingCasting } from '#core/release/compute.ts';

const HEAD: LeavingCasting = {
  tag: 40_001,
  out: false,
  settled: true,
  unworkedWhy: null,
  workBegun: true,
  leadSays: false,
  identityInDoubt: false,
  items: [],
};
const EN = { language: 'en' };

describe('castingStops', () => {
  it('lets a signed casting go', () => {
    expect(castingStops(HEAD)).toEqual([]);
  });
  it('lets nothing go while its identity is in doubt (I22)', () => {
    expect(castingStops({ ...HEAD, identityInDoubt: true })).toEqual([
      '40001: which casting is this? Clear the identity question first.',
    ]);
  });
  it('wants a sign-off, or a reason why it goes unworked', () => {
    expect(castingStops({ ...HEAD, settled: false, workBegun: false })).toEqual([
      '40001 is not signed off. Sign it off, or write why it leaves unworked.',
    ]);
    expect(castingStops({ ...HEAD, settled: false, workBegun: false, unworkedWhy: 'not wanted' })).toEqual([]);
  });
  it('leaves begun work to a lead', () => {
    const begun = { ...HEAD, settled: false, unworkedWhy: 'fetched early' };
    expect(castingStops(begun)).toEqual(['40001: work has begun. A lead says whether it leaves unfinished.']);
    expect(castingStops({ ...begun, leadSays: true })).toEqual([]);
  });
  it('does not let a casting go twice', () => {
    expect(castingStops({ ...HEAD, out: true })).toEqual(['40001 is out of the house already.']);
  });
  it('names every line that is not counted out', () => {
    const item = { counted: 5, missing: false, out: null, explained: null, fate: null };
    expect(
      castingStops({
        ...HEAD,
        items: [
          { ...item, words: 'caps' },
          { ...item, words: 'bolts', fate: 'in_casting' },
        ],
      }),
    ).toHaveLength(1);
  });
});

describe('containerStop', () => {
  const BAG = { label: '40001-A', out: false, count: 8, counted: 8, explained: null };
  it.each([
    [{}, null],
    [{ counted: 7 }, '40001-A: 8 came, 7 counted out. Explain before handing over.'],
    [{ counted: null }, '40001-A: 8 came, none counted out. Count before handing over.'],
    [{ counted: 7, explained: 'one broke' }, null],
    [{ count: null, counted: null }, null],
    [{ out: true }, '40001-A is out of the house already.'],
  ] as const)('%j: %s', (changes, words) => {
    expect(containerStop({ ...BAG, ...changes })).toBe(words);
  });
});

describe('doorMoney', () => {
  const PAID: DoorMoney = {
    unbilledLines: 0,
    balance: cents(0),
    hasTerms: false,
    termsWords: 'net 30 days',
    onStop: false,
    overLimit: false,
    yes: false,
  };
  const OPEN = { ...PAID, balance: cents(79_403) };
  it.each([
    ['paid', PAID, true, null],
    ['open without terms', OPEN, false, '794.03 is open. A lead or the owner can let it go with a reason.'],
    ['open on account', { ...OPEN, hasTerms: true }, true, null],
    [
      'on stop',
      { ...OPEN, hasTerms: true, onStop: true },
      false,
      'The account is on stop and 794.03 is open. A lead or the owner can let it go with a reason.',
    ],
    [
      'over the limit',
      { ...OPEN, hasTerms: true, overLimit: true },
      false,
      'The account is over its limit and 794.03 is open. A lead or the owner can let it go with a reason.',
    ],
    ['over the limit with a named yes', { ...OPEN, hasTerms: true, overLimit: true, yes: true }, true, null],
    [
      'not invoiced',
      { ...PAID, hasTerms: true, unbilledLines: 1 },
      false,
      'Its work is not invoiced yet. Issue the invoice first, or a lead or the owner lets it go with a reason.',
    ],
    ['on stop and paid', { ...PAID, onStop: true }, true, null],
  ] as const)('%s', (_, money, clear, why) => {
    expect(doorMoney(money, EN)).toMatchObject({ clear, why });
  });
});
