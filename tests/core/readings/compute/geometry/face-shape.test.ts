import { describe, expect, it } from 'vitest';
import { shapeOf } from '#core/readings/compute/geometry/face-shape.ts';

const steps = [-1, -0.5, 0, 0.5, 1];
const face = (z: (x: number, y: number) => number) =>
  steps.flatMap((x) => [-1, 0, 1].map((y) => ({ x, y, z: z(x, y) })));

describe('shapeOf', () => {
  it.each([
    ['a bow along', (x: number) => 5 * x * x, { sag: 5, twist: 0 }],
    ['a crown across', (_: number, y: number) => -3 * y * y, { sag: -3, twist: 0 }],
    ['a bowl', (x: number, y: number) => 2 * x * x + y * y, { sag: 3, twist: 0 }],
    ['a twist', (x: number, y: number) => 4 * x * y, { sag: 0, twist: 8 }],
  ])('finds %s under any tilt, and accounts for all of it (exact mathematics)', (_, z, wanted) => {
    const shape = shapeOf(face((x, y) => z(x, y) + 7 * x - 3 * y + 100));

    expect(shape.sag).toBeCloseTo(wanted.sag, 9);
    expect(shape.twist).toBeCloseTo(wanted.twist, 9);
    expect(shape.explained).toBeCloseTo(1, 9);
  });

  it('accounts for nothing of a tilted flat face', () => {
    expect(shapeOf(face((x, y) => x + y)).explained).toBeLessThanOrEqual(1);
    expect(shapeOf(face(() => 4))).toEqual({ sag: 0, twist: 0, explained: 0 });
  });
});
