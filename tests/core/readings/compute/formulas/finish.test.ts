import { describe, expect, it } from 'vitest';
import { findBenchTable } from '#core/catalogue/compute/bench-tables.ts';
import { GASKETS } from '#core/catalogue/compute/limits-by-word.ts';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { readEntry } from '#core/readings/compute/entry.ts';
import { FINISH_FORMULAS } from '#core/readings/compute/formulas/finish.ts';
import { placeAt } from '#core/readings/compute/place.ts';
import { composeSheet } from '#core/readings/compute/sheet.ts';
import { limitOf, toolOf } from '#tests/kit/bench-facts.ts';
import { castingWith, lookAt, type Typed } from '#tests/kit/look-at.ts';

const uin = (text: string) => measureOf(text, 'uin');
const shop = SHOP_LIMITS.map(({ quantity, stage, side, low, high, target, unit, sourceWords }) =>
  limitOf(quantity, unit, { stage, side, low, high, target, sourceWords, forWhat: 'shop' }),
);
type More = Parameters<typeof castingWith>[1];
const finish = (readings: readonly Typed[], more: More = {}) => {
  const table = findBenchTable('finish');
  if (!table) throw new Error('no table');
  return composeSheet(castingWith(readings, { limits: shop, ...more }), table);
};
const cellOf = (sheet: ReturnType<typeof finish>, quantity: string) =>
  sheet.rows.find((row) => row.quantity === quantity)?.cells[0];
/** Word and direction of the finish for a gasket. */
const judged = (gasket: string, ra: string, unit: 'uin' | 'um' = 'uin', more: More = {}) =>
  cellOf(
    finish(
      [
        ['gasket-kind', gasket, null],
        ['finish-ra', ra, unit],
      ],
      more,
    ),
    'finish-ra',
  )?.word;

describe('finish by gasket', () => {
  it.each([
    [GASKETS.mls, ['30', '31', '60', '61'], ['pass', 'ask gasket maker', 'ask gasket maker', 'too rough']],
    [GASKETS.composition, ['29', '30', '110', '111'], ['too smooth', 'pass', 'pass', 'too rough']],
    [GASKETS.soft, ['29', '30', '110', '111'], ['too smooth', 'pass', 'pass', 'too rough']],
    ['other', ['20'], ['no limit known']],
  ])('%s: bands both ways, ends included (common practice, no source)', (gasket, figures, words) => {
    expect(figures.map((ra) => judged(gasket, ra))).toEqual(words);
  });

  it('a diesel face of 60 µin is too smooth, 75 to 130 passes (TM 9-2815-255-24)', () => {
    expect(['60', '75', '130', '131'].map((ra) => judged(GASKETS.diesel, ra))).toEqual([
      'too smooth',
      'pass',
      'pass',
      'too rough',
    ]);
  });

  it('Ra 1.0 µm passes 0.7 to 1.2 of the engine’s sheet, which goes before the shop’s band (trade library article)', () => {
    const limits = [...shop, limitOf('finish-ra', 'um', { low: '0.7', high: '1.2' })];

    expect(['1.0', '1.3', '0.6'].map((ra) => judged(GASKETS.mls, ra, 'um', { limits }))).toEqual([
      'pass',
      'too rough',
      'too smooth',
    ]);
  });

  it('goes by the gasket the counter was told, until the bench chooses another', () => {
    const said = { 'gasket-kind': GASKETS.mls };
    const read: readonly Typed[] = [['finish-ra', '80', 'uin']];

    expect(cellOf(finish(read, { said }), 'finish-ra')?.word).toBe('too rough');
    expect(judged(GASKETS.composition, '80', 'uin', { said })).toBe('pass');
    expect(finish(read, { said }).rows.find((row) => row.quantity === 'finish-ra')?.limits[0]?.source).toMatch(
      /^MLS: /,
    );
  });

  it('says what to do between the bands: ask, let a lead accept, or cut finer', () => {
    const { toDo } = finish([
      ['gasket-kind', GASKETS.mls, null],
      ['finish-ra', '45', 'uin'],
    ]);

    expect(toDo[0]?.words).toContain('ask gasket maker');
    expect(toDo[0]?.steps[0]).toContain('Only if the gasket maker says so');
  });
});

