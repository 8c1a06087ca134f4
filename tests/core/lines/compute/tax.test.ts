import { describe, expect, it } from 'vitest';
import { basisPoints, cents } from '#core/kernel/units.ts';
import { creditedTax, taxFigures } from '#core/lines/compute/tax.ts';
import { line, taxOn } from './builders.ts';

describe('taxFigures', () => {
  it('rounds once a rate and shows a tax that falls on nothing', () => {
    const [onParts, onCore] = taxFigures([line('part', 3410)], [taxOn('part'), taxOn('core')], 'per_rate');
    expect(onParts).toMatchObject({ base: 3410, amount: 239, working: '7 % of 34.10' });
    expect(onCore).toMatchObject({ base: 0, amount: 0 });
  });

  it('says when it was rounded line by line', () => {
    expect(taxFigures([line('part', 7)], [taxOn('part')], 'per_line')[0]?.working).toBe('7 % of 0.07, line by line');
  });
});

describe('creditedTax', () => {
  const tax = { bp: basisPoints(700), base: cents(9160), amount: cents(641) };
  const none = { base: cents(0), amount: cents(0) };

  it('gives back the tax of the credited part: 4.34 on 62.00', () => {
    expect(creditedTax(tax, cents(6200), none)).toBe(434);
  });

  it('gives back exactly the tax of the invoice when all is credited, in one step or in many', () => {
    expect(creditedTax(tax, cents(9160), none)).toBe(641);
    const first = creditedTax(tax, cents(6200), none);
    const second = creditedTax(tax, cents(2960), { base: cents(6200), amount: first });
    expect(first + second).toBe(641);
    // Rounded on each of three lines of 0.07, the invoice asked none.
    const perLine = { bp: basisPoints(700), base: cents(21), amount: cents(0) };
    expect(creditedTax(perLine, cents(21), none)).toBe(0);
  });
});
