import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alongOf,
  axialOf,
  slopeOfAngle,
  slopeOfLength,
  sunkSlopes,
  sunkVolume,
} from '#core/readings/compute/geometry/grinding.ts';

const MM = 1_000_000;

describe('axialOf', () => {
  it.each([
    [45, Math.SQRT2],
    [30, 2 / Math.sqrt(3)],
    [60, 2],
  ])('one square to a face at %d degrees is %d along the axis (exact mathematics)', (degrees, expected) => {
    expect(axialOf(1e9, degrees * 1e6)).toBe(Math.round(expected * 1e9));
    expect(alongOf(1e9, degrees * 1e6)).toBe(Math.round(expected * 1e9));
  });
});

describe('slopes', () => {
  it('are what a small step does (property)', () => {
    const angle = fc.integer({ min: 10_000_000, max: 75_000_000 });

    fc.assert(
      fc.property(fc.integer({ min: MM, max: 100 * MM }), angle, (length, degrees) => {
        const step = 1000;
        const byAngle = (alongOf(length, degrees + step) - alongOf(length, degrees - step)) / (2 * step);
        const byLength = (alongOf(length + MM, degrees) - alongOf(length, degrees)) / MM;

        expect(slopeOfAngle(length, degrees)).toBeCloseTo(byAngle, 1);
        expect(slopeOfLength(degrees)).toBeCloseTo(byLength, 4);
      }),
    );
  });
});

describe('sunkVolume', () => {
  it('a head of 40 mm that sinks 0.5 mm leaves pi/4 x 16 x 0.05 = 0.628319 cc (exact mathematics)', () => {
    expect(sunkVolume(40 * MM, MM / 2)).toBe(628_319);
    expect(sunkSlopes(40 * MM, MM / 2).depth * (MM / 2)).toBeCloseTo(628_319, 0);
    expect(sunkSlopes(40 * MM, MM / 2).diameter * 20 * MM).toBeCloseTo(628_319, 0);
  });
});
