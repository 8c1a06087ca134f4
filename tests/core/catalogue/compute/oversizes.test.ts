import { describe, expect, it } from 'vitest';
import { OVERSIZES, STANDARD } from '#core/catalogue/compute/oversizes.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { measureOf } from '#core/kernel/measure-units.ts';

describe('OVERSIZES', () => {
  it('has the sizes that are made, in inch and in metric (common practice, no source)', () => {
    expect(OVERSIZES.map((it) => it.text)).toEqual([
      'standard',
      '.010',
      '.020',
      '.030',
      '.040',
      '.060',
      '0.25',
      '0.50',
      '0.75',
      '1.00',
    ]);
    expect(OVERSIZES.find((it) => it.code === '+.020in')?.over).toBe(measureOf('0.020', 'in'));
    expect(OVERSIZES.find((it) => it.code === '+0.50mm')?.over).toBe(measureOf('0.50', 'mm'));
    expect(STANDARD.over).toBe(0);
  });

  it('has a place to measure the pistons of each', () => {
    expect(findQuantity('piston-offered')?.points.map((it) => it.code)).toEqual(OVERSIZES.map((it) => it.code));
  });
});
