import { describe, expect, it } from 'vitest';
import { formatOf, localTime, momentAt } from '#renderer/client/use-shop.ts';

// New York changes its clocks on the second Sunday of March and the first of November, at two in the morning (from memory:
// US Energy Policy Act of 2005): in 2027 on 14 March at 07:00 UTC.
const ZONE = 'America/New_York';

describe('localTime', () => {
  it.each([
    ['2027-01-01T04:59:59.000Z', '2026-12-31', 23 * 60 + 59],
    ['2027-03-14T06:59:00.000Z', '2027-03-14', 119],
    ['2027-03-14T07:00:00.000Z', '2027-03-14', 180],
  ])('%s', (at, day, minute) => {
    expect(localTime(at, ZONE)).toMatchObject({ day, minute });
  });
});

describe('momentAt', () => {
  it.each([
    ['2027-03-14', 180, '2027-03-14T07:00:00.000Z'],
    ['2027-07-01', 1020, '2027-07-01T21:00:00.000Z'],
    ['2027-12-31', 1439, '2028-01-01T04:59:00.000Z'],
  ])('%s at %i', (day, minute, at) => {
    expect(momentAt(day, minute, ZONE)).toBe(at);
  });

  it('is the way back of localTime at any minute of a day when the clocks change', () => {
    for (const minute of [0, 119, 180, 600, 1439]) {
      expect(localTime(momentAt('2027-03-14', minute, ZONE), ZONE)).toMatchObject({ day: '2027-03-14', minute });
    }
  });
});

describe('formatOf', () => {
  it('leaves the day away for a moment of today', () => {
    const format = formatOf({ language: 'en', currencySign: '$', hourClock: '24' }, ZONE);

    expect(format.at('2027-05-14T15:00:00.000Z', '2027-05-14')).toBe('11:00');
    expect(format.at('2027-05-14T15:00:00.000Z')).toBe('Fri 14 May 11:00');
    expect(format.clock('2027-05-14T15:00:09.000Z')).toBe('11:00:09');
  });
});
