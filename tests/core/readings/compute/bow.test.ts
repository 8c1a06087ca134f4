/** Common practice, no source: see the source file. */
import { describe, expect, it } from 'vitest';
import { type Bow, bowAdvice, bowOf, type Judged } from '#core/readings/compute/bow.ts';

describe('bowAdvice', () => {
  it.each<[Bow, Bow, RegExp | null]>([
    ['bowed', 'bowed', /straighten before surfacing/],
    ['bowed', 'straight', /do not bend it/],
    ['bowed', 'not read', /Measure cam line/],
    ['straight', 'bowed', null],
    ['not read', 'bowed', null],
  ])('deck %s, cam line %s', (deck, cam, words) => {
    const advice = bowAdvice(deck, cam);
    if (words === null) expect(advice).toBeNull();
    else expect(advice).toMatch(words);
  });
});

describe('bowOf', () => {
  const read = (stage: 'before' | 'after', name: string, isMet = true): Judged => ({
    quantity: 'cam-line',
    stage,
    isMet,
    cell: { verdict: { name } },
  });

  it('takes what was read after, else before; what is not judged is no answer', () => {
    expect(bowOf('cam-line', [])).toBe('not read');
    expect(bowOf('cam-line', [read('before', 'fail')])).toBe('bowed');
    expect(bowOf('cam-line', [read('before', 'fail'), read('after', 'pass')])).toBe('straight');
    expect(bowOf('cam-line', [read('before', 'fail'), read('after', 'not measured', false)])).toBe('bowed');
    expect(bowOf('cam-line', [read('after', 'too close to call')])).toBe('not read');
    expect(bowOf('deck-flatness', [read('after', 'fail')])).toBe('not read');
  });
});
