import { describe, expect, it } from 'vitest';
import { inGroups } from '#renderer/screens/bench/parts/open-readings.tsx';

type Readings = Parameters<typeof inGroups>[0];
const open = (words: string, spotId: number | null, verdict = 'not measured') =>
  ({
    quantity: words.split(' ').at(-1),
    quantityId: 1,
    spotId,
    stage: 'after',
    point: null,
    words,
    verdict,
    value: '',
    limit: '',
    decision: null,
    stops: true,
  }) as unknown as Readings[number];

describe('inGroups', () => {
  it('says a quantity once with all its places, and leaves what failed to be decided by itself', () => {
    const groups = inGroups([
      open('1I1 valve stem', 1),
      open('1I2 valve stem', 2),
      open('3E1 margin', 3, 'fail'),
      open('thickness', null),
      open('1I1 guide', 1, 'no limit known'),
    ]);
    expect(groups.map(({ words, places, count }) => [words, places, count])).toEqual([
      ['valve stem', '1I1, 1I2', 2],
      ['thickness', '', 1],
      ['guide', '1I1', 1],
    ]);
  });
});
