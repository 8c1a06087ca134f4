import { describe, expect, it } from 'vitest';
import { checkInContract } from '#core/check-in/contract.ts';
import { cents } from '#core/kernel/units.ts';
import { emptyCasting } from '#renderer/screens/counter/check-in/typed.ts';
import { EMPTY_QUICK, quickInput, quickMissing } from '#renderer/screens/counter/quick/quick-typed.ts';

const typed = { ...EMPTY_QUICK, name: '555-0138', words: 'one stud', price: '35.00' };
const nothing = emptyCasting('c1');

describe('quickInput', () => {
  it('takes digits alone for a telephone, and a price of 35.00 as 350 000 ten-thousandths', () => {
    const parsed = checkInContract['tickets/quick-ticket'].input.safeParse(quickInput(typed, cents(3500), nothing));

    expect(parsed.error).toBeUndefined();
    expect(parsed.data).toMatchObject({
      price: 350_000,
      quantity: 1,
      casting: null,
      customer: { add: { persons: [{ contacts: [{ value: '555-0138' }] }] } },
    });
  });

  it('tags what stays', () => {
    const casting = { ...nothing, type: 'FW-1', material: 'iron_grey' as const };
    const parsed = checkInContract['tickets/quick-ticket'].input.safeParse(
      quickInput({ ...typed, stays: true }, cents(3500), casting),
    );

    expect(parsed.error).toBeUndefined();
    expect(parsed.data?.casting).toMatchObject({ type: 'FW-1', material: 'iron_grey' });
  });
});

describe('quickMissing', () => {
  it('asks for metal only of what stays', () => {
    expect(quickMissing(typed, cents(3500), nothing)).toBeUndefined();
    expect(quickMissing({ ...typed, stays: true }, cents(3500), { ...nothing, type: 'FW-1' })).toContain(
      'Metal is not chosen',
    );
    expect(quickMissing(typed, null, nothing)).toBe('Write the price, for example 35.00.');
  });
});
