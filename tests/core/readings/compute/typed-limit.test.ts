import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { type LimitTyped, readLimit } from '#core/readings/compute/typed-limit.ts';

const typed = (words: Partial<LimitTyped>): LimitTyped => ({
  low: null,
  high: null,
  target: null,
  unit: 'in',
  secondUnitText: null,
  ...words,
});

describe('readLimit', () => {
  it('reads figures as the source prints them, fractions and whole ones too', () => {
    expect(readLimit(typed({ low: '1 1/16', high: '2' }))).toMatchObject({
      low: measureOf('1.0625', 'in'),
      high: measureOf('2', 'in'),
      faults: {},
    });
  });

  it('takes figures below zero (deck clearance)', () => {
    expect(readLimit(typed({ low: '-0.20', unit: 'mm' })).low).toBe(-200_000);
  });

  it.each([
    [{ low: '1.710', high: '1.690' }, 'low'],
    [{}, 'low'],
    [{ high: 'about 5' }, 'high'],
    [{ target: '1.7000001' }, 'target'],
  ])('refuses %o', (words, field) => {
    expect(readLimit(typed(words)).faults).toHaveProperty(field);
  });

  // The printed pairs of these manuals; the first figure is kept, the second only compared.
  it.each([
    ['TM 5-2815-241-34&P misprints 188.713', '6.5635', 'in', '188.713 mm', 1],
    ['TM 55-1905-223-24-3 prints it right', '6.5635', 'in', '166.713 mm', 0],
    ['TM 9-2815-255-24 misprints 0.015', '0.006', 'in', '0.015 mm', 1],
    ['TM 5-1940-322-24, WP 0160', '80.7', 'lbf', '359 N', 0],
  ] as const)('%s', (_, high, unit, secondUnitText, warnings) => {
    expect(readLimit(typed({ high, unit, secondUnitText })).warnings).toHaveLength(warnings);
  });
});
