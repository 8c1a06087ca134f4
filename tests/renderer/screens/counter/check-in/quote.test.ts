import { describe, expect, it } from 'vitest';
import { pricingContract } from '#core/pricing/contract.ts';
import { promisesContract } from '#core/promises/contract.ts';
import { addCasting, addPairOf, addWish, changeCasting } from '#renderer/screens/counter/check-in/changes.ts';
import { quoteInput, suggestionInput } from '#renderer/screens/counter/check-in/quote.ts';
import { EMPTY_CHECK_IN } from '#renderer/screens/counter/check-in/typed.ts';

const settings = { language: 'en', currencySign: '$', hourClock: '24' } as const;
const heads = addPairOf(
  changeCasting(addCasting(EMPTY_CHECK_IN), 'c1', { type: 'BV-6', kind: 'head', material: 'aluminium' }),
  'c1',
);
const wish = {
  kind: 'operation',
  id: 4,
  code: 'pressure-test',
  words: 'Pressure test',
  customerWords: '',
  said: '',
  quantity: '',
  note: '',
} as const;

describe('quoteInput', () => {
  it('asks nothing while nothing can be priced', () => {
    expect(quoteInput(EMPTY_CHECK_IN, settings, 0)).toBeNull();
    expect(quoteInput(heads, settings, 0)).toBeNull();
    expect(
      quoteInput(addWish(changeCasting(heads, 'c1', { material: null }), { ...wish, castings: ['c1'] }), settings, 0)
        ?.castings,
    ).toHaveLength(1);
  });

  it('prices work for both on each, and work for one on that one', () => {
    const typed = addWish(addWish(heads, { ...wish, castings: [] }), {
      ...wish,
      id: 5,
      code: 'x',
      quantity: '3',
      castings: ['c2'],
    });

    const input = quoteInput(typed, settings, 0);

    expect(pricingContract['pricing/get-quote'].input.safeParse(input).error).toBeUndefined();
    expect(
      input?.castings.map((casting) => casting.operations?.map((one) => [one.operationKindId, one.quantity])),
    ).toEqual([
      [[4, null]],
      [
        [4, null],
        [5, 3],
      ],
    ]);
  });
});

describe('suggestionInput', () => {
  it('reckons with operations and packages by code, and asks nothing for words alone', () => {
    const typed = addWish(addWish(heads, { ...wish, castings: [] }), {
      ...wish,
      kind: 'package',
      code: 'valve-job',
      castings: ['c1'],
    });

    const input = suggestionInput(typed);

    expect(promisesContract['promises/get-suggestion'].input.safeParse(input).error).toBeUndefined();
    expect(input).toMatchObject({
      castings: [
        { operations: [{ operation: 'pressure-test' }], packages: ['valve-job'] },
        { operations: [{ operation: 'pressure-test' }], packages: [] },
      ],
    });
    expect(suggestionInput(addWish(heads, { ...wish, kind: 'said', code: null, castings: [] }))).toBeNull();
  });
});
