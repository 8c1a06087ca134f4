import { describe, expect, it } from 'vitest';
import { billingContract } from '#core/billing/contract.ts';
import { amountWrong, creditInput, creditMissing, EMPTY_CREDIT } from '#renderer/screens/books/parts/credit-typed.ts';

const settings = { language: 'en', currencySign: '$' };
const typed = { lines: { 4: '', 9: '12.50' }, reason: 'goodwill' as const, words: 'the delay' };

describe('creditInput', () => {
  it('sends a whole line without an amount, and a part with one, in the order of the invoice', () => {
    const parsed = billingContract['invoices/credit-invoice'].input.safeParse(
      creditInput(2, [9, 4, 5], typed, settings),
    );

    expect(parsed.error).toBeUndefined();
    expect(parsed.data?.lines).toEqual([
      { invoiceLineId: 9, amount: 1250, pieces: null },
      { invoiceLineId: 4, amount: null, pieces: null },
    ]);
  });
});

describe('creditMissing', () => {
  it('asks for lines, readable amounts, a reason and words', () => {
    expect(creditMissing(EMPTY_CREDIT, settings)).toBe('Choose what is credited.');
    expect(creditMissing({ ...typed, lines: { 4: 'x' } }, settings)).toBe('An amount cannot be read.');
    expect(creditMissing({ ...typed, reason: null }, settings)).toBe('Choose the reason.');
    expect(creditMissing({ ...typed, words: ' ' }, settings)).toBe('Write why.');
    expect(creditMissing(typed, settings)).toBeUndefined();
  });
});

describe('amountWrong', () => {
  it('says nothing about a line that is not credited or credited whole', () => {
    expect([undefined, '', '3.50'].map((text) => amountWrong(text, settings))).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(amountWrong('3.5.0', settings)).toContain('Write an amount');
  });
});
