import { describe, expect, it } from 'vitest';
import {
  capital,
  piecesWords,
  placeWords,
  promiseView,
  unitWords,
  warningsOf,
} from '#core/floor/compute/bench-words.ts';
import type { Day } from '#core/kernel/days.ts';

describe('placeWords', () => {
  it('puts the side first in capitals, and counts where there are more', () => {
    expect(placeWords('head', 'right', 2, 2)).toBe('RIGHT, head 2 of 2');
    expect(placeWords('block', 'single', 1, 1)).toBe('block');
    expect(placeWords('head', 'not_known', 1, 2)).toBe('head 1 of 2, side not known');
    expect(placeWords('exhaust_manifold', 'front_bank', 1, 1)).toBe('FRONT BANK, exhaust manifold');
  });
});

describe('piecesWords', () => {
  it('counts in the unit it is sold by', () => {
    expect(piecesWords(12, 'seat')).toBe('12 seats');
    expect(piecesWords(1, 'surface')).toBe('1 surface');
    expect(piecesWords(1, 'each')).toBe('');
    expect(piecesWords(3, 'each')).toBe('3 pieces');
    expect(unitWords(2, null)).toBe('pieces');
  });
});

describe('promiseView', () => {
  const promise = { day: '2026-03-12' as Day, minute: 1020, ownTime: true };
  const view = (day: string, minute: number) =>
    promiseView(promise, true, { day: day as Day, minute }, { hourClock: '24' });

  it('is late from its minute on', () => {
    expect(view('2026-03-12', 1019)).toEqual({ ...promise, words: 'Thu 12 Mar 17:00', late: false, rush: true });
    expect(view('2026-03-12', 1020)?.late).toBe(true);
    expect(view('2026-03-13', 0)?.late).toBe(true);
    expect(promiseView(null, true, { day: '2026-03-12' as Day, minute: 0 }, { hourClock: '24' })).toBeNull();
  });
});

describe('warningsOf', () => {
  const plain = {
    material: 'iron_grey',
    stampAllowed: 'yes',
    gasket: 'composition',
    crackCheckDeclined: false,
    weightClass: 'one',
    heldParts: [],
    removeFirst: [],
    valveLift: null,
    certified: false,
  } as const;

  it('says nothing of a plain iron head', () => {
    expect(warningsOf(plain)).toEqual([]);
  });

  it('puts what can hurt first', () => {
    expect(
      warningsOf({
        ...plain,
        material: 'not_known',
        weightClass: 'hoist',
        valveLift: '0.520',
        heldParts: ['gasket set'],
        removeFirst: ['knock sensor'],
        certified: true,
      }),
    ).toEqual([
      'METAL NOT KNOWN - NO WASH BEFORE IT IS CONFIRMED',
      'TAKE OFF BEFORE WASH - KNOCK SENSOR',
      'USE A HOIST',
      'VALVE LIFT 0.520',
      'CERTIFIED - GUARD BAND ON',
      "CUSTOMER'S OWN - GASKET SET",
    ]);
  });
});

describe('capital', () => {
  it('lifts the first letter', () => {
    expect(capital('seat cut')).toBe('Seat cut');
  });
});
