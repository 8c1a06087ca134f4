import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { basisPoints, cents, factor, priceE4 } from '#core/kernel/units.ts';
import {
  type CastingFacts,
  type FactorRow,
  factorsInForce,
  isTaxed,
  type RateRow,
  rateInForce,
  type TaxRow,
  taxesInForce,
} from '#core/rates/compute.ts';

const rate = (price: number, from: string, list = 'standard'): RateRow => ({
  list,
  price: priceE4(price),
  lineMinimum: cents(0),
  from: day(from),
});

describe('rateInForce', () => {
  const rows = [rate(90, '2026-03-01'), rate(80, '2026-01-01'), rate(70, '2026-02-01', 'trade')];
  it.each([
    ['2025-12-31', 'standard', undefined],
    ['2026-02-28', 'standard', 80],
    ['2026-03-01', 'standard', 90],
    ['2026-01-15', 'trade', 80],
    ['2026-03-01', 'trade', 70],
    ['2026-03-01', 'nobody', 90],
  ])('on %s from list %s is %s', (on, list, price) => {
    expect(rateInForce(rows, list, day(on))?.price).toBe(price);
  });
});

const row = (code: string, value: number, more: Partial<FactorRow>): FactorRow => ({
  code,
  factor: factor(value),
  whenFact: 'material',
  whenValue: 'aluminium',
  from: day('2026-01-01'),
  until: null,
  touches: ['surface-head'],
  ...more,
});

describe('factorsInForce', () => {
  const on = day('2026-03-09');
  const facts: CastingFacts = { metal: 'aluminium', camLayout: 'dohc', heavyDiesel: false, closeTolerance: true };
  const rows = [
    row('aluminium', 11_500, {}),
    row('dohc', 14_000, { whenFact: 'cam_layout', whenValue: 'dohc', touches: ['assemble-head'] }),
    row('heavy-diesel', 15_000, { whenFact: 'heavy_diesel', whenValue: '1' }),
    row('close-tolerance', 15_000, { whenFact: 'close_tolerance', whenValue: '1' }),
  ];

  it('takes those that touch the operation and hold on the casting', () => {
    expect(factorsInForce(rows, 'surface-head', facts, on).map((f) => f.code)).toEqual([
      'aluminium',
      'close-tolerance',
    ]);
    expect(factorsInForce(rows, 'assemble-head', facts, on).map((f) => f.code)).toEqual(['dohc']);
    expect(factorsInForce(rows, 'vacuum-test', facts, on)).toEqual([]);
  });

  it('takes no metal factor where the metal is not known', () => {
    expect(factorsInForce(rows, 'surface-head', { ...facts, metal: 'not_known' }, on).map((f) => f.code)).toEqual([
      'close-tolerance',
    ]);
  });

  it('keeps to first and last day, both included', () => {
    const ended = [row('aluminium', 11_500, { from: day('2026-02-01'), until: day('2026-03-09') })];
    expect(factorsInForce(ended, 'surface-head', facts, on)).toHaveLength(1);
    expect(factorsInForce(ended, 'surface-head', facts, day('2026-03-10'))).toEqual([]);
    expect(factorsInForce(ended, 'surface-head', facts, day('2026-01-31'))).toEqual([]);
  });
});

const tax = (code: string, bp: number, from: string, until: string | null = null): TaxRow => ({
  code,
  words: code,
  bp: basisPoints(bp),
  from: day(from),
  until: until === null ? null : day(until),
  classes: ['part'],
});

describe('taxesInForce', () => {
  it('takes the latest row of each code and leaves out what ended', () => {
    const rows = [
      tax('state', 600, '2024-01-01'),
      tax('state', 700, '2026-01-01'),
      tax('old', 100, '2020-01-01', '2025-12-31'),
    ];
    expect(taxesInForce(rows, day('2026-03-09')).map((t) => [t.code, t.bp])).toEqual([['state', 700]]);
    expect(taxesInForce(rows, day('2025-12-31')).map((t) => [t.code, t.bp])).toEqual([
      ['state', 600],
      ['old', 100],
    ]);
  });
});

describe('isTaxed', () => {
  // Source: Idaho State Tax Commission, guide "Repair Shops".
  it('taxes a combined line whole where its part is taxed, and not otherwise', () => {
    expect(isTaxed({ classes: ['part'] }, 'combined')).toBe(true);
    expect(isTaxed({ classes: ['labour_fabrication'] }, 'combined')).toBe(true);
    expect(isTaxed({ classes: ['fee'] }, 'combined')).toBe(false);
    expect(isTaxed({ classes: ['part'] }, 'labour_repair')).toBe(false);
  });
});
