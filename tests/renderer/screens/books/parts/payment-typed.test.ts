import { describe, expect, it } from 'vitest';
import { EMPTY_PAYMENT, readPayment } from '#renderer/screens/books/parts/payment-typed.ts';

const settings = { language: 'en', currencySign: '$' };
const read = (amount: string, open = 54_447) => readPayment({ ...EMPTY_PAYMENT, kind: 'card', amount }, open, settings);

describe('readPayment', () => {
  it('takes what is open while nothing is typed', () => {
    expect(read('')).toEqual({ amount: 54_447, wrong: undefined, missing: undefined });
  });

  it('reads a part payment as typed', () => {
    expect(read('100').amount).toBe(10_000);
    expect(read('1,148.68').amount).toBe(114_868);
  });

  it('refuses what is no amount, and none at all', () => {
    expect(read('abc').missing).toContain('Write an amount');
    expect(read('0').missing).toBe('Write an amount above 0.');
    expect(read('', 0).missing).toBe('Write the amount.');
  });

  it('asks how they pay', () => {
    expect(readPayment(EMPTY_PAYMENT, 100, settings).missing).toBe('Choose how they pay.');
  });
});
