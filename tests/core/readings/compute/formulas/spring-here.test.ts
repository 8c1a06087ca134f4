import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { inch, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const pounds = (value: number | null) => (value ?? Number.NaN) / measureOf('1', 'lbf');
const perInch = (value: number | null) => (value ?? Number.NaN) / measureOf('1', 'lbf/in');
const set: Typed = ['installed-height', '1.701', 'in'];
const OUTER = sheet(
  ['spring-load-1', '110', 'lbf'],
  ['spring-height-1', '1.700', 'in'],
  ['spring-load-2', '270', 'lbf'],
  ['spring-height-2', '1.200', 'in'],
);
/** 40 lbf at 1.600 in, 120 lbf at 1.100 in: 160 lbf/in; it stands 0.100 in shorter. */
const INNER = sheet(
  ['inner-load-1', '40', 'lbf'],
  ['inner-height-1', '1.600', 'in'],
  ['inner-load-2', '120', 'lbf'],
  ['inner-height-2', '1.100', 'in'],
);
const STEP = sheet(['inner-step', '0.100', 'in'], ['valve-lift', '0.480', 'in']);

describe('a pair of springs', () => {
  it('bears what both bear, the inner one at its own height (exact mathematics)', () => {
    const bench = valveBench([set], [...OUTER, ...INNER, ...STEP]);

    // 109.68 + (40 - 0.001 x 160)
    expect(pounds(bench.value('seat-load'))).toBeCloseTo(149.52, 3);
    expect(pounds(bench.value('open-load'))).toBeCloseTo(263.28 + 116.64, 3);
    expect(perInch(bench.value('spring-rate'))).toBeCloseTo(480, 3);
    expect(bench.known('seat-load')?.marks).toContain('outer and inner spring added');
  });

  it('says no load while the step or a second load of the inner spring is wanted', () => {
    const marksOf = (limits: Parameters<typeof valveBench>[1]) => valveBench([set], limits).known('seat-load');

    expect(marksOf([...OUTER, ...INNER])).toMatchObject({ value: null });
    expect(marksOf([...OUTER, ...STEP, ...INNER.slice(0, 2)])).toMatchObject({ value: null });
    expect(marksOf([...OUTER, ...INNER])?.marks.join()).toContain('0 for alike');
  });

  it('tested together is not counted twice', () => {
    const pair: Typed[] = [
      ['spring-load-1', '150', 'lbf'],
      ['spring-load-2', '390', 'lbf'],
    ];
    const bench = valveBench([set, ...pair], [...OUTER, ...INNER, ...STEP]);

    expect(pounds(bench.value('seat-load'))).toBeCloseTo(149.52, 2);
    expect(bench.known('seat-load')?.marks).toContain('tested as a pair');
    // 150 of 110 + 40: as strong as the sheet wants the pair to be.
    expect(bench.value('spring-strength')).toBe(10_000);
  });

  it('never bears less than its outer spring, and falls with height (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1300, max: 1900 }), fc.integer({ min: 0, max: 100 }), (thou, more) => {
        const at = (height: number, limits: Parameters<typeof valveBench>[1]) =>
          valveBench([['installed-height', (height / 1000).toFixed(3), 'in']], limits).value('seat-load') ?? Number.NaN;
        const pair = [...OUTER, ...INNER, ...STEP];

        // The inner one is out of load past 1.950 in; up to there it adds.
        expect(at(thou, pair)).toBeGreaterThanOrEqual(at(thou, OUTER) - 1);
        expect(at(thou + more, pair)).toBeLessThanOrEqual(at(thou, pair));
      }),
      { numRuns: 40 },
    );
  });
});

describe('a spring tested at one height', () => {
  it('keeps its weakness: the line of the sheet moved to what was read (common practice, no source)', () => {
    const weak: Typed = ['spring-load-1', '95', 'lbf'];
    const limits = [...OUTER, limitOf('seat-load', 'lbf', { low: '100' })];
    const bench = valveBench([set, weak], limits);

    expect(pounds(bench.value('seat-load'))).toBeCloseTo(94.68, 3);
    expect(bench.verdict('seat-load')).toBe('fail');
    expect(bench.known('seat-load')?.marks.join()).toContain('tested at one height');
    expect(valveBench([set], limits).verdict('seat-load')).toBe('pass');
  });

  it('without a sheet takes its free length, and says that this is rougher', () => {
    const bench = valveBench([
      ['installed-height', '1.938', 'in'],
      ['spring-free-length', '2.250', 'in'],
      ['spring-load-1', '36', 'lbf'],
      ['spring-height-1', '1.938', 'in'],
    ]);

    expect(pounds(bench.value('seat-load'))).toBeCloseTo(36, 3);
    expect(bench.known('seat-load')?.marks.join()).toContain('rougher');
  });
});

describe('printed loads', () => {
  const bands = (a: readonly [string, string], b: readonly [string, string]) => [
    limitOf('spring-load-1', 'lbf', { low: a[0], high: a[1] }),
    limitOf('spring-load-2', 'lbf', { low: b[0], high: b[1] }),
    ...sheet(['spring-height-1', '1.492', 'in'], ['spring-height-2', '1.082', 'in']),
  ];

  it('TM 10-4320-344-24, Table 4-1: the middles of both bands give 217.07 lbf/in', () => {
    expect(perInch(valveBench([], bands(['45', '51'], ['130', '144'])).value('spring-rate'))).toBeCloseTo(217.073, 2);
  });

  it('TM 9-4940-549-14&P, page 12-14: 14.63 lbf/in from its bands, and a warning beside every load', () => {
    const bench = valveBench([['installed-height', '1.492', 'in']], bands(['72', '82'], ['80', '86']));

    expect(perInch(bench.value('spring-rate'))).toBeCloseTo(14.63, 2);
    expect(bench.known('seat-load')?.marks).toContain('loads of the sheet look wrong');
    expect(bench.value('seat-load')).toBe(measureOf('77', 'lbf'));
  });

  it('a load at the height it is printed for is the printed one', () => {
    const bench = valveBench([['installed-height', '1.492', 'in']], bands(['45', '51'], ['130', '144']));

    expect(bench.value('seat-load')).toBe(measureOf('48', 'lbf'));
    expect(bench.value('height-with-shim')).toBe(inch('1.492'));
  });
});
