import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumZone } from '#core/readings/compute/geometry/minimum-zone.ts';
import { stripOf, worstInSpan } from '#core/readings/compute/geometry/straightedge.ts';
import { WORKED_GRID } from '#tests/kit/flatness-cases.ts';

const line = (heights: readonly number[], pitch = 1) => heights.map((z, n) => ({ t: n * pitch, z }));
const column = (n: number) => WORKED_GRID.map((row) => row[n] ?? 0);

describe('stripOf', () => {
  it.each([
    [0, 43],
    [1, 48],
    [2, 50],
  ])('row %i of the worked grid gaps %i tenths under a straightedge (exact mathematics)', (row, gap) => {
    expect(stripOf(line(WORKED_GRID[row] ?? []))).toMatchObject({ gap, gapAt: 2 });
  });

  it('finds 56 and 51 tenths on the diagonals of the worked grid (exact mathematics)', () => {
    const [top, middle, bottom] = WORKED_GRID;
    expect(stripOf(line([top[0], middle[2], bottom[4]])).gap).toBe(56);
    expect(stripOf(line([bottom[0], middle[2], top[4]])).gap).toBe(51);
  });

  it('tells a hollow line from a crowned one', () => {
    expect(stripOf(line([0, -5, 0]))).toMatchObject({ gap: 5, rock: 0, zone: 5 });
    expect(stripOf(line([0, 5, 0]))).toMatchObject({ gap: 0, rock: 5, zone: 5, rockAt: 1 });
    expect(stripOf(line([0, 5, 0, 5, 0]))).toMatchObject({ gap: 5, rock: 5, zone: 5 });
    expect(stripOf(line([3, 3, 3]))).toEqual({ gap: 0, gapAt: -1, rock: 0, rockAt: -1, zone: 0 });
  });

  it('has the zone of two closest planes for points of one line (property; two methods written differently)', () => {
    const heights = fc.array(fc.record({ t: fc.nat({ max: 30 }), z: fc.integer({ min: -99, max: 99 }) }), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(heights, (points) => {
        const exact = minimumZone(points.map(({ t, z }) => ({ x: t, y: 2 * t, z: z * 1000 }))).zone / 1000;
        expect(Math.abs(stripOf(points).zone - exact)).toBeLessThan(1e-3);
        const { gap, rock, zone } = stripOf(points);
        expect(Math.max(gap, rock)).toBeLessThanOrEqual(zone + 1e-9);
      }),
    );
  });
});

describe('worstInSpan', () => {
  it('finds 17 tenths in any 9 in of the worked grid (exact mathematics)', () => {
    const rows = WORKED_GRID.map((row) => worstInSpan(line(row, 4.5), 9, 1e-6)?.zone ?? 0);
    const columns = [0, 1, 2, 3, 4].map((n) => worstInSpan(line(column(n), 3), 9, 1e-6)?.zone ?? 0);

    expect(Math.max(...rows, ...columns)).toBe(17);
    expect(worstInSpan(line(WORKED_GRID[1], 4.5), 9, 1e-6)).toEqual({ zone: 17, from: 1, to: 3 });
  });

  it('says nothing where three points do not fit into the span, though the face is longer', () => {
    expect(worstInSpan(line([0, -9, 0, -9, 0], 4.5), 6, 1e-6)).toBeNull();
    expect(worstInSpan(line([0, -9], 4.5), 6, 1e-6)).toMatchObject({ zone: 0 });
    expect(worstInSpan(line([0, -9, 0], 3), 6, 1e-6)).toMatchObject({ zone: 9 });
  });

  it('is not worse in a shorter span (property)', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 5, maxLength: 15 }), (heights) => {
        const [short, long] = [2, 4].map((span) => worstInSpan(line(heights), span, 1e-9)?.zone ?? 0);
        expect(short).toBeLessThanOrEqual(long ?? 0);
        expect(long).toBeLessThanOrEqual(stripOf(line(heights)).zone + 1e-9);
      }),
    );
  });
});
