import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { basisPoints, cents, divideRounded, factor, priceE4, splitByWeight } from '#core/kernel/units.ts';
import {
  costPlus,
  factorWords,
  isLabour,
  lineAmount,
  lineWorking,
  type PriceTerms,
  subletAmount,
} from '#core/lines/compute/line.ts';
import rounding from '#tests/reference/rounding-and-shares.json' with { type: 'json' };

const terms = (
  price: number,
  quantity = 1,
  factors: readonly number[] = [],
  more: Partial<PriceTerms> = {},
): PriceTerms => ({
  quantity,
  per: 1,
  unitPrice: priceE4(Math.round(price * 10_000)),
  factors: factors.map((f, i) => ({ code: `f${i}`, factor: factor(Math.round(f * 10_000)) })),
  lineMinimum: cents(0),
  ...more,
});

/** "-1234.5" with `places` decimals as an integer. */
const whole = (text: string, places: number): bigint => {
  const [units = '0', decimals = ''] = text.replace('-', '').split('.');
  const value = BigInt(units + decimals.padEnd(places, '0'));
  return text.startsWith('-') ? -value : value;
};

describe('lineAmount', () => {
  // Worked example of a shop's price sheet; invented prices, arithmetic checked by hand.
  it.each([
    ['aluminium wash', terms(45, 1, [1.15]), 5175],
    ['pressure test', terms(75, 1, [1.15]), 8625],
    ['strip, two camshafts', terms(40, 1, [1.4]), 5600],
    ['grind 16 valves', terms(6.5, 16), 10400],
    ['cut 16 seats', terms(9, 16), 14400],
    ['surface', terms(70, 1, [1.15]), 8050],
    ['16 heights', terms(3, 16), 4800],
    ['assemble, two camshafts', terms(60, 1, [1.4]), 8400],
    ['vacuum test', terms(20), 2000],
    ['16 seals', terms(1.85, 16), 2960],
    ['5 shims', terms(0.9, 5), 450],
  ])('prices the worked example: %s', (_, line, amount) => {
    expect(lineAmount(line)).toBe(amount);
  });

  it.each([
    ['6.70 x 1.15 = 7.705 is 7.71 where binary floats give 7.70', terms(6.7, 1, [1.15]), 771],
    [
      '1.85 x 1.15 x 1.50 = 3.19125 is 3.19 where rounding between factors gives 3.20',
      terms(1.85, 1, [1.15, 1.5]),
      319,
    ],
    ['20 minutes at 95.00 an hour is 31.67, not 0.33 h = 31.35', terms(95, 1200, [], { per: 3600 }), 3167],
    ['14 of 16 seals at 1.85 x 1.15', terms(1.85, 14, [1.15]), 2979],
    ['16 of them', terms(1.85, 16, [1.15]), 3404],
    ['screws at 0.0375', terms(0.0375, 30), 113],
    ['12.7 mm of weld at 2.00 an inch', terms(2, 12_700_000, [], { per: 25_400_000 }), 100],
  ])('%s', (_, line, amount) => {
    expect(lineAmount(line)).toBe(amount);
  });

  // Source: IEEE 754 decimal rounding as done by Python decimal and decimal.js 10.6.0 (reference/rounding-and-shares.json).
  it.each(rounding.cases)('rounds $exact half away from zero to $half_up_away_from_zero', (row) => {
    const quantity = Number(whole(row.exact, 4));
    // Unit price 1.0000 per 10 000 parts: the quantity alone carries the decimals.
    const line = { ...terms(1), quantity, per: 10_000 };
    expect(lineAmount(line)).toBe(Number(whole(row.half_up_away_from_zero, 2)));
  });

  it('is never less than the minimum of the line, and a correction has none', () => {
    const oneHole = terms(14, 1, [], { lineMinimum: cents(4000) });
    expect(lineAmount(oneHole)).toBe(4000);
    expect(lineAmount({ ...oneHole, quantity: 3 })).toBe(4200);
    expect(lineAmount({ ...oneHole, quantity: -1 })).toBe(-1400);
  });

  it('costs nothing for none of it', () => {
    expect(lineAmount(terms(6.5, 0))).toBe(0);
  });

  const anyTerms = fc.record({
    quantity: fc.integer({ min: -5000, max: 5000 }),
    per: fc.constantFrom(1, 3600, 25_400_000),
    unitPrice: fc.integer({ min: 0, max: 100_000_000 }).map(priceE4),
    factors: fc.array(fc.record({ code: fc.constant('x'), factor: fc.integer({ min: 1, max: 40_000 }).map(factor) }), {
      maxLength: 4,
    }),
    lineMinimum: fc.constant(cents(0)),
  });

  it('is at most half a cent from the exact price, whatever the factors', () => {
    fc.assert(
      fc.property(anyTerms, (line) => {
        let top = BigInt(line.unitPrice) * BigInt(line.quantity);
        let bottom = BigInt(line.per) * 100n;
        for (const f of line.factors) {
          top *= BigInt(f.factor);
          bottom *= 10_000n;
        }
        const off = BigInt(lineAmount(line)) * bottom - top;
        expect((off < 0n ? -off : off) * 2n <= bottom).toBe(true);
      }),
    );
  });

  it('does not depend on the order of the factors, and a credit mirrors its charge', () => {
    fc.assert(
      fc.property(anyTerms, (line) => {
        expect(lineAmount({ ...line, factors: line.factors.toReversed() })).toBe(lineAmount(line));
        expect(lineAmount({ ...line, quantity: -line.quantity })).toBe(-lineAmount(line) || 0);
      }),
    );
  });
});

