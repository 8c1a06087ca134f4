import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  day,
  dayNumber,
  dayOfNumber,
  daysBetween,
  endOfMonth,
  isDay,
  isMoment,
  moment,
  weekday,
} from '#core/kernel/days.ts';
import reference from '#tests/reference/dates.json' with { type: 'json' };

/** `Date` is the general-purpose reference here; the code under test does without it. */
const utc = (text: string) => Date.parse(`${text}T00:00:00Z`) / 86_400_000;

describe('isDay', () => {
  it.each(reference.rfc3339_cases.filter(({ text }) => text.length === 10))('RFC 3339: $text is $valid', (it) => {
    expect(isDay(it.text)).toBe(it.valid);
  });

  it.each(['2026-2-1', '0000-01-01', '2026-00-10', '2026-01-32', '', '2026-01-01 '])('refuses %s', (text) => {
    expect(isDay(text)).toBe(false);
    expect(() => day(text)).toThrow(RangeError);
  });
});

describe('isMoment', () => {
  it.each(reference.rfc3339_cases.filter(({ utc: known }) => known !== undefined))(
    'RFC 3339 section 5.8: $text is $utc in our one spelling',
    ({ utc: known }) => {
      expect(isMoment(known ?? '')).toBe(true);
    },
  );

  it.each(['2026-02-29T00:00:00.000Z', '2026-01-01T24:00:00.000Z', '2026-01-01T00:00:00Z', '2026-01-01T00:00:60.000Z'])(
    'refuses %s',
    (text) => {
      expect(isMoment(text)).toBe(false);
      expect(() => moment(text)).toThrow(RangeError);
    },
  );
});

describe('weekday', () => {
  it.each(reference.iso_week_cases)('Python isocalendar: $date is day $iso_week', ({ date, iso_week }) => {
    expect(weekday(day(date))).toBe(Number(iso_week.at(-1)));
  });
});

describe('daysBetween', () => {
  it.each(reference.ageing_cases)('due $due as of $as_of: $days_late days (calendar arithmetic)', (it) => {
    expect(Math.max(daysBetween(day(it.due), day(it.as_of)), 0)).toBe(it.days_late);
  });
});

describe('endOfMonth', () => {
  it.each([
    ['2024-02-01', '2024-02-29'],
    ['2026-02-28', '2026-02-28'],
    ['1900-02-03', '1900-02-28'],
    ['2000-02-03', '2000-02-29'],
    ['2026-12-31', '2026-12-31'],
  ])('%s ends on %s', (from, to) => {
    expect(endOfMonth(day(from))).toBe(to);
  });
});

describe('for any day', () => {
  const numbers = fc.integer({ min: utc('0001-01-01'), max: utc('9999-12-31') });

  it('the day number is that of the runtime’s own calendar, there and back', () => {
    fc.assert(
      fc.property(numbers, (n) => {
        const text = dayOfNumber(n);

        expect(dayNumber(text)).toBe(n);
        expect(utc(text)).toBe(n);
      }),
    );
  });

  it('adding and counting days agree', () => {
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 100_000 }), fc.integer({ min: -20_000, max: 20_000 }), (n, more) => {
        expect(daysBetween(dayOfNumber(n), addDays(dayOfNumber(n), more))).toBe(more === 0 ? 0 : more);
      }),
    );
  });
});
