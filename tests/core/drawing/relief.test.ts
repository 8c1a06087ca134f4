import { describe, expect, it } from 'vitest';
import { contourLine, levelsBetween, reliefBands } from '#core/drawing/relief.ts';

const FRAME = { left: 100, top: 200, width: 6_000, height: 3_000 };
/** A slope along: 0 at the left edge, 60 at the right one. */
const SLOPE = { columns: 4, heights: [0, 20, 40, 60, 0, 20, 40, 60] };
/** The worked grid of a bowed head, tenths of a thou. */
const BOWED = { columns: 5, heights: [0, -28, -40, -26, 6, -6, -36, -52, -34, -2, -8, -38, -50, -30, 8] };

/** Area of path text by the shoelace rule. */
function areaOf(d: string): number {
  return d
    .split('Z')
    .filter((piece) => piece !== '')
    .map((piece) => (piece.match(/-?\d+/g) ?? []).map(Number))
    .map((flat) => {
      const corners = flat.flatMap((x, n) => (n % 2 === 0 ? [[x, flat[n + 1] ?? 0] as const] : []));
      const twice = corners.reduce((sum, [x, y], n) => {
        const [x2, y2] = corners[(n + 1) % corners.length] ?? [x, y];
        return sum + x * y2 - x2 * y;
      }, 0);
      return Math.abs(twice) / 2;
    })
    .reduce((sum, area) => sum + area, 0);
}
const xsOf = (d: string): number[] => (d.match(/-?\d+/g) ?? []).map(Number).filter((_, n) => n % 2 === 0);

describe('reliefBands', () => {
  it('cuts an even slope into strips of equal width at the right places (exact mathematics)', () => {
    const bands = reliefBands(SLOPE, [0, 20, 40, 60], FRAME);
    expect(bands.map((band) => [band.from, band.to])).toEqual([
      [0, 20],
      [20, 40],
      [40, 60],
    ]);
    expect(bands.map((band) => areaOf(band.d))).toEqual([6e6, 6e6, 6e6]);
    expect(bands.map((band) => [Math.min(...xsOf(band.d)), Math.max(...xsOf(band.d))])).toEqual([
      [100, 2_100],
      [2_100, 4_100],
      [4_100, 6_100],
    ]);
  });

  it('covers the whole face once, also what lies outside the levels (areas add up, exact mathematics)', () => {
    const bands = reliefBands(BOWED, [-40, -30, -20, -10], FRAME);
    const whole = bands.reduce((sum, band) => sum + areaOf(band.d), 0);
    expect(Math.abs(whole - 18e6) / 18e6).toBeLessThan(0.001);
  });

  it('draws nothing where a corner was not read, nor for a single row', () => {
    const holed = { ...SLOPE, heights: [0, null, 40, 60, 0, 20, 40, 60] };
    const bands = reliefBands(holed, [0, 20, 40, 60], FRAME);
    expect(bands.map((band) => areaOf(band.d))).toEqual([0, 0, 6e6]);
    expect(reliefBands({ columns: 4, heights: [0, 20, 40, 60] }, [0, 60], FRAME)[0]?.d).toBe('');
  });

  it('turns with the casting: the picture of a turned grid is the turned picture (property)', () => {
    const turned = { columns: 5, heights: BOWED.heights.toReversed() };
    const levels = [-60, -40, -20, 0, 20];
    const areas = (grid: typeof BOWED) =>
      reliefBands(grid, levels, FRAME).map((band) => Math.round(areaOf(band.d) / 2e4));
    expect(areas(turned)).toEqual(areas(BOWED));
  });
});

describe('contourLine', () => {
  it('stands where an even slope has this height (exact mathematics)', () => {
    const xs = new Set(xsOf(contourLine(SLOPE, 30, FRAME)));
    expect([...xs]).toEqual([3_100]);
  });

  it('is nothing above the highest point', () => {
    expect(contourLine(SLOPE, 61, FRAME)).toBe('');
  });
});

describe('levelsBetween', () => {
  it.each([
    [0, 56, 1, [0, 10, 20, 30, 40, 50, 60]],
    [0, 7, 1, [0, 2, 4, 6, 8]],
    [0, 3, 1, [0, 1, 2, 3]],
    [0, 130, 1, [0, 50, 100, 150]],
    [0, 0, 1, [0, 1]],
  ] as const)('from %i to %i in steps of 1, 2 or 5 with zeros', (low, high, unit, levels) => {
    expect(levelsBetween(low, high, unit)).toEqual(levels);
  });
});
