import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { figureOf, judgedOf, saidOf } from '#core/readings/compute/deck-figures.ts';
import { readingOf } from '#tests/kit/bench-facts.ts';
import { headFacts } from '#tests/kit/face-facts.ts';

const known = (value: number) => ({ value, uncertainty: null, marks: ['m'], planned: false });

describe('figureOf', () => {
  it('shows four decimals of an inch, three of a millimetre, and nothing for nothing', () => {
    expect(figureOf(known(142_240), 'in')).toMatchObject({ text: '0.0056', marks: ['m'] });
    expect(figureOf(known(142_000), 'mm').text).toBe('0.142');
    expect(figureOf(null, 'in')).toEqual({ value: null, uncertainty: null, text: '', marks: [] });
    expect(saidOf(142_240, 'in')).toBe('0.0056 in');
  });
});

describe('judgedOf', () => {
  const place = { quantity: 'deck-flatness', stage: 'before', unit: 'in' } as const;
  const decided = (value: number) =>
    headFacts({
      readings: [readingOf('deck-flatness', '0.0056', 'in', { stage: 'before' })],
      decisions: [
        {
          quantity: 'deck-flatness',
          spot: null,
          point: null,
          stage: 'before',
          value,
          accepted: true,
          words: 'race engine',
          by: 'OB',
        },
      ],
    });

  it('carries limit, verdict and word, and no verdict without a figure', () => {
    const bench = openBench(headFacts());

    expect(judgedOf(bench, place, known(142_240))).toMatchObject({
      word: 'too much',
      limit: { text: 'at most 0.0040' },
    });
    expect(judgedOf(bench, place, null)).toMatchObject({ word: 'not measured', value: null });
  });

  it('shows a lead’s decision on the figure that stands, and on no other', () => {
    expect(judgedOf(openBench(decided(142_240)), place, known(142_240)).decision).toMatchObject({ accepted: true });
    expect(judgedOf(openBench(decided(142_240)), place, known(99_000)).decision).toBeNull();
  });
});
