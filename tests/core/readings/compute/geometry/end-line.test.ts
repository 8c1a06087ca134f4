import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offEndLine } from '#core/readings/compute/geometry/end-line.ts';

describe('offEndLine', () => {
  it('takes the tilt out: ends at 0 and 8, the middle at 5 of 4 wanted is 1 high (exact mathematics)', () => {
    const points = [0, 3, 5, 6, 8].map((height, at) => ({ at, height }));

    expect(offEndLine(points)).toEqual([0, 1, 1, 0, 0]);
  });

  it('goes by the places, not by the number of points (exact mathematics)', () => {
    expect(
      offEndLine([
        { at: 0, height: 0 },
        { at: 9, height: 0 },
        { at: 10, height: 100 },
      ]),
    ).toEqual([0, -90, 0]);
  });

  it('a row that begins elsewhere is the same row (exact mathematics)', () => {
    expect(offEndLine([0, 3, 5, 6, 8].map((height, n) => ({ at: 100 + n, height: height + 7 })))).toEqual([
      0, 1, 1, 0, 0,
    ]);
  });

  it('adding a slope changes nothing (property)', () => {
    const heights = fc.array(fc.integer({ min: -50_000, max: 50_000 }), { minLength: 2, maxLength: 7 });

    fc.assert(
      fc.property(heights, fc.integer({ min: -9000, max: 9000 }), (them, slope) => {
        const flat = them.map((height, at) => ({ at, height }));
        const leaned = them.map((height, at) => ({ at, height: height + slope * at }));

        expect(offEndLine(leaned)).toEqual(offEndLine(flat));
      }),
      { numRuns: 50 },
    );
  });

  it('is all nothing for one point or two ends at one place', () => {
    expect(offEndLine([])).toEqual([]);
    expect(offEndLine([{ at: 3, height: 7 }])).toEqual([0]);
    expect(
      offEndLine([
        { at: 3, height: 7 },
        { at: 3, height: 9 },
      ]),
    ).toEqual([0, 0]);
  });
});
