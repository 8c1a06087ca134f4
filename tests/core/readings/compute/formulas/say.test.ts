import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { sayAbout, sayLength } from '#core/readings/compute/formulas/say.ts';
import { factsOf } from '#tests/kit/bench-facts.ts';
import { inch, mm } from '#tests/kit/worn-block.ts';

const lookIn = (system: 'inch' | 'metric') => openBench(factsOf({ system })).look({ spot: null, stage: 'after' });

describe('sayLength', () => {
  it('says a length in the unit of the casting, with what decides', () => {
    expect(sayLength(lookIn('inch'), inch('0.002'))).toBe('.0020 in');
    expect(sayLength(lookIn('inch'), inch('0.00205'))).toBe('.00205 in');
    expect(sayLength(lookIn('metric'), mm('0.05'))).toBe('0.050 mm');
    expect(sayLength(lookIn('inch'), inch('-0.002'))).toBe('\u2212.0020 in');
  });
});

describe('sayAbout', () => {
  it('rounds to what can be read off a gauge', () => {
    expect(sayAbout(lookIn('inch'), inch('0.00198'))).toBe('.0020 in');
    expect(sayAbout(lookIn('metric'), mm('0.0504'))).toBe('0.050 mm');
  });
});
