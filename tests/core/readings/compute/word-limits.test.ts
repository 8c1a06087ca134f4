import { describe, expect, it } from 'vitest';
import { GASKETS } from '#core/catalogue/compute/limits-by-word.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { withDoubt, wordLimitsOf } from '#core/readings/compute/word-limits.ts';
import { factsOf, limitOf } from '#tests/kit/bench-facts.ts';

const mls = limitOf('finish-ra-mls', 'uin', { high: '60', forWhat: 'shop' });
const plain = limitOf('finish-ra', 'uin', { high: '40' });
const finder = (word: string | null, more: Parameters<typeof factsOf>[0] = {}) =>
  wordLimitsOf(factsOf({ limits: [mls, plain], ...more }), () => word);

describe('wordLimitsOf', () => {
  it('offers the limits of the chosen gasket beside those of the figure itself', () => {
    expect(finder(GASKETS.mls).limitsOf('finish-ra')).toEqual([
      plain,
      { ...mls, quantity: 'finish-ra', forWord: GASKETS.mls },
    ]);
    expect(finder(GASKETS.composition).limitsOf('finish-ra')).toEqual([plain]);
    expect(finder(null).limitsOf('finish-ra')).toEqual([plain]);
  });

  it('takes what the counter was told until the bench is told something else', () => {
    const said = { 'gasket-kind': GASKETS.mls };

    expect(finder(null, { said }).wordFor('finish-ra')).toBe(GASKETS.mls);
    expect(finder(GASKETS.soft, { said }).wordFor('finish-ra')).toBe(GASKETS.soft);
    expect(finder(GASKETS.soft).wordFor('margin')).toBeNull();
  });

  it('goes by the metal of the casting where that decides', () => {
    const of = (material: string) =>
      finder(null, { casting: { ...factsOf().casting, material } }).wordFor('insert-interference');

    expect([of('iron_ductile'), of('aluminium'), of('not_known')]).toEqual(['iron', 'aluminium', 'not_known']);
  });
});

describe('withDoubt', () => {
  const doubtful = { quantity: 'finish-ra-mls-sure', word: 'ask gasket maker', steps: [] };
  const sure = limitOf('finish-ra-mls-sure', 'uin', { high: '30' });
  const pass = { name: 'pass', direction: null, cannotProve: false } as const;

  it('keeps a pass open between the narrow and the wide band, and leaves every other verdict alone', () => {
    const at = (typed: string, verdict: Parameters<typeof withDoubt>[0] = pass) =>
      withDoubt(verdict, measureOf(typed, 'uin'), doubtful, sure);

    expect(at('30')).toEqual(pass);
    expect(at('45')).toMatchObject({ name: 'too close to call', direction: 'over', word: 'ask gasket maker' });
    expect(at('70', { ...pass, name: 'fail', direction: 'over' }).name).toBe('fail');
    expect(withDoubt(pass, measureOf('45', 'uin'), doubtful, undefined)).toEqual(pass);
  });
});
