import { describe, expect, it } from 'vitest';
import { BENCH_TABLES, findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { LIFTING_FORMULAS } from '#core/readings/compute/formulas/lifting.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { castingWith, lookAt, type Typed } from '#tests/kit/look-at.ts';

const shop = SHOP_LIMITS.map(({ quantity, stage, side, low, high, target, unit, sourceWords }) =>
  limitOf(quantity, unit, { stage, side, low, high, target, sourceWords, forWhat: 'shop' }),
);
/** The lift of the worked example, in millimetres and degrees. */
const lift = (more: Readonly<Record<string, string>> = {}): Typed[] => {
  const typed = { 'lift-h': '400.0', 'lift-v': '600.0', 'lift-d': '600.0', ...more };
  return [
    ...Object.entries(typed).map(([code, figure]): Typed => [code, figure, 'mm']),
    ['lift-a', '30', 'deg'],
    ['lift-coupling', 'fair', null],
  ];
};
const head = (grams: number | null, readings: readonly Typed[]) => {
  const facts = castingWith(readings, { limits: shop });
  return { ...facts, casting: { ...facts.casting, weight: grams } };
};
const value = (readings: readonly Typed[], quantity: string, grams: number | null = 26_000) =>
  lookAt(head(grams, readings), quantity);

describe('LIFTING_FORMULAS', () => {
  it('an iron head of 26 kg, H 40, V 60, D 60, A 30, fair grip: limit 10.55 kg, index 2.46 (NIOSH 94-110, formula)', () => {
    expect(Math.abs((value(lift(), 'lift-limit')?.value ?? 0) - 10_552)).toBeLessThanOrEqual(1);
    expect(Math.abs((value(lift(), 'lift-index')?.value ?? 0) - 24_640)).toBeLessThanOrEqual(10);
    expect(value(lift(), 'lift-limit')?.marks).toEqual(['lifted seldom']);
  });

  it('says the class of its weight: to 15 kg one person, to 25 with care, to 45 two, then a hoist (common practice, no source)', () => {
    const said = (grams: number) => value([], 'lift-weight', grams)?.marks[0];

    expect([15_000, 25_000, 45_000, 45_001].map(said)).toEqual([
      'weight of the casting as known: one person',
      'weight of the casting as known: one person, lift with care',
      'weight of the casting as known: two people',
      'weight of the casting as known: use a hoist',
    ]);
    expect(value([], 'lift-weight', null)).toBeNull();
  });

  it('a weight from the scale goes before the one of its type', () => {
    expect(value([['lift-weight', '20', 'kg']], 'lift-weight')?.value).toBe(20_000);
  });

  it('says what is still needed, and nothing at all before a first figure', () => {
    expect(value([], 'lift-limit')).toBeNull();
    expect(value([['lift-h', '400.0', 'mm']], 'lift-limit')?.marks[0]).toBe(
      'still needed: hands above the floor, body turned by (0 for not at all), lifted up or down by, grip',
    );
    expect(
      value(
        lift().filter(([code]) => code !== 'lift-coupling'),
        'lift-limit',
      )?.value,
    ).toBeNull();
  });

  it('a limit of 0 says do not lift by hand, and has no index (NIOSH 94-110, pp. 8 and 12)', () => {
    const far = lift({ 'lift-h': '640.0' });
    const bench = openBench(head(26_000, far));
    const known = bench.known('lift-limit', null, null, 'after');

    expect(known).toMatchObject({ value: 0 });
    expect(known?.marks).toContain('do not lift by hand');
    expect(bench.verdict('lift-limit', 'after', null, known)).toMatchObject({ name: 'fail', direction: 'under' });
    expect(value(far, 'lift-index')).toMatchObject({ value: null, marks: ['do not lift by hand'] });
  });

  it('the lower of start and end counts where it is set down with care (NIOSH 94-110, pp. 21 and 26)', () => {
    const start = value(lift(), 'lift-limit')?.value ?? 0;
    const placed = value(lift({ 'lift-h-end': '500.0', 'lift-v-end': '1200.0' }), 'lift-limit');

    expect(placed?.value).toBeLessThan(start);
    expect(placed?.marks).toContain('the lower of start and end');
    expect(value(lift({ 'lift-h-end': '250.0', 'lift-v-end': '750.0' }), 'lift-limit')?.value).toBe(start);
  });

  it('takes the way from the two heights where it was not measured (exact arithmetic)', () => {
    const heights = lift({ 'lift-v-end': '1200.0' });
    const without = heights.filter(([code]) => code !== 'lift-d');

    expect(value(without, 'lift-limit')?.value).toBe(value(heights, 'lift-limit')?.value);
  });

  it('three lifts a minute for an hour allow 0.88 of it, and for a shift less (NIOSH 94-110; table from memory)', () => {
    const often: Typed = ['lift-count', '45', 'count'];
    const shift: Typed = ['lift-duration', '2 to 8 hours', null];
    const seldom = value(lift(), 'lift-limit')?.value ?? 0;

    expect(Math.abs((value([...lift(), often], 'lift-limit')?.value ?? 0) - seldom * 0.88)).toBeLessThanOrEqual(1);
    expect(Math.abs((value([...lift(), often, shift], 'lift-limit')?.value ?? 0) - seldom * 0.55)).toBeLessThanOrEqual(
      1,
    );
  });

  it('an index above 1 is too heavy for this lift, up to 1 passes (NIOSH 94-110)', () => {
    const table = findBenchTable('lifting');
    const word = (grams: number) =>
      table &&
      composeSheet(head(grams, lift()), table).rows.find((row) => row.quantity === 'lift-index')?.cells[0]?.word;

    expect([word(26_000), word(10_000)]).toEqual(['too heavy for this lift', 'pass']);
  });

  it('every kind of casting has the table, on no paper of a customer, and it defers to local rules', () => {
    const tables = BENCH_TABLES.filter((it) => it.rows.some((row) => row.quantity === 'lift-limit'));

    expect(new Set(tables.map((it) => it.castingKind)).size).toBe(8);
    expect(tables.every((it) => it.offPaper && it.notes?.join(' ').includes('Local rules'))).toBe(true);
    expect(Object.keys(LIFTING_FORMULAS)).toHaveLength(3);
  });
});

describe('what is read at the wash', () => {
  const verdict = (quantity: string, typed: string, unit: 'psi' | 'ratio') => {
    const bench = openBench(head(null, [[quantity, typed, unit]]));
    return bench.verdict(quantity, 'after', null, bench.known(quantity, null, null, 'after')).name;
  };

  it('air for cleaning of 30 psi or more is too high (29 CFR 1910.242(b))', () => {
    expect(['29', '30', '90'].map((typed) => verdict('cleaning-air', typed, 'psi'))).toEqual(['pass', 'fail', 'fail']);
  });

  it('a spent bath of pH 12.5 or more, 2 or less, is hazardous waste in the USA (40 CFR 261.22(a)(1), D002)', () => {
    expect(['2.0', '2.5', '9', '12.4', '12.5', '13'].map((typed) => verdict('spent-bath', typed, 'ratio'))).toEqual([
      'fail',
      'pass',
      'pass',
      'pass',
      'fail',
      'fail',
    ]);
  });
});
