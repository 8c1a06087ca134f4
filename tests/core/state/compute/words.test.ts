import { describe, expect, it } from 'vitest';
import { FACT_WORDS, HOLD_OWNERS, HOLD_REASONS, HOLD_WORDS, TICKED_FACTS } from '#core/state/compute/words.ts';

describe('HOLD_WORDS', () => {
  it('gives every reason its words and somebody who looks after it', () => {
    expect(HOLD_REASONS).toHaveLength(10);
    expect(
      HOLD_REASONS.filter((reason) => HOLD_WORDS[reason] === undefined || HOLD_OWNERS[reason] === undefined),
    ).toEqual([]);
  });
});

describe('TICKED_FACTS', () => {
  it('has a sentence beside every tick', () => {
    expect(TICKED_FACTS.map((fact) => FACT_WORDS[fact]).every((words) => words.length > 0)).toBe(true);
  });
});
