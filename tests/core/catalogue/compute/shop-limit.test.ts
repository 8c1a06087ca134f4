import { describe, expect, it } from 'vitest';
import { limit, usually } from '#core/catalogue/compute/shop-limit.ts';

describe('limit', () => {
  it('counts for both sides unless said, and says that it is common practice', () => {
    expect(limit('margin', 'after', '0.031', null, 'in')).toMatchObject({
      side: 'any',
      low: '0.031',
      high: null,
      sourceTag: 'common practice',
    });
  });
});

describe('usually', () => {
  it('gives a figure to reckon with and judges nothing', () => {
    expect(usually('hone-allowance', 'after', '0.004', 'in')).toMatchObject({ target: '0.004', low: null, high: null });
  });
});
