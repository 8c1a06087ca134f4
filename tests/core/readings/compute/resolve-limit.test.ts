import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { id } from '#core/kernel/ids.ts';
import type { Limit, LimitFor } from '#core/readings/compute/model.ts';
import { resolveLimit } from '#core/readings/compute/resolve-limit.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';

const asked = { quantity: 'margin', stage: 'after', side: 'E', material: 'iron_grey' } as const;
const margin = (forWhat: LimitFor, low: string, more: Partial<Limit> = {}) => ({
  ...limitOf('margin', 'in', { low, forWhat }),
  ...more,
});

describe('resolveLimit', () => {
  const ranks: readonly LimitFor[] = ['casting_type', 'engine_type', 'this_job', 'customer_instruction', 'shop'];

  it('takes the casting type before the engine, the job, the customer and the shop', () => {
    const limits = ranks.map((forWhat, index) => margin(forWhat, `0.03${index}`));

    for (const [index, forWhat] of ranks.entries()) {
      expect(resolveLimit(asked, limits.slice(index).toReversed(), [])?.limit.forWhat).toBe(forWhat);
    }
  });

  it('says a customer’s written figure that gives way', () => {
    const customers = margin('customer_instruction', '0.060');

    expect(resolveLimit(asked, [customers, margin('casting_type', '0.047')], [])?.setAside).toBe(customers);
  });

  it('says nothing where the customer’s figure is the same, or is the one that is used', () => {
    const same = resolveLimit(asked, [margin('customer_instruction', '0.047'), margin('casting_type', '0.047')], []);
    const used = resolveLimit(asked, [margin('customer_instruction', '0.060'), margin('shop', '0.047')], []);

    expect(same?.setAside).toBeNull();
    expect(used?.limit.forWhat).toBe('customer_instruction');
    expect(used?.setAside).toBeNull();
  });

  it('prefers within a rank this side, then this metal, then the latest day', () => {
    const any = margin('shop', '0.030');
    const side = margin('shop', '0.047', { side: 'E' });
    const metal = margin('shop', '0.035', { material: 'iron_grey' });
    const later = margin('shop', '0.040', { from: day('2026-02-01') });

    expect(resolveLimit(asked, [any, metal, later, side], [])?.limit).toBe(side);
    expect(resolveLimit(asked, [any, metal, later], [])?.limit).toBe(metal);
    expect(resolveLimit(asked, [any, later], [])?.limit).toBe(later);
  });

  it('leaves out the other side, the other metal and what was replaced', () => {
    const old = margin('casting_type', '0.047');

    expect(resolveLimit(asked, [margin('shop', '0.031', { side: 'I' })], [])).toBeNull();
    expect(resolveLimit(asked, [margin('shop', '0.031', { material: 'aluminium' })], [])).toBeNull();
    expect(resolveLimit(asked, [old, margin('casting_type', '0.050', { replaces: old.id })], [])?.limit.typedLow).toBe(
      '0.050',
    );
  });

  it('prefers an instruction for this casting to one for the whole ticket', () => {
    const ticket = margin('customer_instruction', '0.050', { from: day('2026-03-01') });
    const casting = margin('customer_instruction', '0.055', { casting: id<'casting'>(1) });

    expect(resolveLimit(asked, [ticket, casting], [])?.limit).toBe(casting);
  });

  it('lets a lead choose another one, with reason and name; the last choice stands', () => {
    const type = margin('casting_type', '0.047');
    const customers = margin('customer_instruction', '0.060');
    const choice = (limit: Limit, reason: string) => ({
      quantity: 'margin',
      stage: 'after' as const,
      side: 'any' as const,
      limit: limit.id,
      reason,
      by: 'BL',
    });

    const found = resolveLimit(asked, [type, customers], [choice(type, 'first'), choice(customers, 'race rule')]);

    expect(found?.limit).toBe(customers);
    expect(found?.chosen).toEqual({ reason: 'race rule', by: 'BL' });
  });

  it('knows none where none is', () => {
    expect(resolveLimit(asked, [limitOf('stem', 'in', { low: '0.3' })], [])).toBeNull();
  });
});
