import { describe, expect, it } from 'vitest';
import { cutAtHits } from '#renderer/screens/find/parts/hits.tsx';

const words = (text: string, hits: { from: number; until: number }[]) =>
  cutAtHits(text, hits)
    .map((part) => (part.hit ? `[${part.words}]` : part.words))
    .join('');

describe('cutAtHits', () => {
  it('underlines what was looked for and loses no letter', () => {
    expect(words('555 0142', [{ from: 4, until: 8 }])).toBe('555 [0142]');
    expect(words('Żółw 😀 and son', [{ from: 0, until: 4 }])).toBe('[Żółw] 😀 and son');
  });

  it.each([
    [
      'two that overlap',
      [
        { from: 0, until: 3 },
        { from: 2, until: 5 },
      ],
      '[abc]def',
    ],
    ['one that lies outside', [{ from: 4, until: 99 }], 'abcdef'],
    ['an empty one', [{ from: 2, until: 2 }], 'abcdef'],
    [
      'out of order',
      [
        { from: 4, until: 5 },
        { from: 0, until: 1 },
      ],
      '[a]bcd[e]f',
    ],
  ])('%s', (_, hits, shown) => {
    expect(words('abcdef', hits)).toBe(shown);
  });
});
