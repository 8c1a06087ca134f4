import { describe, expect, it } from 'vitest';
import type { SpotId } from '#core/kernel/ids.ts';
import { shimChoicesOf } from '#core/readings/compute/shim-choices.ts';
import { practiceHead } from '#tests/kit/practice-head.ts';

describe('shimChoicesOf', () => {
  const choose = (height: string) => {
    const facts = practiceHead('CF-4', { '1E': height });
    return shimChoicesOf(facts, facts.spots.find((it) => it.label === '1E')?.id as SpotId);
  };

  it('gives all candidates with height, error and load', () => {
    const choice = choose('40.66');

    expect(choice?.best?.text).toBe('0.25 + 0.50');
    expect(choice?.candidates[0]).toMatchObject({
      heightText: '39.91',
      errorText: '\u22120.09',
      loadText: '324 N',
      within: true,
    });
    expect(choice?.advice).toEqual([]);
  });

  it('advises for a height that no stack mends', () => {
    expect(choose('39.70')?.advice[0]).toBe('Locks and cup seated?');
    expect(choose('41.80')?.advice).toContain('New seat insert.');
  });

  it('has nothing to choose before the height is read, and no such valve elsewhere', () => {
    const facts = practiceHead('CF-4');

    expect(shimChoicesOf(facts, facts.spots[0]?.id as SpotId)).toMatchObject({ best: null, candidates: [] });
    expect(shimChoicesOf(facts, 9999 as SpotId)).toBeNull();
  });
});
