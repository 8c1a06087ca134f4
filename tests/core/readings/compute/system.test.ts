import { describe, expect, it } from 'vitest';
import { systemOfCasting } from '#core/readings/compute/system.ts';
import { factsOf, limitOf } from '#tests/kit/bench-facts.ts';

describe('systemOfCasting', () => {
  it('goes by the casting’s own limits, else by the shop', () => {
    const metric = { facts: factsOf({ limits: [limitOf('margin', 'mm', { low: '0.80' })] }) };
    const shopOnly = { facts: factsOf({ limits: [limitOf('margin', 'mm', { low: '0.80', forWhat: 'shop' })] }) };

    expect(systemOfCasting(metric)).toBe('metric');
    expect(systemOfCasting(shopOnly)).toBe('inch');
  });
});
