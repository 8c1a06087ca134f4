import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquaresPlane, planeOnThree } from '#core/readings/compute/geometry/plane.ts';
import { FLATNESS_CASES, workedPoints } from '#tests/kit/flatness-cases.ts';

const height = fc.record({
  x: fc.integer({ min: 0, max: 500 }),
  y: fc.integer({ min: 0, max: 200 }),
  z: fc.integer({ min: -500, max: 500 }),
});

describe('leastSquaresPlane', () => {
  it.each(FLATNESS_CASES)('$id: plane and flatness to 1e-6 ($source)', ({ points, expected }) => {
    const { a, b, c, flatness } = leastSquaresPlane(points);

    for (const [n, figure] of [a, b, c].entries()) expect(figure).toBeCloseTo(expected.ls_plane_a_b_c[n] ?? 0, 6);
    expect(Math.abs(flatness - expected.ls_flatness)).toBeLessThanOrEqual(1e-6 * Math.max(1, expected.ls_flatness));
  });

  it('levels the worked grid: 58.7333 tenths over 0.474074, -1, -23.666667 (exact mathematics)', () => {
    const { a, b, c, flatness, residuals } = leastSquaresPlane(workedPoints());

    expect(flatness).toBeCloseTo(58.7333, 3);
    expect(a).toBeCloseTo(0.474074, 5);
    expect(b).toBeCloseTo(-1, 5);
    expect(c).toBeCloseTo(-23.666667, 5);
    expect(Math.max(...residuals)).toBeCloseTo(29.1333, 3);
    expect(Math.min(...residuals)).toBeCloseTo(-29.6, 3);
  });

  it('is not moved by tilt, order or mirroring (property; exact mathematics)', () => {
    fc.assert(
      fc.property(fc.array(height, { minLength: 4, maxLength: 40 }), fc.integer(), (points, seed) => {
        const [p, q] = [(seed % 19) - 9, (seed % 13) - 6];
        const flat = leastSquaresPlane(points).flatness;
        const moved = points.toReversed().map(({ x, y, z }) => ({ x: -x, y, z: z + p * x - q * y + 100 }));
        expect(Math.abs(leastSquaresPlane(moved).flatness - flat)).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('planeOnThree', () => {
  it('levels the worked grid on three corners as a hand does: 61 tenths (exact mathematics)', () => {
    const points = workedPoints();
    const at = (x: number, y: number) => points.find((it) => it.x === x && it.y === y) ?? { x, y, z: Number.NaN };

    expect(planeOnThree(points, [at(0, 0), at(18, 0), at(0, 6)])?.flatness).toBeCloseTo(61, 9);
  });

  it('goes through its three points, whatever else stands there (property; exact mathematics)', () => {
    const three = fc.tuple(height, height, height);
    fc.assert(
      fc.property(three, fc.array(height, { maxLength: 9 }), ([p, q, r], others) => {
        const plane = planeOnThree([p, q, r, ...others], [p, q, r]);
        for (const rest of plane?.residuals.slice(0, 3) ?? []) expect(Math.abs(rest)).toBeLessThan(1e-6);
      }),
    );
  });

  it('cannot stand on three points in one line', () => {
    const [p, q, r] = [0, 1, 2].map((n) => ({ x: n, y: n, z: n * n })) as [Height, Height, Height];

    expect(planeOnThree([p, q, r], [p, q, r])).toBeNull();
  });
});

type Height = Parameters<typeof planeOnThree>[0][number];
