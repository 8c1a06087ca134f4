import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  circleOfLayer,
  circleOfSquares,
  circleOfString,
  depthOfLayer,
  discVolume,
  ringVolume,
} from '#core/readings/compute/geometry/cylinder-volume.ts';
import { asNumber, base } from '#tests/kit/engine-figures.ts';
import reference from '#tests/reference/engine-arithmetic.json' with { type: 'json' };

const inches = (bore: number | string, height: number | string) =>
  discVolume(base(bore, 'in'), base(height, 'in')).volume;
const millimetres = (bore: number, height: number) => discVolume(base(bore, 'mm'), base(height, 'mm')).volume;

const caseOf = (id: string) => {
  const found = reference.cases.find((it) => it.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return found;
};
const sizes = (id: string) => caseOf(id).inputs as { bore: number; stroke: number; cylinders: number };

describe('discVolume', () => {
  it.each([
    ['octane-test-engine-mm', 'mm', 'cc'],
    ['octane-test-engine-in', 'in', 'in3'],
    ['web-353', 'in', 'in3'],
    ['web-301', 'in', 'in3'],
    ['web-1641', 'mm', 'cc'],
  ] as const)('displacement, reference case %s: its source stands in engine-arithmetic.json', (id, unit, volume) => {
    const { bore, stroke, cylinders } = sizes(id);
    const { expected, tolerance, computed } = caseOf(id);
    const all = asNumber(discVolume(base(bore, unit), base(stroke, unit)).volume * cylinders, volume);

    expect(Math.abs(all - (expected as number))).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(all - (computed as number))).toBeLessThan(0.006);
  });

  it('room above the piston, reference case web-deck-volume (a parts dealer’s formula page, weak): 9.06 cc', () => {
    const { inputs, expected, tolerance } = caseOf('web-deck-volume');
    const { bore_in, deck_in } = inputs as { bore_in: number; deck_in: number };

    expect(Math.abs(asNumber(inches(bore_in, deck_in), 'cc') - (expected as number))).toBeLessThanOrEqual(tolerance);
  });

  it('3.950 x 3.400 in sweep 682.754 cc (exact mathematics)', () => {
    expect(asNumber(inches('3.950', '3.400'), 'cc')).toBeCloseTo(682.754, 3);
  });

  it('eight of them are 333.314 cubic inches (exact mathematics)', () => {
    expect(asNumber(8 * inches('3.950', '3.400'), 'in3')).toBeCloseTo(333.314, 2);
  });

  it('four of 86.0 x 86.0 mm are 1998.23 cc (exact mathematics)', () => {
    expect(Math.abs(asNumber(4 * millimetres(86, 86), 'cc') - 1998.23)).toBeLessThan(0.05);
  });

  it('six of 107 x 124 mm are 6690.1 cc (exact mathematics)', () => {
    expect(Math.abs(asNumber(6 * millimetres(107, 124), 'cc') - 6690.1)).toBeLessThan(0.1);
  });

  it('a gasket of 4.060 x 0.040 in holds 8.4860 cc (exact mathematics)', () => {
    expect(Math.abs(asNumber(inches('4.060', '0.040'), 'cc') - 8.486)).toBeLessThan(0.001);
  });

  it('a circle of 3.60 in loses 1.0008 cc in 0.006 in (1 cc for 0.006 in: common practice, no source)', () => {
    expect(Math.abs(asNumber(inches('3.60', '0.006'), 'cc') - 1.0008)).toBeLessThan(0.001);
    expect(Math.abs(asNumber(inches('3.60', '0.010'), 'cc') - 1.668)).toBeLessThan(0.001);
  });

  it('one inch across and one deep is 12.87 cc (a web article on milling for a 1 cc reduction prints 12.87)', () => {
    expect(Math.abs(asNumber(inches('1', '1'), 'cc') - 12.87037)).toBeLessThan(0.00001);
    expect(Math.abs(asNumber(inches('1', '1'), 'cc') - 12.87)).toBeLessThan(0.005);
  });

  it('its slopes are what a small step does (property)', () => {
    const size = fc.integer({ min: 40_000_000, max: 150_000_000 });

    fc.assert(
      fc.property(size, fc.integer({ min: 1_000_000, max: 150_000_000 }), (diameter, height) => {
        const found = discVolume(diameter, height);
        const wider = discVolume(diameter + 10_000, height).volume - found.volume;
        const higher = discVolume(diameter, height + 10_000).volume - found.volume;

        expect(Math.abs(wider / 10_000 / found.perDiameter - 1)).toBeLessThan(0.01);
        expect(Math.abs(higher / 10_000 / found.perHeight - 1)).toBeLessThan(0.01);
      }),
    );
  });
});

describe('ringVolume', () => {
  it('a top land 0.030 in smaller and 0.250 in high leaves 0.760 cc (exact mathematics)', () => {
    const found = ringVolume(base('3.950', 'in'), base('3.920', 'in'), base('0.250', 'in'));

    expect(asNumber(found, 'cc')).toBeCloseTo(0.76, 3);
  });
});

describe('circleOfString, circleOfSquares, circleOfLayer', () => {
  it('a string of 11.310 in goes round a circle of 3.600 in (exact mathematics)', () => {
    expect(asNumber(circleOfString(base('11.3097336', 'in')), 'in')).toBeCloseTo(3.6, 6);
  });

  it('1018 squares of 0.1 in are as large as a circle of 3.600 in (exact mathematics: 10.179 square inches)', () => {
    expect(asNumber(circleOfSquares(1018, base('0.1', 'in')), 'in')).toBeCloseTo(3.6, 3);
  });

  it('1.668 cc less in 0.010 in is a circle of 3.600 in (exact mathematics)', () => {
    expect(asNumber(circleOfLayer(base('1.668', 'cc'), base('0.010', 'in')).diameter, 'in')).toBeCloseTo(3.6, 3);
  });

  it('a circle and the layer on it come back to each other (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30_000_000, max: 120_000_000 }),
        fc.integer({ min: 50_000, max: 5_000_000 }),
        (diameter, depth) => {
          const { volume } = discVolume(diameter, depth);

          expect(Math.abs(circleOfLayer(volume, depth).diameter - diameter)).toBeLessThan(1000);
          expect(Math.abs(depthOfLayer(volume, diameter).depth - depth)).toBeLessThan(5);
        },
      ),
    );
  });
});
