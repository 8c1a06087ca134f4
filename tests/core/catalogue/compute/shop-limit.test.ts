import { describe, expect, it } from 'vitest';
import { limit } from '#core/catalogue/compute/shop-limit.ts';

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
