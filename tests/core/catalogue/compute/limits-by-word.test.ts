import { describe, expect, it } from 'vitest';
import { LIMITS_BY_WORD, stepsForWord } from '#core/catalogue/compute/limits-by-word.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';

describe('LIMITS_BY_WORD', () => {
  it.each(Object.entries(LIMITS_BY_WORD))(
    '%s: each word has a quantity of the same family and places',
    (code, words) => {
      const judged = findQuantity(code);
      const doubtful = Object.values(words.doubtful ?? {}).map((it) => it.quantity);

      for (const carrier of [...Object.values(words.carriers), ...doubtful]) {
        expect(findQuantity(carrier)?.family).toBe(judged?.family);
        expect(findQuantity(carrier)?.derived).toBeNull();
      }
      if (words.by !== 'metal' && words.by !== 'kind') {
        const choices = findQuantity(words.by)?.choices ?? [];
        expect(Object.keys(words.carriers).every((word) => choices.includes(word))).toBe(true);
      }
    },
  );
});

describe('stepsForWord', () => {
  it('begins with asking whoever must speak first; nothing for any other word', () => {
    expect(stepsForWord('ask gasket maker')[0]).toContain('gasket maker');
    expect(stepsForWord('too tall')).toEqual([]);
  });
});
