import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day, dayOfNumber } from '#core/kernel/days.ts';
import {
  type Calendar,
  hoursOf,
  isOpenDay,
  nextOpenDay,
  openDayAfter,
  openDayIndex,
  promiseMinute,
  workedShare,
} from '#core/tickets/compute/open-days.ts';
import reference from '#tests/reference/dates.json' with { type: 'json' };

const WEEK = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, from: 480, until: 1020 }));
const FREE: Calendar = { hours: WEEK, holidays: reference.free_days.map(day) };
const PLAIN: Calendar = { hours: WEEK, holidays: [] };

describe('openDayAfter', () => {
  // Source: US federal holidays (5 U.S.C. 6103) by two holiday libraries; working days by numpy busday_offset (dates.json).
  it.each(reference.cases)(
    '$start and $working_days working days is $expected',
    ({ start, working_days, expected }) => {
      expect(openDayAfter(FREE, day(start), working_days)).toBe(expected);
    },
  );
});

describe('openDayIndex', () => {
  it.each(reference.cases)(
    'counts back $working_days from $start to $expected',
    ({ start, working_days, expected }) => {
      expect(openDayIndex(FREE, day(start), day(expected))).toBe(working_days);
    },
  );
  it('undoes openDayAfter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20_000, max: 21_000 }), fc.integer({ min: 0, max: 60 }), (n, steps) => {
        const start = dayOfNumber(n);
        return openDayIndex(FREE, start, openDayAfter(FREE, start, steps)) === steps;
      }),
    );
  });
});

describe('isOpenDay', () => {
  it('takes every day but holidays as open while the shop has not said its hours', () => {
    expect(isOpenDay({ hours: [], holidays: [day('2026-03-10')] }, day('2026-03-08'))).toBe(true);
    expect(isOpenDay({ hours: [], holidays: [day('2026-03-10')] }, day('2026-03-10'))).toBe(false);
  });
  it('gives up on a calendar that is never open', () => {
    const never: Calendar = { hours: [{ weekday: 9, from: 0, until: 1 }], holidays: [] };
    expect(nextOpenDay(never, day('2026-03-09'))).toBe('2026-03-09');
  });
});

describe('promiseMinute', () => {
  it('is the usual hour, or closing time on a day that closes earlier', () => {
    const calendar = { hours: [...WEEK, { weekday: 6, from: 480, until: 720 }], holidays: [] };
    expect(promiseMinute(calendar, day('2026-03-13'), 1020)).toBe(1020);
    expect(promiseMinute(calendar, day('2026-03-14'), 1020)).toBe(720);
    expect(hoursOf(calendar, day('2026-03-15'))).toBeNull();
  });
});

describe('workedShare', () => {
  it.each([
    [588, '2026-03-09', 2000],
    [480, '2026-03-09', 0],
    [300, '2026-03-09', 0],
    [1020, '2026-03-10', 0],
  ])('at minute %i counts from %s with %i worked', (minute, start, now) => {
    expect(workedShare(PLAIN, day('2026-03-09'), minute)).toEqual({ start, now });
  });
  it('counts from the next open day when today is closed', () => {
    expect(workedShare(PLAIN, day('2026-03-07'), 600)).toEqual({ start: '2026-03-09', now: 0 });
  });
});