describe('FINISH_FORMULAS', () => {
  it('a face compared with a card is kept as compared, shown so, and stands for the finish', () => {
    const facts = castingWith([]);
    const bench = openBench(facts);
    const place = placeAt(bench, { quantity: 'finish-card', spot: null, point: null, stage: 'after' });
    const kept = place && readEntry(bench, place, '30', 'uin').keep;

    expect(kept).toMatchObject({ mark: 'compared', value: uin('30') });
    const sheet = finish([
      ['gasket-kind', GASKETS.composition, null],
      ['finish-card', '30', 'uin', { mark: 'compared' }],
    ]);
    expect(cellOf(sheet, 'finish-card')?.marks).toContain('compared with a card');
    expect(cellOf(sheet, 'finish-ra')).toMatchObject({ state: 'computed', word: 'pass' });
    expect(cellOf(sheet, 'finish-ra')?.marks).toContain('compared with a card, not measured');
  });

  it('what was measured goes before the card; an empty card says nothing, an empty finish is not measured', () => {
    const both: readonly Typed[] = [
      ['finish-card', '30', 'uin'],
      ['finish-ra', '42', 'uin'],
    ];

    expect(lookAt(castingWith(both), 'finish-ra')?.value).toBe(uin('42'));
    const empty = finish([['gasket-kind', GASKETS.composition, null]]);
    expect(cellOf(empty, 'finish-card')?.verdict).toBeNull();
    expect(cellOf(empty, 'finish-ra')?.word).toBe('not measured');
    expect(empty.columns[0]?.word).toBe('not measured');
    const carded = finish([['finish-card', '30', 'uin']]);
    expect(cellOf(carded, 'finish-card')).toMatchObject({ text: '30', verdict: null });
    expect(cellOf(carded, 'finish-cut-off')).toMatchObject({ text: '0.80', verdict: null });
  });

  it('Rz is estimated as 4 to 7 times Ra, says so, and only while it is not measured (common practice, no source)', () => {
    const rz = (readings: readonly Typed[], end: string) => lookAt(castingWith(readings), `finish-rz-${end}`);
    const ra: Typed = ['finish-ra', '30', 'uin'];

    expect(rz([ra], 'low')?.value).toBe(uin('120'));
    expect(rz([ra], 'high')?.value).toBe(uin('210'));
    expect(rz([ra], 'low')?.marks[0]).toMatch(/^estimated/);
    expect(rz([ra, ['finish-rz', '170', 'uin']], 'low')).toBeNull();
    expect(rz([], 'low')).toBeNull();
  });

  it('cut-off for Ra 1.0 µm: 0.8 mm over 4 mm (ISO 4288:1996); for what is expected before what was found', () => {
    const set = (readings: readonly Typed[], more: More = {}) => [
      lookAt(castingWith(readings, more), 'finish-cut-off')?.value,
      lookAt(castingWith(readings, more), 'finish-evaluation')?.value,
    ];
    const mm = (text: string) => measureOf(text, 'mm');

    expect(set([['finish-expected', '1.0', 'um']])).toEqual([mm('0.8'), mm('4')]);
    expect(set([['finish-ra', '3.2', 'um']])).toEqual([mm('2.5'), mm('12.5')]);
    expect(
      set([
        ['finish-expected', '1.0', 'um'],
        ['finish-ra', '3.2', 'um'],
      ]),
    ).toEqual([mm('0.8'), mm('4')]);
    expect(set([], { limits: [limitOf('finish-ra', 'uin', { high: '30' })] })).toEqual([mm('0.8'), mm('4')]);
    expect(set([])).toEqual([undefined, undefined]);
    expect(lookAt(castingWith([['finish-expected', '90', 'um']]), 'finish-cut-off')?.value).toBeNull();
  });

  it('a fly cutter at 0.006 in for each turn with a nose of 1/32 in leaves about 36.95 µin, as an estimate (exact mathematics)', () => {
    const cutter: readonly Typed[] = [
      ['cutter-feed', '0.006', 'in'],
      ['cutter-nose', '0.03125', 'in'],
    ];
    const ra = lookAt(castingWith(cutter), 'cutter-ra');

    expect(Math.abs((ra?.value ?? 0) / uin('1') - 36.95)).toBeLessThanOrEqual(0.05);
    expect(ra?.marks).toEqual(['estimate from feed and nose radius, not measured']);
    expect((lookAt(castingWith(cutter), 'cutter-peak')?.value ?? 0) / uin('1')).toBeCloseTo(144, 1);
  });

  it('takes table feed by turns where no feed for each turn was given: 6 in at 1000 is 0.006 (exact arithmetic)', () => {
    const cutter: readonly Typed[] = [
      ['cutter-table-feed', '6.0', 'in'],
      ['cutter-turns', '1000', 'count'],
      ['cutter-nose', '0.03125', 'in'],
    ];
    const ra = (readings: readonly Typed[]) => lookAt(castingWith(readings), 'cutter-ra')?.value;

    expect(Math.abs((ra(cutter) ?? 0) / uin('1') - 36.95)).toBeLessThanOrEqual(0.05);
    expect(ra(cutter.slice(0, 2))).toBeUndefined();
    expect(ra(cutter.slice(1))).toBeUndefined();
    expect(ra([...cutter.slice(0, 2), ['cutter-nose', '0.0', 'in']])).toBeNull();
  });

  it('the doubt of a feed counts twice its share (slope of a square)', () => {
    const feeler = toolOf({ uncertainty: measureOf('0.0001', 'in') });
    const exact = toolOf({ uncertainty: 0 });
    const cutter: readonly Typed[] = [
      ['cutter-feed', '0.010', 'in', { tool: feeler.id }],
      ['cutter-nose', '0.03125', 'in', { tool: exact.id }],
    ];
    const known = lookAt(castingWith(cutter, { tools: [feeler, exact] }), 'cutter-ra');

    // One part in a hundred of the feed is two in a hundred of Ra.
    expect((known?.uncertainty ?? 0) / (known?.value ?? 1)).toBeCloseTo(0.02, 4);
    expect(Object.keys(FINISH_FORMULAS)).toHaveLength(7);
  });
});
