import { describe, expect, it } from 'vitest';
import { cents } from '#core/kernel/units.ts';
import { moreWords, type Sayable, sayThis } from '#core/search/compute/say.ts';

const SETTINGS = { language: 'en', currencySign: '$' };
const TICKET: Sayable = {
  word: 'in work',
  whereWords: 'at Surfacer',
  promise: { words: 'Thu 12 Mar 16:30', late: false },
  asked: null,
  toPay: cents(38_171),
  onAccount: false,
  places: [],
  toldWords: null,
};
const say = (changes: Partial<Sayable>) => sayThis({ ...TICKET, ...changes }, SETTINGS);

describe('sayThis', () => {
  it.each([
    [{}, 'It is at Surfacer. Promised for Thu 12 Mar 16:30.'],
    [{ whereWords: 'seat cut now' }, 'Seat cut is being done now. Promised for Thu 12 Mar 16:30.'],
    [{ whereWords: 'waiting parts', promise: null }, 'It waits: waiting parts. No day is promised yet.'],
    [
      { promise: { words: 'Mon 9 Mar 16:30', late: true } },
      'It is at Surfacer. It was promised for Mon 9 Mar 16:30 and is late.',
    ],
    [
      { asked: { kind: 'added work', words: 'weld, 265.00 more.' } },
      'It waits for your answer: weld, 265.00 more. Promised for Thu 12 Mar 16:30.',
    ],
    [{ word: 'approved' }, 'It goes to Surfacer next. Promised for Thu 12 Mar 16:30.'],
    [{ whereWords: 'to be signed off' }, 'The work is done; it is being checked. Promised for Thu 12 Mar 16:30.'],
    [
      { word: 'checked in', whereWords: 'to be signed off' },
      'It is here; no work is agreed yet. Promised for Thu 12 Mar 16:30.',
    ],
    [{ word: 'ready', places: ['D-2-1'] }, 'It is ready, rack D-2-1. $381.71 to pay.'],
    [{ word: 'ready', onAccount: true }, 'It is ready. On account, nothing to pay at the door.'],
    [{ word: 'paid', toPay: cents(0) }, 'It is ready. Nothing to pay.'],
    [
      { asked: { kind: 'estimate', words: 'Estimate 1' } },
      'We sent you estimate 1 and wait for your answer. Promised for Thu 12 Mar 16:30.',
    ],
    [{ word: 'collected', toPay: cents(0) }, 'It was fetched.'],
    [{ word: 'collected' }, 'It was fetched. $381.71 is open.'],
    [{ word: 'enquiry' }, 'You asked us for a price. Nothing is here yet.'],
  ] as const)('%j', (changes, words) => {
    expect(say(changes)).toBe(words);
  });
});

describe('moreWords', () => {
  it('says who is waited for, or when they were told', () => {
    expect(moreWords({ ...TICKET, asked: { kind: 'estimate', words: 'x' } })).toBe('waiting your answer');
    expect(moreWords({ ...TICKET, word: 'ready', toldWords: 'Fri 13 Mar 15:10' })).toBe('told Fri 13 Mar 15:10');
    expect(moreWords(TICKET)).toBeNull();
    expect(moreWords({ ...TICKET, word: 'collected', asked: { kind: 'estimate', words: 'x' } })).toBeNull();
  });
});
