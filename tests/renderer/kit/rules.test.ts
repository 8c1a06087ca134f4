import { describe, expect, it } from 'vitest';
import { placeOnDay, spread } from '#renderer/kit/rules.tsx';

describe('placeOnDay', () => {
  it('puts noon in the middle of eight to four, and keeps what is outside at the ends', () => {
    const noon = placeOnDay(720, 480, 960);

    expect(noon).toBeCloseTo((placeOnDay(480, 480, 960) + placeOnDay(960, 480, 960)) / 2, 10);
    expect(placeOnDay(60, 480, 960)).toBe(placeOnDay(480, 480, 960));
    expect(placeOnDay(1439, 480, 960)).toBe(placeOnDay(960, 480, 960));
  });
});

describe('spread', () => {
  it('hangs two at the same hour below each other, and the next that has room on the first line', () => {
    expect(spread([10, 10, 15, 22], 11)).toEqual([0, 1, 2, 0]);
  });

  it('keeps one line while nothing covers another', () => {
    expect(spread([0, 12, 24], 11)).toEqual([0, 0, 0]);
  });
});
