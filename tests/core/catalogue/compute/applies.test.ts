import { describe, expect, it } from 'vitest';
import { type Applied, applies, ONLY_FOR, type OnlyFor } from '#core/catalogue/compute/applies.ts';

const PUSHROD_FOUR: Applied = { layout: 'inline', camLayout: 'ohv', fuel: 'petrol', hasPair: false, hasBanks: false };
const of = (more: Partial<Applied>) => ONLY_FOR.filter((it) => applies(it, { ...PUSHROD_FOUR, ...more }));

describe('applies', () => {
  it.each<[string, Partial<Applied>, OnlyFor[]]>([
    ['a pushrod four', {}, ['pushrods', 'petrol']],
    ['a pushrod V eight', { layout: 'v', hasPair: true }, ['v engine', 'pushrods', 'pair', 'petrol']],
    ['the block of a V', { layout: 'v', hasBanks: true }, ['v engine', 'two banks', 'pushrods', 'petrol']],
    ['a twin-cam four', { camLayout: 'dohc' }, ['overhead cam', 'petrol']],
    ['a diesel', { fuel: 'diesel' }, ['pushrods', 'diesel']],
    ['a side-valve four', { camLayout: 'side' }, ['petrol']],
    ['an engine nobody named', { layout: null, camLayout: 'none' }, ['v engine', 'overhead cam', 'pushrods', 'petrol']],
  ])('%s', (_, more, expected) => {
    expect(of(more)).toEqual(expected);
  });

  it('what is for every engine is for all of them', () => {
    expect(applies(null, PUSHROD_FOUR)).toBe(true);
  });
});
