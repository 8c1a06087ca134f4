import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day, moment } from '#core/kernel/days.ts';
import {
  type FormatSettings,
  formatAge,
  formatCount,
  formatDay,
  formatDayTime,
  formatDayYear,
  formatFactor,
  formatMoney,
  formatMoneySign,
  formatNumber,
  formatPercent,
  formatPrice,
  formatSeconds,
  formatTime,
  formatWeight,
  minutesBetween,
  readMoney,
} from '#core/kernel/format.ts';
import { basisPoints, cents, factor, grams, priceE4, seconds } from '#core/kernel/units.ts';
import reference from '#tests/reference/dates.json' with { type: 'json' };

const english: FormatSettings = { language: 'en', currencySign: '$', hourClock: '24' };
const german: FormatSettings = { language: 'de', currencySign: '€', hourClock: '24' };
const polish: FormatSettings = { language: 'pl', currencySign: 'zł', hourClock: '24' };

describe('formatMoney', () => {
  it.each([
    ['en', 114_868, '1,148.68'],
    ['en', 5, '0.05'],
    ['en', -6634, '\u221266.34'],
    ['en', 1_416_864, '14,168.64'],
    ['de', 114_868, '1.148,68'],
    ['de-CH', 114_868, '1\u2019148.68'],
    ['pl', 114_868, '1148,68'],
    ['pl', 1_148_680, '11\u00a0486,80'],
    ['zz', 114_868, '1,148.68'],
  ])('%s: %d cents', (language, amount, expected) => {
    expect(formatMoney(cents(amount), { language })).toBe(expected);
  });

  it('puts the sign where the language does', () => {
    expect(formatMoneySign(cents(114_868), english)).toBe('$1,148.68');
    expect(formatMoneySign(cents(-114_868), english)).toBe('\u2212$1,148.68');
    expect(formatMoneySign(cents(114_868), german)).toBe('1.148,68\u00a0€');
  });

  it('agrees with the runtime’s own formatter where that is to be trusted (cross-check, general-purpose library)', () => {
    const runtime = new Intl.NumberFormat('en-US', { minimumFractionDigits: 2 });

    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999_999 }), (amount) => {
        expect(formatMoney(cents(amount), english)).toBe(runtime.format(amount / 100));
      }),
    );
  });
});

describe('formatPrice, formatPercent, formatFactor, formatNumber', () => {
  it('keeps two decimals of a price and shows more only where they say something', () => {
    expect(formatPrice(priceE4(18_500), english)).toBe('1.85');
    expect(formatPrice(priceE4(375), english)).toBe('0.0375');
    expect(formatPrice(priceE4(100_000), english)).toBe('10.00');
  });

  it('writes percent, factor and counts', () => {
    expect(formatPercent(basisPoints(825), english)).toBe('8.25\u00a0%');
    expect(formatPercent(basisPoints(700), english)).toBe('7\u00a0%');
    expect(formatPercent(basisPoints(1250), german)).toBe('12,5\u00a0%');
    expect(formatFactor(factor(11_500), english)).toBe('×\u00a01.15');
    expect(formatNumber(120_000, english)).toBe('120,000');
    expect(formatNumber(-1500, polish)).toBe('\u22121500');
    expect(formatCount(1, 'day')).toBe('1 day');
    expect(formatCount(2, 'box', 'boxes')).toBe('2 boxes');
    expect(formatSeconds(seconds(5400))).toBe('1 h 30 min');
    expect(formatSeconds(seconds(20))).toBe('20 s');
    expect(formatWeight(grams(24_000), english)).toBe('24 kg');
    expect(formatWeight(grams(1_460), english)).toBe('1.5 kg');
  });
});

describe('readMoney', () => {
  it.each([
    ['1,148.68', 114_868],
    ['$1148.68', 114_868],
    ['1148,68', 114_868],
    ['1.148,68', 114_868],
    ['12', 1200],
    ['12.5', 1250],
    ['\u221266.34', -6634],
    ['1,148', 114_800],
  ])('reads %s', (text, expected) => {
    expect(readMoney(text, english)).toBe(expected);
  });

  it.each(['', 'twelve', '1.148', '1.2345', '1,14,8.00', '--5', '99999999999999999999'])(
    'does not guess %s',
    (text) => {
      expect(readMoney(text, english)).toBeNull();
    },
  );

  it('reads back whatever it wrote, in every language', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999, max: 99_999_999 }),
        fc.constantFrom(english, german, polish, { ...english, language: 'fr' }, { ...english, language: 'de-CH' }),
        (amount, settings) => {
          expect(readMoney(formatMoneySign(cents(amount), settings), settings)).toBe(amount === 0 ? 0 : amount);
        },
      ),
    );
  });
});

describe('formatDay', () => {
  it('names weekday, day and month; the year on paper only', () => {
    expect(formatDay(day('2026-03-12'))).toBe('Thu 12 Mar');
    expect(formatDayYear(day('2026-03-12'))).toBe('Thu 12 Mar 2026');
    expect(formatDayTime({ day: day('2026-03-12'), minute: 1020 }, english)).toBe('Thu 12 Mar 17:00');
  });

  it.each(reference.iso_week_cases)(
    'Python isocalendar: $date falls on ISO weekday of $iso_week',
    ({ date, iso_week }) => {
      const names = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

      expect(formatDay(day(date)).slice(0, 3)).toBe(names[Number(iso_week.at(-1)) - 1]);
    },
  );

  it.each([
    [0, '00:00', '12:00 am'],
    [720, '12:00', '12:00 pm'],
    [1020, '17:00', '5:00 pm'],
    [1439, '23:59', '11:59 pm'],
  ])('minute %d is %s or %s', (minute, wide, narrow) => {
    expect(formatTime(minute, english)).toBe(wide);
    expect(formatTime(minute, { hourClock: '12' })).toBe(narrow);
  });
});

describe('formatAge', () => {
  it.each([
    [-3, '0 min'],
    [12, '12 min'],
    [59, '59 min'],
    [60, '1 h'],
    [1439, '23 h'],
    [1440, '1 day'],
    [7200, '5 days'],
  ])('%d minutes is %s', (minutes, expected) => {
    expect(formatAge(minutes)).toBe(expected);
  });

  it('counts minutes between moments across days and months', () => {
    expect(minutesBetween(moment('2026-02-28T23:30:00.000Z'), moment('2026-03-01T00:10:00.000Z'))).toBe(40);
    expect(minutesBetween(moment('2026-03-01T00:10:00.000Z'), moment('2026-02-28T23:30:00.000Z'))).toBe(-40);
  });
});
