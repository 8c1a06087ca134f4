import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { camRetard } from '#core/readings/compute/geometry/cam-timing.ts';
import { asNumber, base } from '#tests/kit/engine-figures.ts';

const degrees = (value: number | undefined) => asNumber(value, 'deg');
const QUICK = { cam: base('4.00', 'in'), other: null };

describe('camRetard', () => {
  it('0.020 in on a sprocket of 4.00 in: cam 0.5730 degrees (exact mathematics)', () => {
    expect(Math.abs(degrees(camRetard(base('0.020', 'in'), QUICK)?.cam) - 0.573)).toBeLessThan(0.0005);
  });

  it('the same: crank 1.1459 degrees (exact mathematics)', () => {
    expect(Math.abs(degrees(camRetard(base('0.020', 'in'), QUICK)?.crank) - 1.1459)).toBeLessThan(0.001);
  });

  it('radii 2.0 and 1.0 in, centres 9.0 in: crank 1.1388 degrees (exact mathematics)', () => {
    const other = { crank: base('2.0', 'in'), centres: base('9.0', 'in') };
    const found = camRetard(base('0.020', 'in'), { cam: base('4.0', 'in'), other });

    expect(Math.abs(degrees(found?.crank) - 1.1388)).toBeLessThan(0.001);
  });

  it('2 mm on a sprocket of 109 mm: cam 2.1026 degrees (exact mathematics; a web forum says about 1.9)', () => {
    const found = camRetard(base('2', 'mm'), { cam: base('109', 'mm'), other: null });

    expect(Math.abs(degrees(found?.cam) - 2.1026)).toBeLessThan(0.001);
  });

  it('0.25 mm on a sprocket of 100 mm: crank 0.573 degrees (exact mathematics)', () => {
    const found = camRetard(base('0.25', 'mm'), { cam: base('100', 'mm'), other: null });

    expect(degrees(found?.crank)).toBeCloseTo(0.573, 3);
  });

  it('a thicker gasket brings the cam early by as much (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_000_000 }), (drop) => {
        expect(camRetard(-drop, QUICK)?.crank ?? 1).toBe(0 - (camRetard(drop, QUICK)?.crank ?? 0));
      }),
    );
  });

  it('claims nothing for sprockets that cannot be', () => {
    const other = { crank: base('1', 'in'), centres: base('1', 'in') };

    expect(camRetard(1, { cam: base('4', 'in'), other })).toBeNull();
    expect(camRetard(1, { cam: 0, other: null })).toBeNull();
  });
});
