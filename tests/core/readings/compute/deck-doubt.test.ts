import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { dialDoubt } from '#core/readings/compute/deck-doubt.ts';
import { readEntry } from '#core/readings/compute/entry.ts';
import { placeAt } from '#core/readings/compute/place.ts';
import { DECK, gridReadings, headFacts } from '#tests/kit/face-facts.ts';

/** A head on its jacks, 10 tenths a column, not read yet at c3r2. */
const rows = [
  [0, 10, 20, 30, 40],
  [2, 12, null, 32, 42],
  [4, 14, 24, 34, 44],
];

function entry(typed: string, grid: readonly (readonly (number | null)[])[] = rows) {
  const bench = openBench(headFacts({ readings: gridReadings(DECK, grid) }));
  const place = placeAt(bench, { quantity: 'deck-dial', spot: null, point: 'c3r2', stage: 'before' });
  if (!place) throw new Error('no place');
  return readEntry(bench, place, typed, 'in');
}

describe('dialDoubt', () => {
  it('asks about a figure ten times off, and says what was probably meant', () => {
    expect(entry('220').doubt).toEqual({
      question: '0.0220 in lies 0.0198 in off the other points. Did you mean 0.0022 in?',
      meant: { typed: '0.0022', unit: 'in' },
    });
  });

  it('asks about a minus that was left out', () => {
    const low = rows.map((row) => row.map((z) => (z === null ? null : z - 200)));

    expect(entry('178', low).doubt?.meant).toEqual({ typed: '−0.0178', unit: 'in' });
  });

  it('asks without a guess where nothing near was meant', () => {
    expect(entry('555').doubt).toMatchObject({ question: expect.stringContaining('Is it right?'), meant: null });
  });

  it('does not ask about what a bad head may read', () => {
    expect(entry('-60').doubt).toBeNull();
    expect(entry('22').doubt).toBeNull();
  });

  it('has nothing to compare with before four other points are read, or elsewhere', () => {
    const few = [
      [0, 10, null],
      [0, null, null],
    ];
    const bench = openBench(headFacts());
    const margin = bench.quantity('margin');

    expect(entry('900', few).doubt).toBeNull();
    const read = { typed: '0.9', unit: 'in', value: 22_860_000, mark: 'entered' } as const;
    const place = margin && { quantity: margin, spot: null, point: null, stage: 'after' as const, unit: 'in' as const };
    expect(place && dialDoubt(bench, place, read)).toBeNull();
  });
});
