import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { mm, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const found = (old: string, lash: string): Typed[] => [
  ['lash-shim', old, 'mm', { stage: 'before' }],
  ['lash', lash, 'mm', { stage: 'before' }],
];
const LASH = limitOf('lash', 'mm', { low: '0.17', high: '0.23', target: '0.20' });
/** 2.00 to 3.00 mm by 0.05. */
const SIZES = [
  ...sheet(['lash-shim-step', '0.05', 'mm']),
  limitOf('lash-shim', 'mm', { low: '2.00', high: '3.00' }),
  LASH,
];

describe('lash-shim-wanted', () => {
  it('old 2.70, measured 0.28, wanted 0.20: 2.78 mm (common practice, no source)', () => {
    expect(valveBench(found('2.70', '0.28'), [LASH]).value('lash-shim-wanted')).toBe(mm('2.78'));
  });

  it('aims at the middle of the limits where no target is given, and says what is missing', () => {
    const middle = [limitOf('lash', 'mm', { low: '0.17', high: '0.23' })];

    expect(valveBench(found('2.70', '0.28'), middle).value('lash-shim-wanted')).toBe(mm('2.78'));
    expect(valveBench(found('2.70', '0.28')).known('lash-shim-wanted')).toMatchObject({ value: null });
    expect(valveBench(found('2.70', '0.28').slice(1), [LASH]).value('lash-shim-wanted')).toBeNull();
  });
});

describe('lash-shim-chosen', () => {
  it('is the nearest size, and what lash it leaves is judged (exact arithmetic)', () => {
    const bench = valveBench(found('2.70', '0.28'), SIZES);

    expect(bench.known('lash-shim-chosen')).toMatchObject({
      value: mm('2.80'),
      planned: true,
      marks: ['step of lash shim sizes from the sheet'],
    });
    expect(bench.known('lash-with-shim')).toMatchObject({ value: mm('0.18'), planned: true });
    expect(bench.verdict('lash-with-shim')).toBe('pass');
  });

  it('is the exact thickness where no sizes are known, and says so', () => {
    expect(valveBench(found('2.70', '0.28'), [LASH]).known('lash-shim-chosen')).toMatchObject({
      value: mm('2.78'),
      marks: ['exact: no list of sizes known'],
    });
  });

  it('takes the thinner of two alike, and none past the ends of the sizes', () => {
    const at = (old: string, lash: string) => valveBench(found(old, lash), SIZES).value('lash-shim-chosen');

    expect(at('2.70', '0.225')).toBe(mm('2.70'));
    expect(at('2.00', '0.05')).toBe(mm('2.00'));
    expect(at('3.00', '0.60')).toBe(mm('3.00'));
    expect(valveBench(found('3.00', '0.60'), SIZES).verdict('lash-with-shim')).toBe('fail');
  });

  it('gives way to the shim that is in, and to the lash that was measured with it', () => {
    const bench = valveBench([...found('2.70', '0.28'), ['lash-shim', '2.75', 'mm']], SIZES);

    const read = valveBench([...found('2.70', '0.28'), ['lash', '0.21', 'mm']], SIZES);

    expect(bench.known('lash-with-shim')).toMatchObject({ value: mm('0.23'), planned: false });
    expect(read.known('lash-with-shim')).toMatchObject({ value: mm('0.21'), planned: false, marks: ['measured'] });
  });

  it('never lies farther from the wanted lash than half a step, inside the sizes (property)', () => {
    const size = fc.integer({ min: 220, max: 280 }).map((it) => (it / 100).toFixed(2));
    const lash = fc.integer({ min: 0, max: 400 }).map((it) => (it / 1000).toFixed(3));

    fc.assert(
      fc.property(size, lash, (old, measured) => {
        const left = valveBench(found(old, measured), SIZES).value('lash-with-shim') ?? Number.NaN;

        expect(Math.abs(left - mm('0.20'))).toBeLessThanOrEqual(mm('0.025'));
      }),
      { numRuns: 60 },
    );
  });
});
