import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { limitOf, valves } from '#tests/kit/bench-facts.ts';
import { inch, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const inInches = (value: number | null) => (value ?? Number.NaN) / 25_400_000;
const rings: Typed[] = [
  ['seat-outer', '1.780', 'in'],
  ['seat-inner', '1.670', 'in'],
];
const seatAt = (degrees: string) => sheet(['seat-angle', degrees, 'deg']);

describe('seat-width', () => {
  it.each([
    ['45', 0.0778],
    ['30', 0.0635],
  ])('1.780 and 1.670 in at %s degrees: %d in along the seat (exact mathematics)', (degrees, expected) => {
    const width = inInches(valveBench(rings, seatAt(degrees)).value('seat-width'));

    expect(Math.abs(width - expected)).toBeLessThanOrEqual(1e-4);
  });

  it('0.055 in measured flat is the same seat, and is judged by its width along the seat (exact mathematics)', () => {
    const limits = [...seatAt('45'), limitOf('seat-width', 'in', { low: '0.060', high: '0.100' })];
    const bench = valveBench([['seat-width-flat', '0.055', 'in']], limits);

    expect(inInches(bench.value('seat-width'))).toBeCloseTo(0.077_782, 6);
    expect(bench.known('seat-width')?.marks).toContain('reckoned from the width measured flat');
    expect(bench.verdict('seat-width')).toBe('pass');
  });

  it('measured along the seat, it stands as typed (TM 9-6115-604-34: 0.060 to 0.100 in)', () => {
    const limits = [...seatAt('45'), limitOf('seat-width', 'in', { low: '0.060', high: '0.100' })];
    const bench = valveBench([...rings, ['seat-width', '0.075', 'in']], limits);

    expect(bench.known('seat-width')).toMatchObject({ value: inch('0.075'), marks: [] });
    expect(bench.verdict('seat-width')).toBe('pass');
  });

  it('wants the angle: without it nothing is said and nothing passes', () => {
    const bench = valveBench(rings, [limitOf('seat-width', 'in', { high: '0.100' })]);

    expect(bench.known('seat-width')).toMatchObject({ value: null });
    expect(bench.known('seat-width')?.marks[0]).toContain('the seat angle is wanted');
    expect(bench.verdict('seat-width')).toBe('not measured');
  });
});

describe('angle-difference', () => {
  const pair = (valve: string, seat: string, from: 'head plane' | 'stem axis' = 'head plane'): Typed[] => [
    ['valve-angle', valve, 'deg'],
    ['seat-angle', seat, 'deg'],
    ['valve-angle-from', from, null],
  ];

  it.each([
    ['44', '45', 'head plane', '-1', 'flatter by a degree (common practice, no source)'],
    ['46', '45', 'stem axis', '-1', 'the same valve printed from the stem axis (exact mathematics)'],
    ['45.75', '44.75', 'head plane', '1', 'TM 5-4310-276-14, Table 1-1: steeper than its seat'],
    ['30', '30', 'head plane', '0', 'TM 5-3810-289-34: the same for both'],
  ] as const)('valve %s on seat %s, valve from the %s: %s degrees, %s', (valve, seat, from, expected, _) => {
    const bench = valveBench(pair(valve, seat, from));

    expect(bench.value('angle-difference')).toBe(measureOf(expected, 'deg'));
    expect(bench.verdict('angle-difference')).toBe('no limit known');
  });

  it('says nothing of one angle alone, or of one that cannot be', () => {
    expect(valveBench([['seat-angle', '45', 'deg']]).value('angle-difference')).toBeNull();
    expect(valveBench(pair('90', '45')).value('angle-difference')).toBeNull();
  });
});

describe('seat-eccentricity', () => {
  it('0.002 in of full swing is 0.001 in off centre (exact mathematics)', () => {
    expect(valveBench([['seat-runout', '0.002', 'in']]).value('seat-eccentricity')).toBe(inch('0.001'));
  });
});

describe('seat-free', () => {
  it('is the less of both sides (TM 10-3930-671-24: at least 1/64 in)', () => {
    const limits = [limitOf('seat-free', 'in', { low: '0.015625' })];
    const at = (outer: string, inner: string) =>
      valveBench(
        [
          ['seat-free-outer', outer, 'in'],
          ['seat-free-inner', inner, 'in'],
        ],
        limits,
      ).verdict('seat-free');

    expect([at('1/64', '0.030'), at('0.030', '0.0156'), at('0.031', '0.031')]).toEqual(['pass', 'fail', 'pass']);
    expect(valveBench([['seat-free-outer', '0.031', 'in']], limits).verdict('seat-free')).toBe('not measured');
  });
});

describe('margin-left', () => {
  const ground = (margin: string, face: string, stage: 'before' | 'after'): Typed[] => [
    ['margin', margin, 'in', { stage: 'before' }],
    ['face-stock', face, 'in', { stage }],
  ];

  it.each(['before', 'after'] as const)(
    '0.062 less 0.008 at 45 degrees, %s: 0.05069 in (exact mathematics)',
    (stage) => {
      const left = inInches(
        valveBench(ground('0.062', '0.008', stage), seatAt('45')).value('margin-left', undefined, stage),
      );

      expect(Math.abs(left - 0.050_69)).toBeLessThanOrEqual(1e-5);
    },
  );

  it('gives way to the margin that was measured after grinding', () => {
    const bench = valveBench([...ground('0.062', '0.008', 'after'), ['margin', '0.052', 'in']], seatAt('45'));

    expect(bench.known('margin-left')).toMatchObject({ value: inch('0.052'), marks: ['measured'] });
  });

  it('is judged as the margin is, before anything is cut (TM 5-1940-322-24, Table 2: at least 0.031 in)', () => {
    const limits = [...seatAt('45'), limitOf('margin', 'in', { low: '0.031' })];
    const at = (face: string) =>
      valveBench(ground('0.040', face, 'before'), limits).verdict('margin-left', undefined, 'before');

    expect([at('0.005'), at('0.008')]).toEqual(['pass', 'fail']);
    expect(
      valveBench([['face-stock', '0.005', 'in', { stage: 'before' }]], limits).verdict(
        'margin-left',
        undefined,
        'before',
      ),
    ).toBe('not measured');
  });
});

describe('tip-from-mean', () => {
  const tips = (...heights: readonly string[]): Typed[] =>
    heights.map((typed, index) => ['tip-height', typed, 'in', { at: `${index + 1}E` }]);
  const four = { spots: valves('1E', '2E', '3E', '4E') };
  const limits = [limitOf('tip-from-mean', 'in', { low: '-0.010', high: '0.010' })];

  it('is how far a tip stands from the mean of its head, within 0.010 in (common practice, no source)', () => {
    const bench = valveBench(tips('2.012', '2.000', '2.004', '1.984'), limits, four);

    expect(['1E', '2E', '3E', '4E'].map((at) => bench.value('tip-from-mean', at))).toEqual(
      ['0.012', '0', '0.004', '-0.016'].map(inch),
    );
    expect(['1E', '2E', '3E', '4E'].map((at) => bench.verdict('tip-from-mean', at))).toEqual([
      'fail',
      'pass',
      'pass',
      'fail',
    ]);
    expect(bench.value('tip-spread')).toBe(inch('0.028'));
  });

  it('has no mean of one tip, and none for a valve that was not read', () => {
    expect(valveBench(tips('2.012'), limits, four).verdict('tip-from-mean', '1E')).toBe('not measured');
    expect(valveBench(tips('2.012', '2.000'), limits, four).verdict('tip-from-mean', '3E')).toBe('not measured');
  });

  it('adds up to nothing, and does not depend on the order of the valves (property)', () => {
    const height = fc.integer({ min: 1900, max: 2100 }).map((thou) => (thou / 1000).toFixed(3));

    fc.assert(
      fc.property(fc.array(height, { minLength: 4, maxLength: 4 }), (heights) => {
        const at = (list: readonly string[]) => {
          const bench = valveBench(tips(...list), limits, four);
          return ['1E', '2E', '3E', '4E'].map((label) => bench.value('tip-from-mean', label) ?? Number.NaN);
        };
        const found = at(heights);

        expect(Math.abs(found.reduce((sum, it) => sum + it, 0))).toBeLessThanOrEqual(2);
        expect(at(heights.toReversed()).toReversed()).toEqual(found);
      }),
      { numRuns: 30 },
    );
  });
});

describe('tip-change', () => {
  it('is the height after less the height found, with its sign (exact arithmetic)', () => {
    const bench = valveBench([
      ['tip-height', '2.000', 'in', { stage: 'before' }],
      ['tip-height', '2.014', 'in'],
    ]);

    expect(bench.value('tip-change')).toBe(inch('0.014'));
  });

  it('asks about the lifters of a pushrod engine past 0.020 in (from memory)', () => {
    const changed = (after: string) =>
      valveBench([
        ['tip-height', '2.000', 'in', { stage: 'before' }],
        ['tip-height', after, 'in'],
      ]).known('tip-change')?.marks;

    expect(changed('2.020')).toEqual([]);
    expect(changed('1.979')?.[0]).toContain('travel of the lifters');
  });
});

describe('recession-surfaced', () => {
  it('0.030 before, 0.008 off: 0.022 in, judged as recession is (TM 10-4320-310-14: 0.018 to 0.036 in)', () => {
    const bench = valveBench(
      [
        ['recession', '0.030', 'in', { stage: 'before' }],
        ['thickness', '4.000', 'in', { stage: 'before', spot: null }],
        ['thickness', '3.992', 'in', { spot: null }],
      ],
      [limitOf('recession', 'in', { low: '0.018', high: '0.036' })],
    );

    expect(bench.value('recession-surfaced')).toBe(inch('0.022'));
    expect(bench.verdict('recession-surfaced')).toBe('pass');
    expect(bench.known('recession-surfaced')?.marks).toContain('reckoned: measure again after surfacing');
  });
});
