import { describe, expect, it } from 'vitest';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { LEAK_METHODS } from '#core/catalogue/compute/limits-by-word.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { LEAK_FORMULAS } from '#core/readings/compute/formulas/leak-tests.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { factsOf, limitOf, toolOf } from '#tests/kit/bench-facts.ts';
import { castingWith, lookAt, type Typed } from '#tests/kit/look-at.ts';

/** What every shop starts with, as limits of the workspace. */
const shop = SHOP_LIMITS.map(({ quantity, stage, side, low, high, target, unit, sourceWords }) =>
  limitOf(quantity, unit, { stage, side, low, high, target, sourceWords, forWhat: 'shop' }),
);
const test = (held: string, end: string, minutes: string): readonly Typed[] => [
  ['pressure-held', held, 'psi'],
  ['pressure-end', end, 'psi'],
  ['leak-minutes', minutes, 'min'],
];
const verdictOf = (readings: readonly Typed[], quantity: string, kind = 'head') => {
  const facts = castingWith(readings, { limits: shop });
  const bench = openBench({ ...facts, casting: { ...facts.casting, kind } });
  return bench.verdict(quantity, 'after', null, bench.known(quantity, null, null, 'after')).name;
};

describe('LEAK_FORMULAS', () => {
  it('a fall of 1.0 psi in 10 minutes stays 1.0, in 5 minutes it is 2.0, in an hour a sixth (exact arithmetic)', () => {
    const fall = (minutes: string) => lookAt(castingWith(test('40', '39', minutes)), 'pressure-fall')?.value;

    expect(fall('10')).toBe(measureOf('40', 'psi') - measureOf('39', 'psi'));
    expect(fall('5')).toBe(2 * (fall('10') ?? 0));
    expect(Math.abs((fall('60') ?? 0) * 6 - (fall('10') ?? 0))).toBeLessThanOrEqual(3);
  });

  it('claims no fall without a time, and none without both pressures', () => {
    const [held, end] = test('40', '39', '10');

    expect(lookAt(castingWith(test('40', '39', '10').slice(0, 2)), 'pressure-fall')).toMatchObject({
      value: null,
      marks: ['say how long it stood under pressure'],
    });
    expect(lookAt(castingWith(held ? [held] : []), 'pressure-fall')).toBeNull();
    expect(lookAt(castingWith(end ? [end] : []), 'pressure-fall')).toBeNull();
    expect(lookAt(castingWith(test('40', '39', '0')), 'pressure-fall')?.value).toBeNull();
  });

  it('the doubt of two pressures grows with the time they are stretched to (root of the sum of squares)', () => {
    const gauge = toolOf({ unit: 'psi', uncertainty: 3_000_000 });
    const read = test('40', '39', '5').map(([code, typed, unit]): Typed => [code, typed, unit, { tool: gauge.id }]);

    expect(lookAt(castingWith(read, { tools: [gauge] }), 'pressure-fall')?.uncertainty).toBe(2 * 4_242_641);
    expect(Object.keys(LEAK_FORMULAS)).toEqual(['pressure-fall']);
  });
});

describe('the limits a shop starts with', () => {
  it('air may fall 1 psi in 10 minutes (from memory); of another method the fall says nothing', () => {
    const decay: Typed = ['leak-method', LEAK_METHODS.decay, null];
    const bath: Typed = ['leak-method', LEAK_METHODS.bath, null];

    expect(verdictOf([decay, ...test('40', '39', '10')], 'pressure-fall')).toBe('pass');
    expect(verdictOf([decay, ...test('40', '38', '10')], 'pressure-fall')).toBe('fail');
    expect(verdictOf([bath, ...test('40', '38', '10')], 'pressure-fall')).toBe('no limit known');
  });

  it('water with dye stands two hours at 40 psi (TM 5-3895-359-14&P), air ten minutes (from memory)', () => {
    const minutes = (method: string, time: string) =>
      verdictOf([['leak-method', method, null], ...test('40', '40', time)], 'leak-minutes');

    expect([minutes(LEAK_METHODS.dye, '119'), minutes(LEAK_METHODS.dye, '120')]).toEqual(['fail', 'pass']);
    expect([minutes(LEAK_METHODS.decay, '9'), minutes(LEAK_METHODS.decay, '10')]).toEqual(['fail', 'pass']);
  });

  it('heads at 20 to 60 psi (common practice, no source), blocks up to 100 (TM 5-3810-295-34)', () => {
    const at = (pressure: string, kind: string) =>
      verdictOf([['pressure-held', pressure, 'psi']], 'pressure-held', kind);

    expect([at('15', 'head'), at('40', 'head'), at('80', 'head')]).toEqual(['fail', 'pass', 'fail']);
    expect([at('80', 'block'), at('110', 'block')]).toEqual(['pass', 'fail']);
  });

  it('blocks in water of 180 to 200 °F (TM 5-3895-359-14&P): 82 °C is too cold by a hair, 90 °C is right', () => {
    const water = (typed: string, unit: 'degC' | 'degF') =>
      verdictOf([['water-temperature', typed, unit]], 'water-temperature', 'block');

    expect([water('180', 'degF'), water('90', 'degC'), water('201', 'degF')]).toEqual(['pass', 'pass', 'fail']);
  });

  it('dye stays 10 to 30 minutes, particles are driven in two directions (ASTM E1417, from memory; common practice)', () => {
    expect([
      verdictOf([['dye-dwell', '9', 'min']], 'dye-dwell'),
      verdictOf([['dye-dwell', '10', 'min']], 'dye-dwell'),
    ]).toEqual(['fail', 'pass']);
    expect(verdictOf([['magnet-directions', '1', 'count']], 'magnet-directions')).toBe('fail');
    expect(verdictOf([['magnet-directions', '2', 'count']], 'magnet-directions')).toBe('pass');
  });
});

describe('the tables of crack and leak tests', () => {
  it('say the usual cautions on every sheet: shields and relief valve', () => {
    const table = findBenchTable('leak-test');
    const sheet = table && composeSheet(factsOf(), table);

    expect(sheet?.notes.join(' ')).toMatch(/shield .*relief valve/);
    expect(sheet?.rows.map((row) => row.quantity)).toContain('leak-places');
  });

  it('offer no magnet method on aluminium', () => {
    const table = findBenchTable('crack-magnet');
    const choices = (material: string) =>
      table && composeSheet(castingWith([], { material }), table).rows[0]?.choices.length;

    expect([choices('iron_grey'), choices('aluminium')]).toEqual([3, 0]);
  });
});
