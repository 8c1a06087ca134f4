import { describe, expect, it } from 'vitest';
import { hoursInput, hoursKey, hoursText, readSpans } from '#renderer/screens/shop/pages/hours-typed.ts';

describe('readSpans', () => {
  it('reads one span or several, with points, colons or full hours', () => {
    expect(readSpans('7:30 - 12:00, 13 - 17.15')).toEqual([
      { from: 450, until: 720 },
      { from: 780, until: 1035 },
    ]);
    expect(readSpans('0:00 \u2013 24:00')).toEqual([{ from: 0, until: 1440 }]);
    expect(readSpans(' ')).toEqual([]);
  });

  it('refuses what ends before it begins, after midnight, or is no time', () => {
    expect(['17:00 - 7:30', '8:00 - 25:00', 'nine to five', '7:30'].map(readSpans)).toEqual([null, null, null, null]);
  });
});

describe('hoursInput', () => {
  it('gives back the hours whose text it was', () => {
    const kept = [
      { weekday: 1, part: 'counter' as const, from: 450, until: 1020 },
      { weekday: 1, part: 'bench' as const, from: 450, until: 720 },
      { weekday: 1, part: 'bench' as const, from: 750, until: 990 },
    ];

    expect(hoursInput(hoursText(kept))).toEqual({ hours: kept });
  });

  it('names the first line that cannot be read', () => {
    expect(hoursInput({ [hoursKey('bench', 3)]: 'late' })).toEqual({ wrong: 'bench-3' });
  });
});
