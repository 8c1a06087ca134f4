import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Quote } from '#renderer/screens/counter/check-in/quote.ts';
import { chargesOf } from '#renderer/screens/counter/quote/quote-charges.ts';

const line = (words: string, amount: number) => ({ words, working: words, amount, taxClass: 'labour_repair' });
const quote = (lines: readonly object[], derived: readonly object[]) =>
  ({ lines, bill: { derived } }) as unknown as Quote;
const cents = (charges: ReturnType<typeof chargesOf>) => charges.reduce((sum, charge) => sum + charge.price / 100, 0);

describe('chargesOf', () => {
  it('says the same amount before tax as the quote did, supplies and fee as lines', () => {
    const charges = chargesOf(quote([line('valve job', 29_500)], [line('supplies', 1180), line('washing fee', 650)]));

    expect(charges.map((charge) => [charge.words, charge.price])).toEqual([
      ['valve job', 2_950_000],
      ['supplies', 118_000],
      ['washing fee', 65_000],
    ]);
  });

  it('takes a discount off the greatest line, because no charge is below 0', () => {
    const charges = chargesOf(quote([line('wash', 5000), line('valve job', 29_500)], [line('discount', -3450)]));

    expect(charges.map((charge) => [charge.words, charge.price])).toEqual([
      ['valve job', 2_605_000],
      ['wash', 500_000],
    ]);
    expect(charges[0]?.priceWhy).toContain('discount taken off');
  });

  it('adds up to what was said, whatever the lines, and never goes below 0', () => {
    const amounts = fc.array(fc.integer({ min: 0, max: 500_000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(amounts, fc.integer({ min: 0, max: 100 }), (all, percent) => {
        const total = all.reduce((sum, one) => sum + one, 0);
        const discount = Math.floor((total * percent) / 100);
        const charges = chargesOf(
          quote(
            all.map((one, at) => line(`line ${at}`, one)),
            discount > 0 ? [line('discount', -discount)] : [],
          ),
        );
        expect(cents(charges)).toBe(total - discount);
        expect(charges.every((charge) => charge.price >= 0)).toBe(true);
      }),
    );
  });
});
