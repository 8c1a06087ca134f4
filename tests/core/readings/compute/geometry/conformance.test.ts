import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conformanceProbability } from '#core/readings/compute/geometry/conformance.ts';
import reference from '#tests/reference/decision-rule.json' with { type: 'json' };

type Case = Readonly<{
  id: string;
  kind: string;
  inputs: Readonly<Record<string, unknown>>;
  expected: number;
  source: string;
}>;
const cases = reference.cases as readonly Case[];
const input = (it: Case, name: string) => Number(it.inputs[name]);

describe('conformanceProbability', () => {
  it.each(cases.filter((it) => it.kind === 'conformance probability'))('$source: $expected (scipy)', (it) => {
    const near = {
      value: input(it, 'y'),
      uncertainty: 2 * input(it, 'u'),
      low: input(it, 'TL'),
      high: input(it, 'TU'),
    };

    expect(conformanceProbability(near)).toBeCloseTo(it.expected, 5);
  });

  it.each(cases.filter((it) => it.kind === 'guard factor'))(
    '$id: a reading $expected u inside one limit lies within with that probability (normal quantile, scipy)',
    (it) => {
      const sure = conformanceProbability({ value: -it.expected, uncertainty: 2, low: null, high: 0 });

      expect(sure).toBeCloseTo(input(it, 'p'), 5);
    },
  );

  it('is a half at a lone limit and the same on both sides (exact mathematics)', () => {
    expect(conformanceProbability({ value: 5, uncertainty: 1, low: null, high: 5 })).toBeCloseTo(0.5, 12);
    expect(conformanceProbability({ value: 5, uncertainty: 1, low: 5, high: null })).toBeCloseTo(0.5, 12);
  });

  it('never falls when the reading moves from a lone limit inwards, and stays between 0 and 1 (property)', () => {
    const figure = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(figure, figure, (one, two) => {
        const sure = (value: number) => conformanceProbability({ value, uncertainty: 2, low: 0, high: null });
        const [lower, upper] = [Math.min(one, two), Math.max(one, two)];
        return sure(lower) <= sure(upper) + 1e-15 && sure(lower) >= 0 && sure(upper) <= 1;
      }),
    );
  });
});
