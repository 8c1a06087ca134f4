import { describe, expect, it } from 'vitest';
import { askingContract } from '#core/asking/contract.ts';
import { type AskTyped, askInput, askMissing, emptyWay } from '#renderer/screens/counter/asked/ask-typed.ts';

const settings = { language: 'en', currencySign: '$', hourClock: '24' } as const;
const typed: AskTyped = {
  castingId: 3,
  findings: [8],
  words: 'Crack from exhaust seat 6 into water.',
  ways: [
    {
      ...emptyWay('y1'),
      words: 'Weld and re-seat',
      operations: [{ key: 'o1', id: 21, words: 'Weld', quantity: '', hourly: false }],
      charges: [{ key: 'h1', words: 'Seat ring', price: '12.50' }],
      daysMore: '2',
    },
  ],
  day: '2026-03-13',
  time: '17:00',
  ifNoAnswer: '',
};

describe('askInput', () => {
  it('makes a request the host takes, a price of 12.50 as 125 000 ten-thousandths', () => {
    const input = askInput(10, typed, settings);

    expect(askingContract['approvals/get-added-work-price'].input.safeParse(input).error).toBeUndefined();
    expect(input.options[0]).toMatchObject({
      daysMore: 2,
      operations: [{ operationKindId: 21, quantity: null }],
      charges: [{ words: 'Seat ring', price: 125_000 }],
    });
  });
});

describe('askMissing', () => {
  it('wants the words, each way in plain words, a price that can be read, and a day', () => {
    const way = typed.ways[0] ?? emptyWay('y1');

    expect(askMissing(typed, settings)).toBeUndefined();
    expect(askMissing({ ...typed, words: ' ' }, settings)).toBe('Write what was found, in words for the customer.');
    expect(askMissing({ ...typed, ways: [{ ...way, words: '' }] }, settings)).toBe('Write each way in plain words.');
    const dear = { ...way, charges: [{ key: 'h1', words: 'Seat ring', price: 'dear' }] };
    expect(askMissing({ ...typed, ways: [dear] }, settings)).toBe('Write a price for Seat ring, for example 120.00.');
    expect(askMissing({ ...typed, day: '' }, settings)).toBe('Choose the day you need the answer by.');
  });
});
