import { describe, expect, it } from 'vitest';
import { cents, factor, priceE4 } from '#core/kernel/units.ts';
import { lineWords, plainUnit } from '#core/lines/compute/line-views.ts';

describe('lineWords', () => {
  it('gives the columns of a line', () => {
    const terms = {
      quantity: 1,
      per: 1,
      unitPrice: priceE4(450_000),
      factors: [{ code: 'aluminium', factor: factor(11_500) }],
      lineMinimum: cents(0),
    };
    expect(lineWords(terms, 'each')).toEqual({
      quantityWords: '1',
      priceWords: '45.00 × 1.15',
      factorWords: 'aluminium 1.15',
      working: '45.00 × 1.15',
    });
  });
});

describe('plainUnit', () => {
  it('knows pieces and hours', () => {
    expect([plainUnit(1), plainUnit(3600)]).toEqual(['each', 'hour']);
  });
});
