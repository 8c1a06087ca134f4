import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { inch, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const planned = { stage: 'before' } as const;
const plan = (cut: string, face: string): Typed[] => [
  ['seat-cut-depth', cut, 'in', planned],
  ['face-stock', face, 'in', planned],
];
const height: Typed = ['installed-height', '1.700', 'in', planned];
/** 110 lbf at 1.700 in, 270 lbf at 1.200 in: 320 lbf/in. */
const SPRING = sheet(
  ['seat-angle', '45', 'deg'],
  ['spring-load-1', '110', 'lbf'],
  ['spring-height-1', '1.700', 'in'],
  ['spring-load-2', '270', 'lbf'],
  ['spring-height-2', '1.200', 'in'],
);
const WANTED = limitOf('height-with-shim', 'in', { low: '1.690', high: '1.710', target: '1.700' });
const planAt = (typed: readonly Typed[], limits = [...SPRING, WANTED]) => {
  const bench = valveBench(typed, limits);
  return {
    ...bench,
    known: (quantity: string) => bench.known(quantity, undefined, 'before'),
    value: (quantity: string) => bench.value(quantity, undefined, 'before'),
    verdict: (quantity: string) => bench.verdict(quantity, undefined, 'before'),
    inInches: (quantity: string) => (bench.value(quantity, undefined, 'before') ?? Number.NaN) / 25_400_000,
    inPounds: (quantity: string) => (bench.value(quantity, undefined, 'before') ?? Number.NaN) / measureOf('1', 'lbf'),
  };
};

describe('valve-rise', () => {
  it.each([
    ['45', 0.020_485],
    ['30', 0.018_928],
  ])('seat cut 0.012, face ground 0.006 at %s degrees: %d in (exact mathematics)', (degrees, expected) => {
    const bench = planAt(plan('0.012', '0.006'), sheet(['seat-angle', degrees, 'deg']));

    expect(Math.abs(bench.inInches('valve-rise') - expected)).toBeLessThanOrEqual(1e-6);
  });

  it('is planned before and done after', () => {
    const done = valveBench(
      [
        ['seat-cut-depth', '0.010', 'in'],
        ['face-stock', '0', 'in'],
      ],
      SPRING,
    );

    expect(planAt(plan('0.010', '0')).known('valve-rise')).toMatchObject({ value: inch('0.010'), planned: true });
    expect(done.known('valve-rise')).toMatchObject({ value: inch('0.010'), planned: false });
  });

  it('ends as a plan once what was cut is written down, so that nothing is counted twice', () => {
    const done: Typed[] = [
      ['seat-cut-depth', '0.011', 'in'],
      ['face-stock', '0.004', 'in'],
    ];
    const bench = planAt([...plan('0.012', '0.006'), height, ...done]);

    expect(bench.known('valve-rise')).toMatchObject({ value: null, marks: ['done: what was cut is written down'] });
    expect(bench.value('plan-height')).toBeNull();
  });

  it('wants both figures, and an angle only where a face is ground', () => {
    expect(planAt([['seat-cut-depth', '0.012', 'in', planned]]).known('valve-rise')).toMatchObject({ value: null });
    expect(planAt(plan('0.012', '0.006'), []).value('valve-rise')).toBeNull();
    expect(planAt(plan('0.012', '0'), []).value('valve-rise')).toBe(inch('0.012'));
  });

  it('of a seat printed at 45 from the stem axis is that of 45 from the head; of 60 that of 30 (exact mathematics)', () => {
    const printed = planAt(
      [...plan('0.012', '0.006'), ['seat-angle-from', 'stem axis', null]],
      sheet(['seat-angle', '60', 'deg']),
    );

    expect(printed.value('valve-rise')).toBe(
      planAt(plan('0.012', '0.006'), sheet(['seat-angle', '30', 'deg'])).value('valve-rise'),
    );
  });
});

describe('before cutting', () => {
  const bench = planAt([...plan('0.012', '0.006'), height]);

  it('1.700 in grows to 1.7205 and its load falls to 103.44 lbf (exact mathematics)', () => {
    expect(bench.inInches('plan-height')).toBeCloseTo(1.7205, 4);
    expect(bench.inPounds('plan-load-no-shim')).toBeCloseTo(103.44, 2);
  });

  it('names the shim that puts it right: 0.015 makes 1.7055 in and 108.24 lbf (exact mathematics)', () => {
    expect(bench.known('plan-shim')).toMatchObject({ value: inch('0.015'), marks: ['0.015'] });
    expect(bench.inInches('plan-height-with-shim')).toBeCloseTo(1.7055, 4);
    expect(Math.abs(bench.inPounds('plan-seat-load') - 108.24)).toBeLessThanOrEqual(0.01);
    expect(bench.verdict('plan-height-with-shim')).toBe('pass');
  });

  it('fails by the limits of the height, of the load and of the margin, before a chip is cut', () => {
    const limits = [
      ...SPRING,
      WANTED,
      limitOf('seat-load', 'lbf', { low: '100', high: '120' }),
      limitOf('margin', 'in', { low: '0.031' }),
    ];
    const deep = planAt([...plan('0.080', '0.006'), height, ['margin', '0.036', 'in', planned]], limits);

    expect(deep.verdict('plan-height-with-shim')).toBe('fail');
    expect(deep.verdict('margin-left')).toBe('fail');
    expect(planAt([...plan('0.012', '0'), height], limits).verdict('plan-seat-load')).toBe('pass');
    expect(planAt([height], limits).verdict('plan-height-with-shim')).toBe('not measured');
  });

  it('a ground tip changes the tip and not the height of the spring: 0.010 off, 0.000 (exact mathematics)', () => {
    const tip: Typed = ['tip-height', '2.000', 'in', planned];
    const ground: Typed = ['tip-removed', '0.010', 'in', planned];
    const [without, with10] = [
      planAt([...plan('0.020', '0'), height, tip]),
      planAt([...plan('0.020', '0'), height, tip, ground]),
    ];

    expect((with10.value('plan-height') ?? 0) - (without.value('plan-height') ?? 0)).toBe(0);
    expect(without.known('plan-tip-height')).toMatchObject({ value: inch('2.020'), marks: ['tip not ground'] });
    expect(with10.value('plan-tip-height')).toBe(inch('2.010'));
  });

  it('reckons the chamber by the ring the valve head leaves: 1.500 in sunk 0.020 is 0.5792 cc (exact mathematics)', () => {
    const head = sheet(['valve-head-diameter', '1.500', 'in'], ['seat-angle', '45', 'deg']);

    expect((planAt(plan('0.020', '0'), head).value('plan-chamber') ?? 0) / 1e6).toBeCloseTo(0.5792, 4);
    expect(planAt(plan('0.020', '0')).known('plan-chamber')).toMatchObject({ value: null });
  });

  it('deepens recession and eats lash one for one (common practice, no source)', () => {
    const limits = [
      ...SPRING,
      limitOf('recession', 'in', { high: '0.036' }),
      limitOf('lash', 'in', { low: '0.006', high: '0.010' }),
    ];
    const found = planAt(
      [...plan('0.012', '0'), ['recession', '0.030', 'in', planned], ['lash', '0.012', 'in', planned]],
      limits,
    );

    expect([found.value('plan-recession'), found.verdict('plan-recession')]).toEqual([inch('0.042'), 'fail']);
    expect([found.value('plan-lash'), found.verdict('plan-lash')]).toEqual([0, 'fail']);
  });

  it('a deeper cut never makes a shorter height, a stronger spring or a thicker rim (property)', () => {
    const thou = fc.integer({ min: 0, max: 40 }).map((it) => (it / 1000).toFixed(3));

    fc.assert(
      fc.property(thou, thou, thou, thou, (cut, face, moreCut, moreFace) => {
        const margin: Typed = ['margin', '0.200', 'in', planned];
        const add = (a: string, b: string) => (Number(a) + Number(b)).toFixed(3);
        const shallow = planAt([...plan(cut, face), height, margin]);
        const deep = planAt([...plan(add(cut, moreCut), add(face, moreFace)), height, margin]);
        const at = (quantity: string) => [shallow.value(quantity) ?? 0, deep.value(quantity) ?? 0] as const;
        const [heights, loads, margins] = [at('plan-height'), at('plan-load-no-shim'), at('margin-left')];

        expect(heights[1]).toBeGreaterThanOrEqual(heights[0]);
        expect(loads[1]).toBeLessThanOrEqual(loads[0]);
        expect(margins[1]).toBeLessThanOrEqual(margins[0]);
      }),
      { numRuns: 40 },
    );
  });
});
