import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LinePoint, straightnessOf } from '#core/readings/compute/geometry/line.ts';
import { lacks } from '#tests/kit/programs.ts';
import { askPython } from '#tests/kit/python.ts';

const evenly = (...heights: readonly number[]): LinePoint[] => heights.map((height, at) => ({ at, height }));
const width = (points: readonly LinePoint[]): number => straightnessOf(points)?.width ?? Number.NaN;

const anyLine = fc
  .uniqueArray(fc.integer({ min: 0, max: 500 }), { minLength: 3, maxLength: 10 })
  .chain((places) =>
    fc
      .array(fc.integer({ min: -200_000, max: 200_000 }), { minLength: places.length, maxLength: places.length })
      .map((heights) => places.map((at, index): LinePoint => ({ at, height: heights[index] ?? 0 }))),
  );

describe('straightnessOf', () => {
  it.each([
    ['three points, the middle one 20 high', evenly(0, 20, 0), 20],
    ['the same, leaning', evenly(0, 60, 80), 20],
    ['a bow over five journals', evenly(0, 30, 40, 30, 0), 40],
    ['one journal high in the second place of five', evenly(0, 40, 0, 0, 0), 40],
    [
      'uneven places: the middle one 20 above a line from 0 to 40 at a quarter of it',
      [
        { at: 0, height: 0 },
        { at: 100, height: 30 },
        { at: 400, height: 40 },
      ],
      20,
    ],
    ['a straight line however it leans', evenly(5, 12, 19, 26), 0],
  ] as const)('%s (exact mathematics)', (_, points, wanted) => {
    expect(width(points)).toBe(wanted);
  });

  it('has no answer for fewer than three points, nor when all stand at one place', () => {
    expect(straightnessOf(evenly(0, 10))).toBeNull();
    expect(straightnessOf(evenly())).toBeNull();
    expect(straightnessOf([0, 10, 20].map((height) => ({ at: 7, height })))).toBeNull();
  });

  it('says how far each stands off the middle of the zone: half its width both ways (exact mathematics)', () => {
    expect(straightnessOf(evenly(0, 60, 80))?.offsets).toEqual([-10, 10, -10]);
  });

  it('weighs the point in the middle whole and the two it is held against by their distance (exact mathematics)', () => {
    expect(straightnessOf(evenly(0, 20, 0))?.weights).toEqual([-0.5, 1, -0.5]);
    expect(straightnessOf(evenly(5, 12, 19))?.weights).toEqual([0, 0, 0]);
  });

  it('does not change when the line is tilted, lifted, mirrored or read backwards (property)', () => {
    fc.assert(
      fc.property(anyLine, fc.integer({ min: -900, max: 900 }), fc.integer(), (points, lean, up) => {
        const moved = points.map(({ at, height }) => ({ at, height: height + lean * at + (up % 1_000_000) }));
        const mirrored = points.map(({ at, height }) => ({ at: -at, height: -height })).toReversed();

        expect(width(moved)).toBe(width(points));
        expect(width(mirrored)).toBe(width(points));
      }),
    );
  });

  it('holds every point, and never needs more than the spread of the heights as they stand (property)', () => {
    fc.assert(
      fc.property(anyLine, (points) => {
        const zone = straightnessOf(points);
        const heights = points.map((it) => it.height);

        expect(Math.max(...(zone?.offsets ?? [])) - Math.min(...(zone?.offsets ?? []))).toBeLessThanOrEqual(
          (zone?.width ?? 0) + 1,
        );
        expect(zone?.width).toBeLessThanOrEqual(Math.max(...heights) - Math.min(...heights));
      }),
    );
  });

  const lines = fc.sample(anyLine, { numRuns: 60, seed: 41_170 });

  it.skipIf(lacks('scipy'))('is the least gap that a linear programme finds (scipy.optimize.linprog)', () => {
    const found = askPython<readonly number[]>(
      `
from scipy.optimize import linprog
out = []
for line in json.loads(text):
    above = [[x, 1, 0] for x, z in line]
    below = [[-x, -1, -1] for x, z in line]
    limits = [z for x, z in line] + [-z for x, z in line]
    best = linprog([0, 0, 1], A_ub=above + below, b_ub=limits, bounds=[(None, None)] * 2 + [(0, None)])
    out.append(best.fun)
print(json.dumps(out))
`,
      JSON.stringify(lines.map((line) => line.map(({ at, height }) => [at, height]))),
    );

    expect(found).toHaveLength(lines.length);
    for (const [index, line] of lines.entries()) expect(Math.abs(width(line) - (found[index] ?? 0))).toBeLessThan(0.6);
  });

  it.skipIf(lacks('numpy'))('is never wider than about the least-squares line (numpy.polyfit)', () => {
    const found = askPython<readonly number[]>(
      `
import numpy as np
out = []
for line in json.loads(text):
    x, z = np.array(line, dtype=float).T
    rest = z - np.polyval(np.polyfit(x, z, 1), x)
    out.append(float(rest.max() - rest.min()))
print(json.dumps(out))
`,
      JSON.stringify(lines.map((line) => line.map(({ at, height }) => [at, height]))),
    );

    for (const [index, line] of lines.entries()) expect(width(line)).toBeLessThanOrEqual((found[index] ?? 0) + 1);
    expect(lines.some((line, index) => width(line) < (found[index] ?? 0) - 1)).toBe(true);
  });
});
