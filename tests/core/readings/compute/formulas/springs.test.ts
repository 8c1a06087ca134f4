import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { limitOf, valves } from '#tests/kit/bench-facts.ts';
import { inch, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const SPRING = sheet(
  ['spring-load-1', '110', 'lbf'],
  ['spring-height-1', '1.700', 'in'],
  ['spring-load-2', '270', 'lbf'],
  ['spring-height-2', '1.200', 'in'],
  ['valve-lift', '0.480', 'in'],
);
const set: Typed = ['installed-height', '1.701', 'in'];
const pounds = (value: number | null) => (value ?? Number.NaN) / measureOf('1', 'lbf');

describe('loads and room of one valve', () => {
  const bench = valveBench(
    [set],
    [
      ...SPRING,
      ...sheet(['solid-height', '1.090', 'in'], ['seal-gap', '0.560', 'in']),
      limitOf('coil-bind-clearance', 'in', { low: '0.060' }),
      limitOf('seal-clearance', 'in', { low: '0.050' }),
    ],
  );

  it('seat load 109.68 and open load 263.28 lbf at 1.701 in with 0.480 of lift (exact mathematics)', () => {
    expect(pounds(bench.value('seat-load'))).toBeCloseTo(109.68, 3);
    expect(pounds(bench.value('open-load'))).toBeCloseTo(263.28, 3);
    expect(bench.value('open-height')).toBe(inch('1.221'));
  });

  it('0.131 in before the coils touch, 0.551 in of lift at most, 0.080 in at the seal (exact mathematics)', () => {
    expect(bench.value('coil-bind-clearance')).toBe(inch('0.131'));
    expect(bench.value('greatest-lift')).toBe(inch('0.551'));
    expect(bench.value('seal-clearance')).toBe(inch('0.080'));
    expect([bench.verdict('coil-bind-clearance'), bench.verdict('seal-clearance')]).toEqual(['pass', 'pass']);
  });

  it('without a solid height takes all coils of wire, and says so (from memory)', () => {
    const coils = valveBench(
      [set],
      [...SPRING, ...sheet(['wire-diameter', '0.177', 'in'], ['total-coils', '6.5', 'ratio'])],
    );

    // 1.701 - 0.480 - 6.5 x 0.177
    expect(coils.value('coil-bind-clearance')).toBe(inch('0.0705'));
    expect(coils.known('coil-bind-clearance')?.marks).toContain('solid height from coils and wire, not measured');
  });

  it('is never a pass without a height (common practice, no source)', () => {
    const empty = valveBench([], [...SPRING, limitOf('coil-bind-clearance', 'in', { low: '0.060' })]);

    expect(empty.verdict('coil-bind-clearance')).toBe('not measured');
  });
});

describe('the springs of a head', () => {
  const tested = (...loads: readonly string[]): Typed[] =>
    loads.map((typed, index) => ['spring-load-1', typed, 'lbf', { at: `${index + 1}E` }]);
  const three = { spots: valves('1E', '2E', '3E') };
  const limits = [limitOf('spring-match', 'ratio', { low: '0.90' }), limitOf('spring-set', 'ratio', { low: '0.90' })];

  it('match while the weakest bears nine tenths of the strongest (common practice, no source)', () => {
    const bench = valveBench(tested('100', '92', '89'), limits, three);

    expect(['1E', '2E', '3E'].map((at) => bench.value('spring-match', at))).toEqual([10_000, 9200, 8900]);
    expect(['1E', '2E', '3E'].map((at) => bench.verdict('spring-match', at))).toEqual(['pass', 'pass', 'fail']);
    expect([bench.value('spring-set'), bench.verdict('spring-set', null)]).toEqual([8900, 'fail']);
  });

  it('are compared by their share where the sheet wants different loads of intake and exhaust', () => {
    const data = sheet(['spring-height-1', '1.700', 'in']);
    const wanted = (['I', 'E'] as const).map((side, index) =>
      limitOf('spring-load-1', 'lbf', { target: index === 0 ? '60' : '100', side }),
    );
    const bench = valveBench(
      [
        ['spring-load-1', '60', 'lbf', { at: '1I' }],
        ['spring-load-1', '95', 'lbf', { at: '1E' }],
      ],
      [...limits, ...data, ...wanted],
      { spots: valves('1I', '1E') },
    );

    expect(bench.value('spring-match', '1E')).toBe(9500);
    expect(bench.verdict('spring-match', '1I')).toBe('pass');
  });

  it('are no set while one alone was tested', () => {
    const bench = valveBench(tested('100'), limits, three);

    expect(bench.verdict('spring-match', '1E')).toBe('not measured');
    expect(bench.verdict('spring-set', null)).toBe('not measured');
  });

  it('heights with shims are spread by the greatest less the least', () => {
    const heights: Typed[] = ['1.701', '1.705', '1.696'].map((typed, index) => [
      'installed-height',
      typed,
      'in',
      { at: `${index + 1}E` },
    ]);
    const bench = valveBench(heights, [...SPRING, limitOf('height-spread', 'in', { high: '0.010' })], three);

    expect([bench.value('height-spread'), bench.verdict('height-spread', null)]).toEqual([inch('0.009'), 'pass']);
    expect(pounds(bench.value('seat-load-spread'))).toBeCloseTo(2.88, 3);
  });
});

describe('rocker-clearance', () => {
  it('is at least 0.040 in (common practice, no source)', () => {
    const limits = [limitOf('rocker-clearance', 'in', { low: '0.040' })];
    const at = (typed: readonly Typed[]) => valveBench(typed, limits).verdict('rocker-clearance');

    expect([at([['rocker-clearance', '0.040', 'in']]), at([['rocker-clearance', '0.039', 'in']]), at([])]).toEqual([
      'pass',
      'fail',
      'not measured',
    ]);
  });
});
