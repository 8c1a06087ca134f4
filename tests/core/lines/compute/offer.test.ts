import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { cents, factor, priceE4 } from '#core/kernel/units.ts';
import { offerOn, type PricedCasting, perOf, type Sold, usualQuantity } from '#core/lines/compute/offer.ts';
import type { FactorRow } from '#core/rates/compute.ts';

const on = day('2026-03-09');
const rates = [{ list: 'standard', price: priceE4(65_000), lineMinimum: cents(0), from: day('2026-01-01') }];
const grind: Sold = { code: 'valve-grind', chargeUnit: 'valve', countFrom: 'valves', taxClass: 'labour_repair', rates };
const closeTolerance: FactorRow = {
  code: 'close-tolerance',
  factor: factor(15_000),
  whenFact: 'close_tolerance',
  whenValue: '1',
  from: day('2026-01-01'),
  until: null,
  touches: ['valve-grind'],
};
const head: PricedCasting = {
  metal: 'aluminium',
  camLayout: 'sohc',
  heavyDiesel: false,
  closeTolerance: true,
  counts: { valves: 8 },
};
const pricing = { list: 'standard', on, factors: [closeTolerance] };

describe('offerOn', () => {
  it('takes the count from the casting and the factor from its facts', () => {
    expect(offerOn(grind, head, pricing)).toMatchObject({
      quantity: 8,
      amount: 7800,
      working: '8 valves × 6.50 × 1.50',
      factors: [{ code: 'close-tolerance', factor: 15_000 }],
    });
  });

  it('takes a typed count instead: only the exhausts', () => {
    expect(offerOn(grind, head, pricing, 4)?.amount).toBe(3900);
  });

  it('sells nothing without a price on the day', () => {
    expect(offerOn(grind, head, { ...pricing, on: day('2025-12-31') })).toBeUndefined();
  });

  it('sells hours in seconds', () => {
    const weld: Sold = { ...grind, code: 'weld-repair', chargeUnit: 'hour', countFrom: 'ask' };
    expect(offerOn(weld, head, pricing, 5400)).toMatchObject({ per: 3600, amount: 975, working: '1.5 h × 6.50' });
    expect(offerOn(weld, head, pricing)).toMatchObject({ quantity: 0, amount: 0 });
  });
});

describe('usualQuantity', () => {
  it('is one, a count of the casting, or unknown', () => {
    expect(usualQuantity('one', {})).toBe(1);
    expect(usualQuantity('valves', { valves: 16 })).toBe(16);
    expect(usualQuantity('sleeves', { valves: 16 })).toBe(0);
    expect(usualQuantity('ask', { valves: 16 })).toBeNull();
  });
});

describe('perOf', () => {
  it('divides hours only', () => {
    expect([perOf('hour'), perOf('hole')]).toEqual([3600, 1]);
  });
});
