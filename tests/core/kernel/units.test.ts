import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimal } from '#core/kernel/measure-units.ts';
import { basisPoints, cents, divideRounded, nanometres, shareOf, splitByWeight, sumCents } from '#core/kernel/units.ts';
import reference from '#tests/reference/rounding-and-shares.json' with { type: 'json' };

describe('divideRounded', () => {
  it.each(reference.cases)(
    'Python decimal and decimal.js 10.6.0, half up away from zero: $exact is $half_up_away_from_zero',
    ({ exact, half_up_away_from_zero }) => {
      const { over, under } = decimal(exact);
      const expected = decimal(half_up_away_from_zero);

      expect(BigInt(divideRounded(over * 100n, under)) * expected.under).toBe(expected.over * 100n);
    },
  );

  it('refuses a divisor of zero and a result past 2^53', () => {
    expect(() => divideRounded(1n, 0n)).toThrow(RangeError);
    expect(() => divideRounded(2n ** 60n, 1n)).toThrow(RangeError);
  });

  it('mirrors a credit and its charge, and gives no minus zero', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(2n ** 60n), max: 2n ** 60n }),
        fc.bigInt({ min: 1000n, max: 2n ** 40n }),
        (n, d) => {
          expect(divideRounded(-n, d) + divideRounded(n, d)).toBe(0);
          expect(Object.is(divideRounded(n, d), -0)).toBe(false);
        },
      ),
    );
  });
});

describe('splitByWeight', () => {
  it.each(reference.largest_remainder_cases)('$source: $units by $weights', ({ weights, units, expected }) => {
    expect(splitByWeight(cents(units), weights)).toEqual(expected);
  });

  it('keeps every cent, whatever the weights (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000, max: 1_000_000 }),
        fc.array(fc.integer({ min: 0, max: 100_000 }), { minLength: 1, maxLength: 30 }),
        (amount, weights) => {
          const parts = splitByWeight(cents(amount), weights);

          expect(sumCents(parts)).toBe(amount === 0 ? 0 : amount);
          expect(parts).toHaveLength(weights.length);
        },
      ),
    );
  });

  it('refuses no parts and a negative weight', () => {
    expect(() => splitByWeight(cents(1), [])).toThrow(RangeError);
    expect(() => splitByWeight(cents(1), [1, -1])).toThrow(RangeError);
  });
});

describe('shareOf', () => {
  it('rounds a quarter of 674.50 half up: 168.63 (binary fractions give 168.62)', () => {
    expect(shareOf(cents(67_450), basisPoints(2500))).toBe(16_863);
  });
});

describe('a unit', () => {
  it('refuses what is not whole, and turns minus zero into zero', () => {
    expect(() => cents(0.5)).toThrow('Cents must be a safe integer');
    expect(() => nanometres(Number.MAX_SAFE_INTEGER + 1)).toThrow(RangeError);
    expect(Object.is(cents(-0), 0)).toBe(true);
  });
});
