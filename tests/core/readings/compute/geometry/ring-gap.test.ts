import { describe, expect, it } from 'vitest';
import { gapGrowth } from '#core/readings/compute/geometry/ring-gap.ts';
import { inch } from '#tests/kit/worn-block.ts';

describe('gapGrowth', () => {
  it('0.001 in of bore opens the gap by 0.00314 in (Engine Builder, June 2012, prints 0.003)', () => {
    expect(Math.abs(gapGrowth(inch('0.001')) - inch('0.003'))).toBeLessThanOrEqual(inch('0.0002'));
    expect(gapGrowth(inch('0.001'))).toBe(Math.round(25_400 * Math.PI));
  });

  it('a bore worn by 0.007 opens 0.016 to 0.038 in (exact mathematics)', () => {
    expect((inch('0.016') + gapGrowth(inch('0.007'))) / 25_400_000).toBeCloseTo(0.038, 3);
  });

  it('is nothing without growth, and closes with a smaller bore', () => {
    expect(gapGrowth(0)).toBe(0);
    expect(gapGrowth(-1000)).toBe(-3142);
  });
});
