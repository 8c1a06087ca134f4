import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromBaseExactly, measureOf } from '#core/kernel/measure-units.ts';
import {
  bindClearance,
  greatestLift,
  implausibleOf,
  loadAt,
  loadUncertainty,
  rateOf,
  type Spring,
  sealClearance,
  springOf,
} from '#core/readings/compute/spring.ts';
import reference from '#tests/reference/springs.json' with { type: 'json' };

const inch = (text: string | number) => measureOf(String(text), 'in');
const pounds = (text: string | number) => measureOf(String(text), 'lbf');

function spring(...points: readonly (readonly [load: string | number, height: string | number])[]): Spring {
  const made = springOf(
    points.map(([load, height]) => ({ load: pounds(load), height: inch(height) })),
    false,
  );
  if (!made) throw new Error('no spring');
  return made;
}
/** A rate in lbf/in as a number, for comparison with printed figures. */
const perInch = (it: Spring) => {
  const { over, under } = fromBaseExactly(rateOf(it) ?? 0, 'lbf/in');
  return Number((over * 1_000_000n) / under) / 1_000_000;
};
const inPounds = (load: number | null) => {
  const { over, under } = fromBaseExactly(load ?? 0, 'lbf');
  return Number((over * 1_000_000n) / under) / 1_000_000;
};
const EXAMPLE = spring(['110', '1.700'], ['270', '1.200']);

function caseOf(id: string) {
  const found = reference.cases.find((it) => it.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return found as typeof found & { inputs: Record<string, number> };
}

describe('rateOf', () => {
  it('110 lbf at 1.700 in and 270 lbf at 1.200 in: 320 lbf/in (exact arithmetic)', () => {
    expect(perInch(EXAMPLE)).toBeCloseTo(320, 4);
  });

  it('TM 10-3930-621-34: free 2.250 in, about 36 lb at 1.938 in: 115.385 lbf/in', () => {
    expect(perInch(spring(['0', '2.250'], ['36', '1.938']))).toBeCloseTo(115.385, 2);
  });

  it('TM 10-4320-344-24, Table 4-1: the middles of both load bands give 217.073 lbf/in', () => {
    const { inputs, expected } = caseOf('tm-10-4320-344-24-two-loads');

    const rate = perInch(spring([inputs.F1 ?? 0, inputs.h1 ?? 0], [inputs.F2 ?? 0, inputs.h2 ?? 0]));

    expect(rate).toBeCloseTo(expected as number, 2);
  });

  it.each(['tm-5-1940-322-24-free-rate', 'tm-5-3810-306-34-free-rate', 'tm-9-6115-604-34-free-rate'])(
    '%s: free length and one load',
    (name) => {
      const { inputs, expected } = caseOf(name);
      const [low, high] = expected as number[];

      expect(perInch(spring(['0', inputs.free ?? 0], [inputs.F_low ?? 0, inputs.h ?? 0]))).toBeCloseTo(low ?? 0, 2);
      expect(perInch(spring(['0', inputs.free ?? 0], [inputs.F_high ?? 0, inputs.h ?? 0]))).toBeCloseTo(high ?? 0, 2);
    },
  );

  it('takes the stretch at a height where more than two points were measured', () => {
    const progressive = spring(['100', '1.700'], ['180', '1.500'], ['300', '1.300']);

    expect(rateOf(progressive, inch('1.600'))).toBeLessThan(rateOf(progressive, inch('1.400')) ?? 0);
    expect(rateOf(progressive, inch('1.299'))).toBeNull();
  });
});

describe('loadAt', () => {
  it.each([
    ['1.701', 109.68],
    ['1.731', 100.08],
    ['1.221', 263.28],
    ['1.7055', 108.24],
  ])('at %s in the example spring bears %d lbf (exact arithmetic)', (height, expected) => {
    expect(inPounds(loadAt(EXAMPLE, inch(height)))).toBeCloseTo(expected, 3);
  });

  it.each(['tm-10-4320-344-24-free-length', 'tm-10-4320-344-24-free-length-open'])(
    '%s: the free length predicts a load inside the printed band',
    (name) => {
      const found = caseOf(name) as unknown as { inputs: Record<string, number>; expected_band: number[] };
      const { rate = 0, free = 0, h = 0 } = found.inputs;
      const line = spring(['0', free], [(rate * (free - 1)).toFixed(6), 1]);

      const load = inPounds(loadAt(line, inch(h)));

      expect(load).toBeGreaterThanOrEqual(found.expected_band[0] ?? 0);
      expect(load).toBeLessThanOrEqual(found.expected_band[1] ?? 0);
    },
  );

  it('load-from-rate, a spring maker’s page, name withheld: 22 lbf/in, free 0.75 in, at 0.5 in 5.5 lbf', () => {
    const found = caseOf('load-from-rate');
    const { rate = 0, free = 0, h = 0 } = found.inputs;
    const line = spring(['0', free], [(rate * (free - 0.25)).toFixed(6), 0.25]);

    expect(inPounds(loadAt(line, inch(h)))).toBeCloseTo(found.expected as number, 5);
  });

  it('claims nothing past the shortest point that was measured', () => {
    expect(loadAt(EXAMPLE, inch('1.200'))).toBe(pounds('270'));
    expect(loadAt(EXAMPLE, inch('1.199'))).toBeNull();
  });

  it('never rises with height where the spring does not (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30_480_000, max: 60_000_000 }), fc.nat(1_000_000), (height, more) => {
        const [short, tall] = [loadAt(EXAMPLE, height), loadAt(EXAMPLE, height + more)];

        expect((short ?? 0) >= (tall ?? 0)).toBe(true);
      }),
    );
  });
});

