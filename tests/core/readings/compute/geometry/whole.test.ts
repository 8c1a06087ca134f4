import { describe, expect, it } from 'vitest';
import { radiansOf, wholeOf } from '#core/readings/compute/geometry/whole.ts';

describe('wholeOf', () => {
  it.each([
    [0.5, 1],
    [-0.5, -1],
    [2.4, 2],
    [-0.2, 0],
  ])('%d becomes %d: half away from zero, never minus zero', (figure, whole) => {
    expect(Object.is(wholeOf(figure), whole)).toBe(true);
  });

  it('refuses what is no figure', () => {
    expect(() => wholeOf(Number.NaN)).toThrow(RangeError);
    expect(() => wholeOf(1 / 0)).toThrow(RangeError);
  });
});

describe('radiansOf', () => {
  it('makes 180 degrees pi (exact mathematics)', () => {
    expect(radiansOf(180_000_000)).toBe(Math.PI);
  });
});