describe('splitByWeight', () => {
  // Sources beside each case in reference/rounding-and-shares.json (largest remainder method).
  it.each(rounding.largest_remainder_cases)('shares $units as published: $source', (row) => {
    expect(splitByWeight(cents(row.units), row.weights)).toEqual(row.expected);
  });

  it('keeps every cent (I29)', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), weights, (amount, parts) => {
        const shares = splitByWeight(cents(amount), parts);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(amount);
      }),
    );
  });
});

describe('divideRounded', () => {
  it('refuses a result that is not exact', () => {
    expect(() => divideRounded(10n ** 20n, 1n)).toThrow(RangeError);
    expect(() => divideRounded(1n, 0n)).toThrow(RangeError);
  });
});

describe('lineWorking', () => {
  it.each([
    [terms(75, 1, [1.15]), 'each', '75.00 × 1.15'],
    [terms(6.5, 8, [1.5]), 'valve', '8 valves × 6.50 × 1.50'],
    [terms(28), 'seat', '1 seat × 28.00'],
    [terms(70, 1, [1.15, 1.5]), 'surface', '1 surface × 70.00 × 1.15 × 1.50'],
    [terms(110, 5400, [], { per: 3600 }), 'hour', '1.5 h × 110.00'],
    [terms(95, 1200, [], { per: 3600 }), 'hour', '20 min × 95.00'],
    [terms(1.85, 16), 'each', '16 × 1.85'],
    [terms(0.0375, 30), 'each', '30 × 0.0375'],
    [terms(14, 1, [], { lineMinimum: cents(4000) }), 'hole', '1 hole × 14.00, at least 40.00'],
  ])('says how the amount came about: %#', (line, unit, text) => {
    expect(lineWorking(line, unit)).toBe(text);
  });

  it('names the factors', () => {
    expect(factorWords([{ code: 'aluminium', factor: factor(11_500) }])).toBe('aluminium 1.15');
    expect(factorWords([])).toBe('');
  });
});

describe('costPlus and subletAmount', () => {
  it('adds the markup once', () => {
    expect(subletAmount(cents(31000), basisPoints(2000))).toBe(37200);
    expect(costPlus(priceE4(123_456), basisPoints(3333))).toBe(164_604);
  });
});

describe('isLabour', () => {
  it('counts work of a labour class and nothing else', () => {
    expect(isLabour({ kind: 'operation', taxClass: 'labour_repair' })).toBe(true);
    expect(isLabour({ kind: 'hourly', taxClass: 'labour_fabrication' })).toBe(true);
    expect(isLabour({ kind: 'package', taxClass: 'combined' })).toBe(true);
    expect(isLabour({ kind: 'operation', taxClass: 'sublet' })).toBe(false);
    expect(isLabour({ kind: 'fee', taxClass: 'labour_repair' })).toBe(false);
    expect(isLabour({ kind: 'part', taxClass: 'part' })).toBe(false);
  });
});