describe('springOf', () => {
  it('needs two different heights', () => {
    expect(springOf([{ height: 1, load: 1 }], true)).toBeNull();
    expect(
      springOf(
        [
          { height: 5, load: 1 },
          { height: 5, load: 2 },
        ],
        true,
      ),
    ).toBeNull();
  });
});

describe('implausibleOf', () => {
  const middle = (band: readonly number[]) => ((band[0] ?? 0) + (band[1] ?? 0)) / 2;

  it('TM 9-4940-549-14&P, page 12-14: 14.6 lbf/in at these heights, one band must be wrong', () => {
    const found = caseOf('tm-9-4940-549-14p-implausible') as unknown as {
      inputs: { h1: number; h2: number; band1: number[]; band2: number[] };
      computed: number;
    };
    const { h1, h2, band1, band2 } = found.inputs;
    const printed = spring([middle(band1), h1], [middle(band2), h2]);

    expect(perInch(printed)).toBeCloseTo(found.computed, 2);
    expect(implausibleOf(printed)).toContain('twice its seat height');
  });

  it('TM 10-4320-344-24, Table 4-1, the same heights: nothing to say', () => {
    const { inputs } = caseOf('tm-10-4320-344-24-two-loads');

    expect(implausibleOf(spring([inputs.F1 ?? 0, inputs.h1 ?? 0], [inputs.F2 ?? 0, inputs.h2 ?? 0]))).toBeNull();
  });

  it('a load that falls as the spring gets shorter is none (exact mathematics)', () => {
    expect(implausibleOf(spring(['110', '1.700'], ['100', '1.200']))).toContain('does not grow');
    expect(implausibleOf(EXAMPLE)).toBeNull();
  });
});

describe('loadUncertainty', () => {
  it('is the rate times the doubt of the height: 0.010 in is 3.2 lbf here (exact arithmetic)', () => {
    expect(inPounds(loadUncertainty(EXAMPLE, inch('1.700'), inch('0.010')))).toBeCloseTo(3.2, 4);
    expect(loadUncertainty(EXAMPLE, inch('1.700'), null)).toBeNull();
  });
});

describe('clearances', () => {
  it('1.701 - 0.480 - 1.090 leaves 0.131 in before the coils touch (exact arithmetic)', () => {
    expect(bindClearance(inch('1.701'), inch('0.480'), inch('1.090'))).toBe(inch('0.131'));
  });

  it('with 0.060 in left the greatest lift is 0.551 in (common practice for the margin)', () => {
    expect(greatestLift(inch('1.701'), inch('1.090'), inch('0.060'))).toBe(inch('0.551'));
  });

  it('a gap of 0.560 in and a lift of 0.480 in leave 0.080 in at the seal (exact arithmetic)', () => {
    expect(sealClearance(inch('0.560'), inch('0.480'))).toBe(inch('0.080'));
  });
});
