import { describe, expect, it } from 'vitest';
import { type CastingTypeAnswer, drawnTypeOf, spotsIn } from '#renderer/kit/drawn-type.ts';

const spot = (label: string, cylinder: number) => ({ kind: 'valve', label, cylinder, side: 'E' as const });
const type = {
  kind: 'head',
  counts: { cylinders: 3 },
  waterJacket: true,
  spots: [spot('1E1', 1), spot('3E2', 3)],
} as unknown as CastingTypeAnswer;

describe('drawnTypeOf', () => {
  it('calls the valves of a right head as the engine counts, and leaves them where they sit', () => {
    const right = drawnTypeOf(type, { position: 'right', numbering: 'L:1,2,3 R:4,5,6' });
    expect(right.spots.map(({ label, cylinder }) => [label, cylinder])).toEqual([
      ['4E1', 1],
      ['6E2', 3],
    ]);
    expect(drawnTypeOf(type).spots.map(({ label }) => label)).toEqual(['1E1', '3E2']);
  });

  it('lets a touched place be found under the label that was read', () => {
    const labels = spotsIn(type, { position: 'right', numbering: 'L:1,2,3 R:4,5,6' }).map(({ label }) => label);
    expect(labels).toEqual(['4E1', '6E2']);
  });
});
