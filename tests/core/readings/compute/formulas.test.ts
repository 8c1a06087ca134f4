import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import { id } from '#core/kernel/ids.ts';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { FORMULAS } from '#core/readings/compute/formulas.ts';
import type { Facts, Limit, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';

const valve: Spot = {
  id: id<'spot'>(1),
  kind: 'valve',
  label: '1E',
  benchOrder: 1,
  row: 1,
  bank: 'none',
  cylinder: 1,
  side: 'E',
};
const cylinder: Spot = { ...valve, kind: 'cylinder', label: '3', side: null };

type Typed = readonly [quantity: string, typed: string, more?: Partial<Reading>];

/** What a quantity comes to at one place, in base units; null when it cannot be said. */
function compute(
  quantity: string,
  readings: readonly Typed[],
  {
    spot = valve,
    unit = 'in',
    limits = [],
    stage = 'after',
    guard = false,
  }: Readonly<{
    spot?: Spot | null;
    unit?: UnitCode;
    limits?: readonly Limit[];
    stage?: 'before' | 'after';
    guard?: boolean;
  }> = {},
) {
  const facts: Facts = factsOf({
    spots: [valve, cylinder],
    limits,
    guard,
    readings: readings.map(([code, typed, more]) => readingOf(code, typed, unit, { spot: spot?.id ?? null, ...more })),
  });
  return openBench(facts).known(quantity, spot, null, stage)?.value ?? null;
}
const inch = (text: string) => measureOf(text, 'in');

describe('FORMULAS', () => {
  it('has one for every computed quantity of the catalogue, and no other', () => {
    const wanted = new Set(QUANTITIES.flatMap((it) => it.derived ?? []));

    expect([...Object.keys(FORMULAS)].toSorted()).toEqual([...wanted].toSorted());
  });

  it('guide clearance: 0.3438 less 0.3412 is 0.0026 in (exact arithmetic)', () => {
    const clearance = compute('guide-clearance', [
      ['guide-id', '0.3438', { point: 'mid' }],
      ['stem', '0.3412'],
    ]);

    expect(clearance).toBe(inch('0.0026'));
  });

  it('guide clearance: the largest of the depths counts, bell-mouth is how far they differ (common practice)', () => {
    const readings: Typed[] = [
      ['guide-id', '0.3441', { point: 'top' }],
      ['guide-id', '0.3439', { point: 'mid' }],
      ['guide-id', '0.3443', { point: 'bot' }],
      ['stem', '0.3412'],
    ];

    expect(compute('guide-clearance', readings)).toBe(inch('0.0031'));
    expect(compute('bell-mouth', readings)).toBe(inch('0.0004'));
  });

  it('guide clearance after work is never made of a guide read before it', () => {
    const readings: Typed[] = [
      ['guide-id', '0.3441', { point: 'top', stage: 'before' }],
      ['stem', '0.3412'],
    ];

    expect(compute('guide-clearance', readings)).toBeNull();
    expect(compute('guide-clearance', readings, { stage: 'before' })).toBe(inch('0.0029'));
  });

  // Sizes as printed in TM 5-6115-400-35, Table 2.1: the extremes of insert and bore.
  it.each([
    ['tightest', '1.6455', '1.6415', '0.004'],
    ['loosest', '1.6445', '1.6425', '0.002'],
    ['exhaust, tightest', '1.6110', '1.6075', '0.0035'],
    ['exhaust, loosest', '1.6105', '1.6085', '0.0020'],
  ])('TM 5-6115-400-35, Table 2.1: insert fit, %s', (_, insert, bore, expected) => {
    const fit = compute('insert-interference', [
      ['insert-od', insert, { stage: 'before' }],
      ['counterbore-id', bore, { stage: 'before' }],
    ]);

    expect(fit).toBe(inch(expected));
  });

  it('vacuum fall: 25 to 14 inHg is 11 (exact arithmetic)', () => {
    const fall = compute(
      'vacuum-hold',
      [
        ['vacuum-start', '25'],
        ['vacuum-end', '14'],
      ],
      { unit: 'inHg' },
    );

    expect(Math.abs((fall ?? 0) - measureOf('11', 'inHg'))).toBeLessThanOrEqual(1);
  });

  // Readings of a worn cylinder; the sums are exact arithmetic.
  it.each([
    ['3', ['3.9572', '3.9544', '3.9514', '3.9539', '3.9525', '3.9509'], '0.0058', '0.0033', '0.0072'],
    ['1', ['3.9562', '3.9538', '3.9512', '3.9535', '3.9522', '3.9508'], '0.0050', '0.0027', '0.0062'],
  ])('bore of cylinder %s: taper, out of round, wear', (_, sizes, taper, round, wear) => {
    const points = ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'];
    const readings = sizes.map(
      (typed, index): Typed => ['bore', typed, { point: points[index] ?? '', stage: 'before' }],
    );
    const limits = [limitOf('bore', 'in', { target: '3.9500', stage: 'before' })];
    const at = (quantity: string, rows: readonly Typed[] = readings) =>
      compute(quantity, rows, { spot: cylinder, stage: 'before', limits });

    expect(at('bore-taper')).toBe(inch(taper));
    expect(at('bore-out-of-round')).toBe(inch(round));
    expect(at('bore-wear')).toBe(inch(wear));
    expect(at('bore-taper', readings.slice(1))).toBeNull();
  });

  it('swapping the axes of a bore leaves taper and out of round as they are (property)', () => {
    const size = fc.integer({ min: 39_500, max: 39_600 }).map((tenths) => (tenths / 10_000).toFixed(4));
    const points = ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'];
    const rows = (sizes: readonly string[]) =>
      sizes.map((typed, index): Typed => ['bore', typed, { point: points[index] ?? '', stage: 'before' }]);

    fc.assert(
      fc.property(fc.array(size, { minLength: 6, maxLength: 6 }), (sizes) => {
        const swapped = [...sizes.slice(3), ...sizes.slice(0, 3)];
        for (const quantity of ['bore-taper', 'bore-out-of-round']) {
          const at = (it: readonly string[]) => compute(quantity, rows(it), { spot: cylinder, stage: 'before' });

          expect(at(swapped)).toBe(at(sizes));
        }
      }),
      { numRuns: 30 },
    );
  });

  it('piston clearance: the bore across at mid depth less the piston (exact arithmetic)', () => {
    const clearance = compute(
      'piston-clearance',
      [
        ['bore', '3.9700', { point: 'mid-x' }],
        ['piston-size', '3.9675', { stage: 'before' }],
      ],
      { spot: cylinder },
    );

    expect(clearance).toBe(inch('0.0025'));
  });

  it('spring strength: tested load as a share of the sheet’s at the same height (nine tenths: common practice)', () => {
    const limits = [
      limitOf('spring-load-1', 'lbf', { target: '110' }),
      limitOf('spring-height-1', 'in', { target: '1.700' }),
      limitOf('spring-load-2', 'lbf', { target: '270' }),
      limitOf('spring-height-2', 'in', { target: '1.200' }),
    ];
    const test = (load: string) => compute('spring-strength', [['spring-load-1', load]], { unit: 'lbf', limits });

    expect(test('99')).toBe(9000);
    expect(compute('spring-strength', [], { limits })).toBeNull();
  });

  it('computes nothing out of nothing', () => {
    for (const quantity of QUANTITIES.filter((it) => it.derived !== null)) {
      const spot = quantity.spotKind === 'cylinder' ? cylinder : quantity.spotKind === null ? null : valve;

      expect(compute(quantity.code, [], { spot })).toBeNull();
    }
  });
});
