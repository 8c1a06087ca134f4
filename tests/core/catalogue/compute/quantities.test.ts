import { describe, expect, it } from 'vitest';
import { findQuantity, QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import { unitShape } from '#core/kernel/measure-units.ts';

describe('QUANTITIES', () => {
  it('has each code once, in words, with what is said of a figure past its limit', () => {
    expect(new Set(QUANTITIES.map((it) => it.code)).size).toBe(QUANTITIES.length);
    for (const it of QUANTITIES) {
      expect([it.words, it.over, it.under].every((words) => words.length > 1)).toBe(true);
      expect(it.unit === null || unitShape(it.unit).family === it.family).toBe(true);
    }
  });

  it('finds one by its code', () => {
    expect(findQuantity('installed-height')).toMatchObject({ spotKind: 'valve', over: 'too tall' });
    expect(findQuantity('colour')).toBeUndefined();
  });
});
