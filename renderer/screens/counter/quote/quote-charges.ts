/** A quote without castings in the house: its lines are kept as words and amounts, as they were said. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { Quote } from '../check-in/quote.ts';
import type { CheckInTyped } from '../check-in/typed.ts';

type Charge = InputOf<App['pricing/add-charge']>['charge'];

/** One charge a line of the quote, at the amount that was said. Supplies, discount and fee follow from the ticket itself. */
export const chargesOf = (quote: Quote): readonly Charge[] =>
  quote.lines
    .filter((line) => line.amount > 0)
    .map((line) => ({
      kind: 'text',
      words: line.words,
      price: line.amount * 100,
      priceWhy: `quoted by telephone: ${line.working}`.slice(0, 240),
      taxClass: line.taxClass,
    }));

/** What is wanted, in words: castings and what is asked for them. */
export function wantedWords(typed: CheckInTyped): string | null {
  const castings = typed.castings.map((casting) => casting.typeText).filter((text) => text.trim() !== '');
  const wishes = typed.wishes.map((wish) => wish.said || wish.customerWords || wish.words);
  const words = [castings.join(', '), wishes.join(', ')].filter((part) => part !== '').join(': ');
  return words === '' ? null : words;
}
