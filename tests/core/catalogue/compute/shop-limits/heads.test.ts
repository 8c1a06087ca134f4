import { describe, expect, it } from 'vitest';
import { HEAD_LIMITS } from '#core/catalogue/compute/shop-limits/heads.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import manuals from '#tests/reference/technical-manual-limits.json' with { type: 'json' };

const find = (quantity: string) => HEAD_LIMITS.find((it) => it.quantity === quantity && it.stage === 'after');

describe('HEAD_LIMITS', () => {
  it.each([
    ['seal-clearance', '0.050', null, 'a head maker’s guide, name withheld: a setting'],
    ['coil-bind-clearance', '0.060', null, 'common practice, no source'],
    ['rocker-clearance', '0.040', null, 'common practice, no source'],
    ['tip-removed', null, '0.010', 'common practice, no source'],
    ['stem-wear', null, '0.0015', 'common practice, no source'],
    ['port-vacuum-fall', null, '5', 'from memory; shops differ'],
    ['spring-strength', '0.90', null, 'common practice, no source'],
  ])('%s from %s to %s: %s', (quantity, low, high, _) => {
    expect(find(quantity)).toMatchObject({ low, high });
  });

  it('face runout as printed in TM 9-4310-397-14, page 6-28', () => {
    const printed = manuals.cases.find((it) => it.id === 'L051');

    expect(measureOf(find('face-runout')?.high ?? '', 'in')).toBe(measureOf(printed?.high ?? '', 'in'));
  });

  it('seat runout as printed in TM 9-2320-302-34, work package 0032 00', () => {
    const printed = manuals.cases.find((it) => it.id === 'L328');

    expect(measureOf(find('seat-runout')?.high ?? '', 'in')).toBe(measureOf(printed?.high ?? '', 'in'));
  });

  it('free beside the seat is 1/64 in, as TM 10-3930-671-24 wants at least (exact arithmetic)', () => {
    expect(measureOf(find('seat-free')?.low ?? '', 'in')).toBe(measureOf('1', 'in') / 64);
  });
});
