import { describe, expect, it } from 'vitest';
import { type Field, readTyped, valueOfTyped } from '#core/kernel/measure.ts';

const dial = (unit: 'in' | 'mm'): Field => ({
  family: 'length',
  unit,
  rule: { rule: 'steps', decimals: unit === 'in' ? 4 : 3 },
  decimals: { in: 4, mm: 3 },
  signed: true,
});

describe('readTyped', () => {
  it.each([
    ['in', '-28', '-0.0028', -28 * 2540],
    ['in', '6', '0.0006', 6 * 2540],
    ['in', '+6', '0.0006', 6 * 2540],
    ['in', '120', '0.0120', 120 * 2540],
    ['in', '\u221252', '-0.0052', -52 * 2540],
    ['mm', '-28', '-0.028', -28_000],
    ['mm', '1250', '1.250', 1_250_000],
  ] as const)('%s dial: a bare %s counts steps and is kept as %s (exact arithmetic)', (unit, text, typed, value) => {
    const read = readTyped(text, dial(unit));

    expect(read).toMatchObject({ kind: 'figure', typed, unit, value, mark: 'implied' });
    expect(valueOfTyped(typed, unit)).toBe(value);
  });

  it('takes 0 for a reading of a dial, with or without a sign', () => {
    for (const text of ['0', '-0', '+0']) {
      const read = readTyped(text, dial('in'));
      expect(read.kind === 'figure' && read.value === 0).toBe(true);
    }
  });

  it('takes a decimal below one and a figure with its unit as they stand', () => {
    expect(readTyped('-.0028', dial('in'))).toMatchObject({ value: -28 * 2540, mark: 'entered' });
    expect(readTyped('-2.8 thou', dial('in'))).toMatchObject({ value: -28 * 2540 });
    expect(readTyped('-28 um', dial('in'))).toMatchObject({ unit: 'mm', value: -28_000 });
  });

  it('asks about a decimal of one and more: a part of a step, or a figure after all', () => {
    const read = readTyped('-28.5', dial('in'));

    expect(read.kind).toBe('ask');
    expect(read.kind === 'ask' && read.choices.map((it) => it.typed)).toEqual(['-0.00285 in', '-28.5 in']);
  });

  it('has no minus where a size is typed', () => {
    expect(readTyped('-28', { ...dial('in'), signed: false })).toMatchObject({
      kind: 'refused',
      code: 'measure/below-zero',
    });
  });
});
