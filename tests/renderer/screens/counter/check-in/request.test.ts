import { describe, expect, it } from 'vitest';
import { checkInContract } from '#core/check-in/contract.ts';
import { addCasting, addPairOf, addWish, changeCasting } from '#renderer/screens/counter/check-in/changes.ts';
import {
  checkInInput,
  partsAsked,
  placesOf,
  readMinute,
  troublesOf,
} from '#renderer/screens/counter/check-in/request.ts';
import { type CheckInTyped, EMPTY_CHECK_IN } from '#renderer/screens/counter/check-in/typed.ts';

const settings = { language: 'en', currencySign: '$', hourClock: '24' } as const;
const complete: CheckInTyped = {
  ...addPairOf(
    changeCasting(addCasting(EMPTY_CHECK_IN), 'c1', {
      type: 'BV-6',
      kind: 'head',
      material: 'aluminium',
      position: 'left',
    }),
    'c1',
  ),
  customer: { ...EMPTY_CHECK_IN.customer, name: 'Łukasz 😀', phone: '555-0142' },
  ceiling: '1,500.00',
  signed: 'left_unsigned',
};
const parse = (typed: CheckInTyped) =>
  checkInContract['tickets/check-in-ticket'].input.safeParse(checkInInput(typed, settings, 2500));

describe('checkInInput', () => {
  it('makes a request the host takes, with a customer from what was typed', () => {
    const parsed = parse(complete);

    expect(parsed.error).toBeUndefined();
    expect(parsed.data?.customer).toMatchObject({
      add: {
        name: 'Łukasz 😀',
        persons: [{ name: 'Łukasz 😀', mayApprove: true, contacts: [{ kind: 'phone', value: '555-0142' }] }],
      },
    });
    expect(parsed.data?.castings.map((casting) => [casting.position, casting.pair])).toEqual([
      ['left', 1],
      ['right', 1],
    ]);
    expect(parsed.data?.ceiling).toMatchObject({ amount: 150_000, taxIn: false, means: 'counter' });
  });

  it('takes a telephone alone for a customer', () => {
    const parsed = parse({ ...complete, customer: { ...complete.customer, name: '' } });

    expect(parsed.data?.customer).toMatchObject({ add: { name: '555-0142' } });
  });

  it('sends work for all without places, and work for one by its place in the list', () => {
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
    const typed = addWish(addWish(complete, { ...wish, castings: [] }), {
      ...wish,
      code: 'hot-tank',
      said: 'boil it',
      castings: ['c2'],
    });

    expect(checkInInput(typed, settings, 0).wishes).toEqual([
      { castings: [], operation: 'pressure-test', said: null, note: null },
      { castings: [1], operation: 'hot-tank', said: 'boil it', note: null },
    ]);
  });

  it('keeps words that are in no catalogue as their words only', () => {
    const typed = addWish(complete, {
      kind: 'said',
      id: null,
      code: null,
      words: 'make it whistle',
      customerWords: 'make it whistle',
      said: 'make it whistle',
      quantity: '',
      note: '',
      castings: [],
    });

    expect(checkInInput(typed, settings, 0).wishes).toEqual([{ castings: [], said: 'make it whistle', note: null }]);
    expect(parse(typed).error).toBeUndefined();
  });

  it('asks the rush share only when it is wanted', () => {
    expect(checkInInput({ ...complete, rush: true }, settings, 2500).rush).toBe(2500);
    expect(checkInInput(complete, settings, 2500).rush).toBeNull();
  });
});

describe('troublesOf', () => {
  it('names what is missing in reading order, each at its own place', () => {
    const typed = { ...addCasting(EMPTY_CHECK_IN), ceiling: 'nine hundred' };

    expect(troublesOf(typed, settings)).toEqual({
      customer: 'Write a name or a telephone.',
      ceiling: 'Write an amount, for example 900.00.',
      'c1.type': 'Choose the casting type, or describe it.',
      'c1.material': 'Metal is not chosen. Magnet sticks: iron.',
    });
    expect(troublesOf(complete, settings)).toEqual({});
  });

  it('takes "metal not known" for an answer', () => {
    expect(troublesOf(changeCasting(complete, 'c1', { material: 'not_known' }), settings)).toEqual({});
  });

  it('refuses a day that is none and a time that is none', () => {
    const promise = { ...EMPTY_CHECK_IN.promise, day: '2027-02-30', time: '' };

    expect(troublesOf({ ...complete, promise }, settings)).toHaveProperty('promise');
    expect(
      troublesOf({ ...complete, promise: { ...promise, day: '2027-02-26', time: '25:00' } }, settings),
    ).toHaveProperty('promise');
  });
});

describe('readMinute', () => {
  it.each([
    ['17:00', 1020],
    ['7:30', 450],
    ['0730', 450],
    ['24:00', null],
    ['noon', null],
    ['', null],
  ])('%s', (text, minute) => {
    expect(readMinute(text)).toBe(minute);
  });
});

describe('placesOf', () => {
  it('leads a refused wish back to its row, whatever parts stand between', () => {
    const wish = { id: 4, words: 'x', customerWords: 'x', said: '', quantity: '', note: '', castings: [] };
    const typed = addWish(addWish(complete, { ...wish, kind: 'part', code: 'seal-in' }), {
      ...wish,
      kind: 'operation',
      code: 'hot-tank',
    });

    expect(placesOf({ 'wishes.0.operation': 'No caustic.' }, typed)).toEqual({ w2: 'No caustic.' });
  });

  it('leads a refusal back to the casting and field it is about', () => {
    const fields = {
      'castings.1.tagNo': 'Tag 41170 is already used.',
      'ticket.valveLift': 'Write its unit.',
      'customer.add.name': 'Keep it short.',
    };

    expect(placesOf(fields, complete)).toEqual({
      'c2.tagNo': 'Tag 41170 is already used.',
      valveLift: 'Write its unit.',
      customer: 'Keep it short.',
    });
  });
});

describe('partsAsked', () => {
  it('gives each casting its own parts, after the check-in, with the pieces typed for one', () => {
    const seals = {
      kind: 'part',
      id: 11,
      code: 'seal-in',
      words: 'stem seal',
      customerWords: 'stem seal',
      said: '',
      quantity: '8',
      note: '',
    } as const;
    const typed = addWish(addWish(complete, { ...seals, castings: [] }), {
      ...seals,
      id: 12,
      code: 'x',
      quantity: '',
      castings: ['c2'],
    });

    expect(partsAsked(typed)).toEqual([
      { at: 0, part: { stockItemId: 11, quantity: 8 } },
      { at: 1, part: { stockItemId: 11, quantity: 8 } },
      { at: 1, part: { stockItemId: 12, quantity: 1 } },
    ]);
    expect(checkInInput(typed, settings, 0).wishes).toEqual([]);
  });
});
