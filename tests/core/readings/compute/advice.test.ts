import { describe, expect, it } from 'vitest';
import { STEPS_TOO_TALL, STEPS_WEAK, shortOrTall, stepsTooShort } from '#core/readings/compute/advice.ts';

describe('shortOrTall', () => {
  // In thousandths; stack 60, tolerance 10. The bounds are exact arithmetic.
  it.each([
    [-11, 'too short'],
    [-10, null],
    [70, null],
    [71, 'too tall'],
  ])('an excess of %d is %s', (need, expected) => {
    expect(shortOrTall(need, 60, 10)).toBe(expected);
  });
});

describe('stepsTooShort', () => {
  it('looks before it cuts, and cuts the pocket last (common practice, no source)', () => {
    expect(stepsTooShort(false)[0]).toBe('Locks and cup seated?');
    expect(stepsTooShort(false).at(-1)).toContain('pocket last');
    expect(stepsTooShort(true).at(-1)).toContain('only with the lead');
  });

  it('ends every step of every list with a sign', () => {
    for (const step of [...stepsTooShort(true), ...STEPS_TOO_TALL, ...STEPS_WEAK]) expect(step).toMatch(/[.?]$/);
  });
});
