import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { changesBetween, joinAlike, list, longDayTime, sentence, tagDay } from '#core/sheets/compute/words.ts';

describe('longDayTime', () => {
  // 12 March 2026 is a Thursday: ISO 8601 calendar, from memory.
  it('writes a promise as the customer reads it, on the shop clock', () => {
    expect(longDayTime(day('2026-03-12'), 1020, { hourClock: '24' })).toBe('Thursday 12 March, 17:00');
    expect(longDayTime(day('2026-03-12'), 1020, { hourClock: '12' })).toBe('Thursday 12 March, 5:00 pm');
  });
});

describe('tagDay', () => {
  it('writes a day in capitals', () => {
    expect(tagDay(day('2026-03-12'))).toBe('THU 12 MAR');
    expect(tagDay(day('2026-12-06'))).toBe('SUN 6 DEC');
  });
});

describe('list', () => {
  it('leaves out what is empty', () => {
    expect(list(['a', '', null, undefined, 'b'])).toBe('a, b');
    expect(list([])).toBe('');
  });
});

describe('sentence', () => {
  it('begins large and leaves the rest', () => {
    expect(sentence('aluminium-safe wash')).toBe('Aluminium-safe wash');
    expect(sentence('')).toBe('');
  });
});

describe('joinAlike', () => {
  const line = (words: string, tag: number, amount: number) => ({ words, tags: [tag], units: '', price: '', amount });

  it('writes what is alike for several castings once, with how many', () => {
    const joined = joinAlike([
      line('Pressure test', 1, 8625),
      line('Valve job', 1, 41500),
      line('Pressure test', 2, 8625),
    ]);

    expect(joined.map(({ words, count, amount, tags }) => ({ words, count, amount, tags }))).toEqual([
      { words: 'Pressure test', count: 2, amount: 17250, tags: [1, 2] },
      { words: 'Valve job', count: 1, amount: 41500, tags: [1] },
    ]);
  });

  it('keeps two alike lines of one casting apart', () => {
    expect(joinAlike([line('Weld', 1, 100), line('Weld', 1, 100)])).toHaveLength(2);
  });

  it('never changes the sum', () => {
    const lines = fc.array(
      fc.record({
        words: fc.constantFrom('a', 'b'),
        tags: fc.constantFrom([1], [2], [], [1, 2]),
        units: fc.constantFrom('', '2'),
        price: fc.constant(''),
        amount: fc.integer({ min: -1000, max: 1000 }),
      }),
    );
    fc.assert(
      fc.property(lines, (given) => {
        const sum = (some: readonly { amount: number }[]) => some.reduce((total, { amount }) => total + amount, 0);

        expect(sum(joinAlike(given))).toBe(sum(given));
      }),
    );
  });
});

describe('changesBetween', () => {
  it('names what is new, changed and gone', () => {
    const before = { 'Seat cut': '12', Vacuum: '6', Stem: '6.0 mm' };
    const now = { 'Seat cut': '12, ONLY IF APPROVED', Vacuum: '6', Weld: '1' };

    expect(changesBetween(before, now)).toEqual([
      'changed: Seat cut, 12, ONLY IF APPROVED (was 12)',
      'new: Weld, 1',
      'gone: Stem',
    ]);
  });

  it('says nothing when nothing changed', () => {
    expect(changesBetween({ a: '1' }, { a: '1' })).toEqual([]);
  });
});
