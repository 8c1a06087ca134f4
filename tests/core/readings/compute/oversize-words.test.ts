import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { oversizeChoiceOf } from '#core/readings/compute/oversize-choice.ts';
import { chosenSizes, depthsWords, oversizeWarnings } from '#core/readings/compute/oversize-words.ts';
import { readingOf } from '#tests/kit/bench-facts.ts';
import { BORING_LIMITS, CYLINDERS, PISTONS, WORN, wornBlock } from '#tests/kit/worn-block.ts';

const show = (value: number) => ({ value, text: String(value), other: null });

describe('depthsWords', () => {
  it('says the depths when all three were typed, else where they lie', () => {
    const depths = ['0.5', '2.0', '4.5'].map((typed, index) =>
      readingOf('bore-depth', typed, 'in', { point: ['top', 'mid', 'bot'][index] ?? null, stage: 'before' }),
    );

    expect(depthsWords(openBench(wornBlock({ readings: depths })), 'in')).toBe('top 0.5, middle 2.0, bottom 4.5 in');
    expect(depthsWords(openBench(wornBlock({ readings: depths.slice(1) })), 'in')).toContain('under the ridge');
  });
});

describe('chosenSizes', () => {
  it('a size that is on no list has no code, and keeps the note written with it', () => {
    const wanted = CYLINDERS.map((spot) =>
      readingOf('bore-wanted', '3.9712', 'in', { spot: spot.id, stage: 'before', note: 'race rule' }),
    );
    const bench = openBench(wornBlock({ readings: wanted }));

    expect(chosenSizes(bench, show, [])).toMatchObject([{ code: null, where: 'all 8', note: 'race rule' }]);
    expect(chosenSizes(openBench(wornBlock()), show, [])).toEqual([]);
  });
});

describe('oversizeWarnings', () => {
  const told = { bores: [], sleeves: [], facts: null, show, candidates: [] };

  it('says nothing where there is nothing to mind', () => {
    expect(oversizeWarnings(openBench(wornBlock()), told)).toEqual([]);
  });

  it('names each cylinder whose wall was not measured', () => {
    const walls = CYLINDERS.slice(1).map((spot) =>
      readingOf('wall-thickness', '0.200', 'in', { spot: spot.id, stage: 'before' }),
    );
    const facts = wornBlock({ readings: [...WORN, ...PISTONS, ...walls], limits: BORING_LIMITS });
    const { warnings } = oversizeChoiceOf(facts, { only: null, sleeves: [] });

    expect(warnings).toEqual([
      'cylinder 1: wall not measured.',
      'Least wall not known: no wall is judged.',
      'Greatest bore not known: sizes are not judged by it.',
    ]);
  });
});
