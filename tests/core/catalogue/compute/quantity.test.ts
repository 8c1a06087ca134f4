import { describe, expect, it } from 'vitest';
import { quantity } from '#core/catalogue/compute/quantity.ts';

describe('quantity', () => {
  it('is a plain length, read once, until it says otherwise', () => {
    expect(quantity('x', 'an x')).toMatchObject({ family: 'length', spotKind: null, derived: null, points: [] });
  });

  it('keeps its points in order, each with its words', () => {
    expect(
      quantity('x', 'an x', {
        points: [
          ['top', 'at the top'],
          ['bot', 'at the bottom'],
        ],
      }).points,
    ).toEqual([
      { code: 'top', words: 'at the top' },
      { code: 'bot', words: 'at the bottom' },
    ]);
  });
});
