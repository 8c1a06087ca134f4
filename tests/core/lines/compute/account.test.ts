import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { basisPoints, type Cents, cents } from '#core/kernel/units.ts';
import { accountUse, ageBucket, agedBalances, daysLate } from '#core/lines/compute/account.ts';

const limit = cents(250000);
const from80 = basisPoints(8000);

describe('accountUse', () => {
  // Regression baseline: the account of ticket S11 of the practice shop.
  it.each([
    [[183350], [18000], 201350, 8054, 'warn'],
    [[183350], [18000, 52897], 254247, 10169, 'over'],
    [[109135], [18000, 52897], 180032, 7201, 'ok'],
  ] as const)('%o open and %o unbilled use %i', (open, unbilled, used, bp, state) => {
    expect(accountUse(open.map(cents), unbilled.map(cents), limit, from80)).toEqual({ used, limit, bp, state });
  });

  it('warns from the share exactly and is over only past the limit', () => {
    const state = (used: Cents) => accountUse([used], [], cents(100000), from80).state;
    expect([79999, 80000, 100000, 100001].map((n) => state(cents(n)))).toEqual(['ok', 'warn', 'warn', 'over']);
  });

  it('has no state without a limit, and credit is not use', () => {
    expect(accountUse([cents(500)], [], null, from80)).toMatchObject({ state: 'none', bp: null });
    expect(accountUse([cents(-500)], [], limit, from80)).toMatchObject({ used: -500, bp: 0, state: 'ok' });
    expect(accountUse([cents(1)], [], cents(0), from80).state).toBe('over');
  });
});

describe('agedBalances', () => {
  // Common practice, no source: exactly 30 days late belongs to 1-30.
  const asOf = day('2026-06-30');
  it.each([
    ['2026-07-15', -15, 'current'],
    ['2026-06-30', 0, 'current'],
    ['2026-05-31', 30, '1-30'],
    ['2026-05-30', 31, '31-60'],
    ['2026-05-01', 60, '31-60'],
    ['2026-04-30', 61, '61-90'],
    ['2026-04-01', 90, '61-90'],
    ['2026-03-31', 91, 'over 90'],
  ])('due %s is %i days late: %s', (due, late, bucket) => {
    expect(daysLate(day(due), asOf)).toBe(late);
    expect(ageBucket(late)).toBe(bucket);
  });

  it('sums by bucket and nets nothing', () => {
    const open = [
      { from: day('2026-07-15'), balance: cents(74447) },
      { from: day('2026-06-30'), balance: cents(21000) },
      { from: day('2026-05-31'), balance: cents(112000) },
      { from: day('2026-05-30'), balance: cents(8625) },
      { from: day('2026-03-31'), balance: cents(50000) },
    ];
    expect(agedBalances(open, asOf)).toEqual({
      current: 95447,
      '1-30': 112000,
      '31-60': 8625,
      '61-90': 0,
      'over 90': 50000,
    });
    expect(agedBalances([], asOf).current).toBe(0);
  });
});
