import { describe, expect, it } from 'vitest';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { unitShape } from '#core/kernel/measure-units.ts';

describe('SHOP_LIMITS', () => {
  it.each(SHOP_LIMITS)('$quantity $stage $side: fits its quantity and says that it is common practice', (limit) => {
    expect(findQuantity(limit.quantity)?.family).toBe(unitShape(limit.unit).family);
    expect(limit.low ?? limit.high ?? limit.target).not.toBeNull();
    expect(limit.sourceWords).toContain('common practice');
  });
});
