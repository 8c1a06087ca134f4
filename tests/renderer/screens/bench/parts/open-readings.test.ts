import { describe, expect, it } from 'vitest';
import { notMeasured } from '#renderer/screens/bench/parts/open-readings.tsx';

type Readings = Parameters<typeof notMeasured>[0];
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

describe('notMeasured', () => {
  it('says a quantity once with all its places, and leaves out what was measured', () => {
    const groups = notMeasured([
      open('1I1 valve stem', 1),
      open('1I2 valve stem', 2),
      open('3E1 margin', 3, 'fail'),
      open('thickness', null),
    ]);
    expect(groups.map(({ words, places, count }) => [words, places, count])).toEqual([
      ['valve stem', '1I1, 1I2', 2],
      ['thickness', '', 1],
    ]);
  });
});
