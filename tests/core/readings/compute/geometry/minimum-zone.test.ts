import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumZone } from '#core/readings/compute/geometry/minimum-zone.ts';
import { type Height, leastSquaresPlane, spreadOf } from '#core/readings/compute/geometry/plane.ts';
import { FLATNESS_CASES, whole, workedPoints, Z_SCALE } from '#tests/kit/flatness-cases.ts';
import { lacks } from '#tests/kit/programs.ts';
import { askPython } from '#tests/kit/python.ts';

/** Small numbers make points in line, points twice in one place and equal heights common. */
const crowded = fc.array(
  fc.record({
    x: fc.integer({ min: 0, max: 4 }),
    y: fc.integer({ min: 0, max: 3 }),
    z: fc.integer({ min: -6, max: 6 }),
  }),
  { minLength: 1, maxLength: 14 },
);
const scattered = fc.array(
  fc.record({
    x: fc.integer({ min: 0, max: 500_000 }),
    y: fc.integer({ min: 0, max: 200_000 }),
    z: fc.integer({ min: -90_000, max: 90_000 }),
  }),
  { minLength: 4, maxLength: 60 },
);

const area = (p: Height, q: Height, r: Height) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);

/** Every choice of so many of the points. */
function choices(points: readonly Height[], count: number): Height[][] {
  if (count === 0) return [[]];
  return points.flatMap((first, n) => choices(points.slice(n + 1), count - 1).map((rest) => [first, ...rest]));
}

/** Height of the middle one of three points in line over the chord of the other two; 0 where they are not in line. */
function inLine(three: readonly Height[]): number {
  const [a, b, c] = three.toSorted((p, q) => p.x - q.x || p.y - q.y);
  if (!(a && b && c) || area(a, b, c) !== 0) return 0;
  const [span, part] = a.x === c.x ? [c.y - a.y, b.y - a.y] : [c.x - a.x, b.x - a.x];
  return span === 0 ? 0 : Math.abs(b.z - a.z - ((c.z - a.z) * part) / span);
}

/** Zone of four points: their heights weighted by the areas of the other three, alternating. */
function ofFour(four: readonly Height[]): number {
  const weights = four.map((_, out) => {
    const [p, q, r] = four.filter((__, it) => it !== out);
    return p && q && r ? (out % 2 === 0 ? 1 : -1) * area(p, q, r) : 0;
  });
  const all = weights.reduce((sum, it) => sum + Math.abs(it), 0);
  return all === 0 ? 0 : (2 * Math.abs(weights.reduce((sum, it, t) => sum + it * (four[t]?.z ?? 0), 0))) / all;
}

const inOnePlace = ([p, q]: readonly Height[]): number =>
  p && q && p.x === q.x && p.y === q.y ? Math.abs(p.z - q.z) : 0;

/**
 * The same by trying every support: four points, three in line, two in one place. The widest of their zones is the answer.
 * Floats, slow, and written another way on purpose.
 */
const bySupports = (points: readonly Height[]): number =>
  Math.max(
    0,
    ...choices(points, 2).map(inOnePlace),
    ...choices(points, 3).map(inLine),
    ...choices(points, 4).map(ofFour),
  );

/** scipy's linear programme for many point sets in one call: least h - l with l <= z - a x - b y <= h. */
const byScipy = (sets: readonly (readonly Height[])[]): number[] =>
  askPython<number[]>(
    `
import numpy as np
from scipy.optimize import linprog
out = []
for points in json.loads(text):
    p = np.array(points, float)
    n = len(p)
    upper = np.column_stack([-p[:, 0], -p[:, 1], -np.ones(n), np.zeros(n)])
    lower = np.column_stack([p[:, 0], p[:, 1], np.zeros(n), np.ones(n)])
    r = linprog([0, 0, 1, -1], A_ub=np.vstack([upper, lower]), b_ub=np.concatenate([p[:, 2] * -1, p[:, 2]]),
                bounds=[(None, None)] * 4, method="highs")
    out.append(float(r.fun))
print(json.dumps(out))
`,
    JSON.stringify(sets.map((points) => points.map(({ x, y, z }) => [x, y, z]))),
  );

