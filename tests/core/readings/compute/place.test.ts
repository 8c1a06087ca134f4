import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { placeAt } from '#core/readings/compute/place.ts';
import { factsOf, valves } from '#tests/kit/bench-facts.ts';

const bench = openBench(factsOf({ spots: valves('1E') }));
const at = (quantity: string, spot: number | null, point: string | null = null) =>
  placeAt(bench, { quantity, spot: spot === null ? null : id<'spot'>(spot), point, stage: 'after' });

describe('placeAt', () => {
  it('finds a place of the casting with its unit', () => {
    expect(at('margin', 1)).toMatchObject({ spot: { label: '1E' }, unit: 'in' });
    expect(at('guide-id', 1, 'top')).toMatchObject({ point: 'top' });
    expect(at('thickness', null)).toMatchObject({ spot: null });
  });

  it('finds the points of a grid and the lines of a straightedge, which no workspace keeps', () => {
    expect(at('deck-dial', null, 'c11r7')).toMatchObject({ point: 'c11r7', unit: 'in' });
    expect(at('deck-gap', null, 'across-9')).toMatchObject({ point: 'across-9' });
  });

  it.each([
    ['an unknown quantity', 'colour', 1, null],
    ['a spot of another casting', 'margin', 99, null],
    ['a spot where none is', 'thickness', 1, null],
    ['no spot where one is needed', 'margin', null, null],
    ['an unknown point', 'guide-id', 1, 'nowhere'],
    ['no point where one is needed', 'guide-id', 1, null],
    ['a point outside every grid', 'deck-dial', null, 'c16r1'],
    ['no point of a grid', 'deck-dial', null, null],
  ])('finds none for %s', (_, quantity, spot, point) => {
    expect(at(quantity, spot, point)).toBeNull();
  });
});
