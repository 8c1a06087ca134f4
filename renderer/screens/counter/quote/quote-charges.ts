/** A quote without castings in the house: its lines are kept as words and amounts, as they were said. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { Quote } from '../check-in/quote.ts';
import type { CheckInTyped } from '../check-in/typed.ts';

type Charge = InputOf<App['pricing/add-charge']>['charge'];
type Said = Readonly<Pick<Quote['lines'][number], 'words' | 'working' | 'amount' | 'taxClass'>>;

/**
 * One charge a line, so that they add up to the amount before tax that was said.
 *
 * Supplies, fee and rush are lines of their own here, because they follow from work and there is none yet. A charge is
 * never below 0, so a discount is taken off the greatest lines.
 */
export function chargesOf(quote: Pick<Quote, 'lines' | 'bill'>): readonly Charge[] {
  const said: readonly Said[] = [...quote.lines, ...quote.bill.derived];
  let discount = -said.reduce((sum, line) => sum + Math.min(0, line.amount), 0);
  return said
    .filter((line) => line.amount > 0)
    .toSorted((a, b) => b.amount - a.amount)
    .map((line) => {
      const off = Math.min(discount, line.amount);
      discount -= off;
      const why =
        off > 0 ? `quoted by telephone, discount taken off: ${line.working}` : `quoted by telephone: ${line.working}`;
      return {
        kind: 'text',
        words: line.words,
        price: (line.amount - off) * 100,
        priceWhy: why.slice(0, 240),
        taxClass: line.taxClass,
      };
    });
}

/** What is wanted, in words: castings and what is asked for them. */
export function wantedWords(typed: CheckInTyped): string | null {
  const castings = typed.castings.map((casting) => casting.typeText).filter((text) => text.trim() !== '');
  const wishes = typed.wishes.map((wish) => wish.said || wish.customerWords || wish.words);
  const words = [castings.join(', '), wishes.join(', ')].filter((part) => part !== '').join(': ');
  return words === '' ? null : words;
}
