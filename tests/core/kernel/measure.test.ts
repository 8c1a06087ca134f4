import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Field, readTyped, valueOfTyped } from '#core/kernel/measure.ts';
import { showTyped } from '#core/kernel/measure-show.ts';
import { measureOf, UNIT_CODES, unitShape } from '#core/kernel/measure-units.ts';

const inches: Field = { family: 'length', unit: 'in' };
const millimetres: Field = { family: 'length', unit: 'mm' };
const inch = (text: string) => measureOf(text, 'in');
const mm = (text: string) => measureOf(text, 'mm');

describe('readTyped', () => {
  it.each([
    // Spring height in a published manual; the fraction itself is exact arithmetic.
    ['TM 5-3810-206-35 writes 2-1/32', '2-1/32', inch('2.03125')],
    ['exact arithmetic', '3 31/32', inch('3.96875')],
    ['exact arithmetic', '1/64', inch('0.015625')],
    ['common practice, no source', '30 thou', inch('0.030')],
    ['common practice, no source', '+.030', inch('0.030')],
    ['common practice, no source', '.030"', inch('0.030')],
    ['common practice, no source', '.0305', inch('0.0305')],
    ['common practice, no source', '1.701"', inch('1.701')],
    ['common practice, no source', '43.2mm', mm('43.2')],
    ['common practice, no source', '0,775 mm', mm('0.775')],
    ['common practice, no source', '12 µm', mm('0.012')],
    ['common practice, no source', '1.700 in', inch('1.700')],
  ])('reads what the bench writes (%s): %s', (_, text, expected) => {
    expect(readTyped(text, inches)).toMatchObject({ kind: 'figure', value: expected });
  });

  it('takes the unit of the row for a decimal figure without a mark', () => {
    expect(readTyped('0,775', millimetres)).toMatchObject({ unit: 'mm', value: 775_000 });
    expect(readTyped('1.7', inches)).toMatchObject({ unit: 'in', value: 43_180_000 });
  });

  it('lets a mark in the text win over the row', () => {
    expect(readTyped('43.2mm', inches)).toMatchObject({ unit: 'mm', typed: '43.2mm' });
    expect(readTyped('5/16', millimetres)).toMatchObject({ unit: 'in', value: inch('0.3125') });
  });

  it('keeps trailing zeros: 1.700 stays 1.700 (common practice, no source)', () => {
    const read = readTyped('1.700', inches);

    expect(read).toMatchObject({ typed: '1.700', value: inch('1.7') });
  });

  it('never guesses a bare 30: asks with both readings (common practice, no source)', () => {
    const read = readTyped('30', { ...millimetres, decimals: { in: 3, mm: 2 } });

    expect(read).toMatchObject({
      kind: 'ask',
      choices: [
        { typed: '0.030 in', unit: 'in', value: inch('0.030') },
        { typed: '0.30 mm', unit: 'mm', value: mm('0.30') },
      ],
    });
  });

  it('offers the figure as it stands too where that is near what is expected', () => {
    const read = readTyped('36', { ...millimetres, target: mm('35.5') });

    expect(read.kind === 'ask' && read.choices.map((it) => it.typed)).toEqual(['0.036 in', '0.36 mm', '36 mm']);
  });

  it('gives back a choice as a figure, so that it is not asked twice', () => {
    const read = readTyped('30', millimetres);
    const choices = read.kind === 'ask' ? read.choices : [];

    for (const choice of choices) {
      expect(readTyped(choice.typed, millimetres)).toMatchObject({ kind: 'figure', value: choice.value });
    }
    expect(choices).toHaveLength(2);
  });

  it('takes a bare figure of other families in the unit of the row', () => {
    expect(readTyped('110', { family: 'force', unit: 'lbf' })).toMatchObject({ kind: 'figure', value: 489_304_378 });
    expect(readTyped('40', { family: 'pressure', unit: 'psi' })).toMatchObject({ unit: 'psi' });
  });

  it('reads nothing as zero: empty is empty, and 0 is 0', () => {
    expect(readTyped('  ', inches)).toEqual({ kind: 'empty' });
    expect(readTyped('0', inches)).toMatchObject({ kind: 'figure', value: 0 });
  });

  describe('implied decimals', () => {
    const field: Field = { ...inches, rule: { rule: 'implied', decimals: 4 } };

    it.each([
      ['3438', '0.3438'],
      ['39572', '3.9572'],
      ['039572', '03.9572'],
    ])('reads %s as %s, the kept text with its point', (digits, typed) => {
      expect(readTyped(digits, field)).toMatchObject({ kind: 'figure', typed, mark: 'implied', unit: 'in' });
    });

    it('asks when there are fewer digits than decimals, or far too many', () => {
      expect(readTyped('343', field).kind).toBe('ask');
      expect(readTyped('3957212', field).kind).toBe('ask');
    });

    it('leaves a figure with its own point alone', () => {
      expect(readTyped('0.3438', field)).toMatchObject({ mark: 'entered', typed: '0.3438' });
    });
  });

  describe('last digits', () => {
    const field: Field = {
      ...inches,
      rule: { rule: 'last_digits', digits: 3, decimals: 3 },
      target: inch('1.700'),
    };

    it.each([
      ['712', '1.712'],
      ['698', '1.698'],
      ['949', '1.949'],
    ])('reads %s near 1.700 as %s', (digits, typed) => {
      expect(readTyped(digits, field)).toMatchObject({ kind: 'figure', typed, mark: 'last_digits' });
    });

    it.each([
      ['951', 'a quarter of the span away and one more'],
      ['200', 'half the span away'],
      ['12', 'too few digits'],
      ['1712', 'too many digits'],
    ])('asks for %s: %s', (digits) => {
      expect(readTyped(digits, field).kind).toBe('ask');
    });

    it('works in millimetres with two decimals', () => {
      const metric: Field = {
        ...millimetres,
        rule: { rule: 'last_digits', digits: 3, decimals: 2 },
        target: mm('38.00'),
      };

      expect(readTyped('810', metric)).toMatchObject({ typed: '38.10', value: mm('38.10') });
      expect(readTyped('790', metric)).toMatchObject({ typed: '37.90' });
    });

    it('asks when no target is known', () => {
      expect(readTyped('712', { ...field, target: null }).kind).toBe('ask');
    });
  });

  it.each([
    ['abc', 'measure/not-a-figure'],
    ['🔧', 'measure/not-a-figure'],
    ['1.2.3', 'measure/grouping'],
    ['1,234.5', 'measure/grouping'],
    ['1.7 psi', 'measure/wrong-unit'],
    ['1.7 furlong', 'measure/wrong-unit'],
    ['-1.7', 'measure/below-zero'],
    ['1/3', 'measure/fraction'],
    ['1/2 mm', 'measure/fraction'],
    ['1.000001', 'measure/too-fine'],
    ['0.0000001 mm', 'measure/too-fine'],
    ['9999999999999.5', 'measure/too-big'],
    ['1.70000000000000000000', 'measure/too-long'],
    ['1'.repeat(10_000), 'measure/too-long'],
  ])('refuses %s with a sentence', (text, code) => {
    const read = readTyped(text, inches);

    expect(read).toMatchObject({ kind: 'refused', code });
    expect(read.kind === 'refused' && read.message).toMatch(/\.$/);
  });

  it('takes a minus, also a printed one, where a place may be below zero', () => {
    expect(readTyped('\u22120.20', { ...millimetres, signed: true })).toMatchObject({ value: -200_000 });
  });

  describe('for any typed figure', () => {
    const decimals = fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 99_999 }));
    const typed = decimals.map(([whole, rest]) => `${whole}.${String(rest).padStart(5, '0')}`);

    it('the kept text and unit read again give the value', () => {
      fc.assert(
        fc.property(typed, fc.constantFrom(...UNIT_CODES), (text, unit) => {
          const read = readTyped(text, { family: unitShape(unit).family, unit });

          expect(read.kind === 'figure' && valueOfTyped(read.typed, read.unit)).toBe(
            read.kind === 'figure' && read.value,
          );
        }),
      );
    });

    it('an inch or millimetre figure converted there and back is the typed text', () => {
      fc.assert(
        fc.property(typed, fc.constantFrom('in' as const, 'mm' as const), (text, unit) => {
          const read = readTyped(text, { family: 'length', unit });

          expect(read.kind === 'figure' && showTyped(read.typed, read.value, unit)).toBe(text);
        }),
      );
    });

    it('strange text never throws and is never a figure unless it has a digit', () => {
      fc.assert(
        fc.property(fc.string({ unit: 'grapheme' }), (text) => {
          const read = readTyped(text, inches);

          expect(read.kind !== 'figure' || /\d/.test(text)).toBe(true);
        }),
      );
    });
  });
});

describe('valueOfTyped', () => {
  it('gives the value of kept text, and null for words', () => {
    expect(valueOfTyped('30 thou', 'in')).toBe(762_000);
    expect(valueOfTyped('-0.20', 'mm')).toBe(-200_000);
    expect(valueOfTyped('done', 'in')).toBeNull();
  });
});
