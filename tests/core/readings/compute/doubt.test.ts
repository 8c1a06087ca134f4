import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { showDoubt } from '#core/readings/compute/doubt.ts';

describe('showDoubt', () => {
  it.each([
    ['0.0001', 'in', '0.0001'],
    ['0.0003', 'in', '0.0003'],
    ['0.5', 'degF', null],
    ['2', 'lbf', '2.0'],
    ['0.01', 'mm', '0.01'],
  ] as const)('shows %s %s as it is (exact mathematics)', (typed, unit, text) => {
    expect(showDoubt(measureOf(typed, unit), unit)).toBe(text);
  });

  it.each([
    // Root of the sum of squares of 0.0001 and 0.0001, of 0.0002 and 0.0001 (3592.1 and 5679.6 nm, each rounded up).
    [3593, 'in', 2, '0.00015'],
    [3593, 'in', 3, '0.000142'],
    [5680, 'in', 2, '0.00023'],
    [33_333_334, 'N', 2, '34'],
    [1_234_567, 'N', 2, '1.3'],
    [1, 'in', 2, '0.000001'],
  ] as const)(
    'never shows %i base units of %s smaller than they are (exact mathematics)',
    (doubt, unit, digits, text) => {
      expect(showDoubt(doubt, unit, digits)).toBe(text);
    },
  );
});
