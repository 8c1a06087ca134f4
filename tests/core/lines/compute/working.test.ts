import { describe, expect, it } from 'vitest';
import { basisPoints, cents, factor, priceE4 } from '#core/kernel/units.ts';
import { centsText, factorText, percentText, priceText, quantityText } from '#core/lines/compute/working.ts';

describe('figures of a working', () => {
  it.each([
    [centsText(cents(67450)), '674.50'],
    [centsText(cents(5)), '0.05'],
    [centsText(cents(-8431)), '\u221284.31'],
    [priceText(priceE4(65_000)), '6.50'],
    [priceText(priceE4(375)), '0.0375'],
    [factorText(factor(11_500)), '1.15'],
    [factorText(factor(15_000)), '1.50'],
    [factorText(factor(11_255)), '1.1255'],
    [percentText(basisPoints(2500)), '25 %'],
    [percentText(basisPoints(825)), '8.25 %'],
    [percentText(basisPoints(1250)), '12.5 %'],
    [percentText(basisPoints(0)), '0 %'],
  ])('%s reads %s', (text, expected) => {
    expect(text).toBe(expected);
  });

  it.each([
    [1, 1, 'each', ''],
    [2, 1, 'each', '2'],
    [1, 1, 'bank', '1 bank'],
    [2, 1, 'bank', '2 banks'],
    [5400, 3600, 'hour', '1.5 h'],
    [1200, 3600, 'hour', '20 min'],
    [90, 3600, 'hour', '90 s'],
    [12_700_000, 25_400_000, 'inch', '0.5 in'],
  ])('%i per %i %s reads "%s"', (quantity, per, unit, text) => {
    expect(quantityText(quantity, per, unit)).toBe(text);
  });
});