describe('minimumZone', () => {
  it.each(FLATNESS_CASES)('$id: zone to 1e-6 ($source)', ({ points, expected }) => {
    const zone = minimumZone(whole(points)).zone / Z_SCALE;

    expect(Math.abs(zone - expected.minimum_zone)).toBeLessThanOrEqual(1e-6 * Math.max(1, expected.minimum_zone));
  });

  it.each(FLATNESS_CASES.filter((it) => it.theory !== undefined))('$id: exactly $theory (theorem)', (it) => {
    expect(minimumZone(whole(it.points)).zone).toBe((it.theory ?? 0) * Z_SCALE);
  });

  it('finds 56 tenths on the worked grid, and the points that decide it (exact mathematics)', () => {
    const points = workedPoints();
    const found = minimumZone(points.map(({ x, y, z }) => ({ x: x * 2, y, z })));

    expect(found.zone).toBe(56);
    const where = (indices: readonly number[]) => indices.map((n) => [points[n]?.x, points[n]?.y]);
    expect(where(found.lower)).toEqual([[9, 3]]);
    expect(where(found.upper)).toEqual([
      [0, 0],
      [0, 6],
      [18, 6],
    ]);
    expect(found.heights.reduce((sum, it) => sum + it, 0) / found.heights.length).toBeCloseTo(29.6, 1);
  });

  it('is the widest zone of all supports of four, three in line or two in one place (property; theorem)', () => {
    fc.assert(
      fc.property(crowded, (points) => {
        expect(
          Math.abs(minimumZone(points.map((it) => ({ ...it, z: it.z * 5040 }))).zone / 5040 - bySupports(points)),
        ).toBeLessThan(1e-3);
      }),
      { numRuns: 400 },
    );
  });

  it.skipIf(lacks('scipy'))('is what a linear programme gives (scipy.optimize.linprog, HiGHS)', () => {
    const sets = [
      ...fc.sample(scattered, { numRuns: 60, seed: 11 }),
      ...fc.sample(crowded, { numRuns: 60, seed: 12 }),
      grid(15, 9, 3),
    ];
    const wanted = byScipy(sets);

    for (const [n, points] of sets.entries()) {
      expect(Math.abs(minimumZone(points).zone - (wanted[n] ?? Number.NaN))).toBeLessThanOrEqual(0.5 + 1e-4);
    }
  });

  it('holds every point between its planes, with decisive points that balance (property; proof of the answer)', () => {
    fc.assert(
      fc.property(fc.oneof(crowded, scattered), (points) => {
        const { zone, heights, slopes, upper, lower } = minimumZone(points);
        expect(Math.min(...heights)).toBe(0);
        expect(Math.max(...heights)).toBe(zone);
        expect(upper.length).toBeGreaterThan(0);
        expect(lower.length).toBeGreaterThan(0);
        // Weights of both sides cancel, also in place: no tilt brings the planes closer.
        const of = (figure: (it: Height) => number) =>
          slopes.reduce((sum, { index, slope }) => sum + slope * figure(points[index] ?? { x: 0, y: 0, z: 0 }), 0);
        expect(Math.abs(of(() => 1))).toBeLessThan(1e-9);
        expect(Math.abs(of(({ x }) => x))).toBeLessThan(1e-4);
        expect(Math.abs(of(({ y }) => y))).toBeLessThan(1e-4);
        expect(Math.abs(of(({ z }) => z) - zone)).toBeLessThan(0.51);
      }),
    );
  });

  it('is never above least squares, and that never above the spread (property; exact mathematics)', () => {
    fc.assert(
      fc.property(scattered, (points) => {
        const { zone } = minimumZone(points);
        const { flatness } = leastSquaresPlane(points);
        expect(zone).toBeLessThanOrEqual(flatness + 0.5 + 1e-6);
        expect(zone).toBeLessThanOrEqual(spreadOf(points.map(({ z }) => z)));
      }),
    );
  });

  it('is not changed by tilt, order, mirroring or doubling of points, and grows with the heights (property)', () => {
    fc.assert(
      fc.property(scattered, fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), (points, p, q) => {
        const { zone } = minimumZone(points);
        expect(minimumZone(points.map((it) => ({ ...it, z: it.z + p * it.x + q * it.y + 77 }))).zone).toBe(zone);
        expect(minimumZone(points.toReversed()).zone).toBe(zone);
        expect(minimumZone(points.map((it) => ({ ...it, x: -it.x }))).zone).toBe(zone);
        expect(minimumZone([...points, ...points]).zone).toBe(zone);
        expect(minimumZone(points.map((it) => ({ ...it, z: -it.z }))).zone).toBe(zone);
        expect(Math.abs(minimumZone(points.map((it) => ({ ...it, z: 3 * it.z }))).zone - 3 * zone)).toBeLessThanOrEqual(
          2,
        );
      }),
      { numRuns: 40 },
    );
  });

  it.each([
    ['a flat grid', grid(4, 3, 0)],
    ['one point', [{ x: 5, y: 5, z: 9 }]],
    ['three points', [point(0, 0, 5), point(3, 0, 9), point(0, 4, -2)]],
    ['a tilted line', [point(0, 0, 0), point(1, 1, 2), point(2, 2, 4), point(5, 5, 10)]],
  ])('is 0 for %s (exact mathematics)', (_, points) => {
    expect(minimumZone(points).zone).toBe(0);
  });

  it.each([
    ['points of one line', [point(0, 0, 0), point(2, 4, 6), point(4, 8, 0)], 6],
    ['a line across', [point(7, 0, 0), point(7, 2, -3), point(7, 4, 0), point(7, 6, 0)], 3],
    ['one place read twice', [point(1, 1, 4), point(1, 1, 9)], 5],
    ['one place read twice on a face', [point(0, 0, 0), point(9, 0, 0), point(0, 9, 0), point(0, 0, 7)], 7],
  ])('sees %s (exact mathematics)', (_, points, zone) => {
    expect(minimumZone(points).zone).toBe(zone);
  });

  it('refuses what is not whole, and nothing at all', () => {
    expect(() => minimumZone([point(0, 0, 0.5)])).toThrow(RangeError);
    expect(() => minimumZone([])).toThrow(RangeError);
  });
});

function point(x: number, y: number, z: number): Height {
  return { x, y, z };
}

/** A bowl with a little roughness that is the same every time; flat for `bow` 0. */
function grid(columns: number, rows: number, bow: number): Height[] {
  return Array.from({ length: columns * rows }, (_, n) => {
    const [x, y] = [n % columns, Math.floor(n / columns)];
    return point(x, y, bow * (x * x - y * x + ((n * 7919) % 11)));
  });
}
