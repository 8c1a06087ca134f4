import { describe, expect, it } from 'vitest';
import { quantity } from '#core/catalogue/compute/quantity.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { entryRuleOf, rowDecimals, rowUnit, showComputed, showJudged } from '#core/readings/compute/row-units.ts';

const bore = quantity('bore', 'bore', { fine: true, entryRule: 'implied', entryDigits: 4 });
const height = quantity('installed-height', 'height', { entryRule: 'last_digits', entryDigits: 3 });
const load = quantity('seat-load', 'seat load', { family: 'force' });

describe('rowUnit', () => {
  it('is the limit’s, else what was read, else the quantity’s own, else the system’s', () => {
    expect(rowUnit(bore, ['mm'], ['in'], 'inch')).toBe('mm');
    expect(rowUnit(bore, [], ['mm'], 'inch')).toBe('mm');
    expect(rowUnit({ ...bore, unit: 'uin' }, [], [], 'metric')).toBe('uin');
    expect(rowUnit(load, [], [], 'metric')).toBe('N');
    expect(rowUnit(quantity('x', 'x', { family: 'text' }), [], [], 'inch')).toBeNull();
  });
});

describe('rowDecimals', () => {
  // Four decimals of an inch for bores, guides and fits, three for heights: common practice, no source.
  it.each([
    [bore, 'in', 4],
    [bore, 'mm', 3],
    [height, 'in', 3],
    [height, 'mm', 2],
    [load, 'lbf', 1],
    [load, 'N', 0],
    [quantity('chamber', 'chamber', { family: 'volume' }), 'cc', 1],
    [quantity('grown', 'grown', { family: 'volume', fine: true }), 'cc', 2],
  ] as const)('%o in %s: %d', (it, unit, decimals) => {
    expect(rowDecimals(it, unit)).toBe(decimals);
  });
});

describe('entryRuleOf', () => {
  it('implies the decimals of the row’s unit, and last digits as the quantity says', () => {
    expect(entryRuleOf(bore, 'in')).toEqual({ rule: 'implied', decimals: 4 });
    expect(entryRuleOf(bore, 'mm')).toEqual({ rule: 'implied', decimals: 3 });
    expect(entryRuleOf(height, 'mm')).toEqual({ rule: 'last_digits', digits: 3, decimals: 2 });
    expect(entryRuleOf(load, 'N')).toEqual({ rule: 'none' });
    expect(entryRuleOf({ ...load, derived: 'seat-load' }, 'N')).toBeNull();
  });
});

describe('showComputed', () => {
  it('never rounds a figure onto a limit it does not meet', () => {
    expect(showComputed(measureOf('1.5101', 'in'), 'in', 3)).toBe('1.5101');
    expect(showComputed(measureOf('1.510', 'in'), 'in', 3)).toBe('1.510');
    expect(showComputed(measureOf('38.125', 'mm'), 'mm', 2)).toBe('38.125');
  });

  it('rounds what no decimal shows whole, and other units to their own', () => {
    expect(showComputed(measureOf('38.1', 'mm') + 1, 'in', 3)).toBe('1.500');
    expect(showComputed(782_829, 'in', 4)).toBe('0.0308');
    expect(showComputed(-782_829, 'in', 4)).toBe('−0.0308');
    expect(showComputed(measureOf('59.44', 'lbf'), 'lbf', 1)).toBe('59.4');
  });
});

describe('showJudged', () => {
  const high = { low: null, high: measureOf('0.0040', 'in') };

  it('never lets a figure read like a limit that it does not meet', () => {
    // 40.3333 tenths of a thou, as a plane through three points gives.
    expect(showJudged(102_447, 'in', 4, high)).toBe('0.004033');
    expect(showJudged(100_753, 'in', 4, high)).toBe('0.003967');
  });

  it('shows all others with the decimals of the row, the limit itself too', () => {
    expect(showJudged(measureOf('0.0040', 'in'), 'in', 4, high)).toBe('0.0040');
    expect(showJudged(110_067, 'in', 4, high)).toBe('0.0043');
    expect(showJudged(102_447, 'in', 4, null)).toBe('0.0040');
  });
});
