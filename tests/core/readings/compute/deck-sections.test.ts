import { describe, expect, it } from 'vitest';
import { FACES } from '#core/catalogue/compute/faces.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { gridOf } from '#core/readings/compute/deck-grid.ts';
import { layOn, sectionsOf, spanAt, spanOf, worstAlong } from '#core/readings/compute/deck-sections.ts';
import { DECK, gridReadings, HEAD_LIMITS, headFacts, workedReadings } from '#tests/kit/face-facts.ts';

const INCH = 25_400_000;
const SIZES = { length: 18 * INCH, width: 6 * INCH };

function gridWith(readings: ReturnType<typeof workedReadings>, limits = HEAD_LIMITS) {
  const look = openBench(headFacts({ readings, limits })).look({ spot: null, stage: 'before' });
  const [face] = FACES;
  if (!face) throw new Error('no face');
  return { look, face, grid: gridOf(look, face) };
}
const worked = () => gridWith(workedReadings()).grid;

describe('sectionsOf', () => {
  it('has rows, columns and both diagonals', () => {
    expect(sectionsOf(worked()).map((it) => it.code)).toEqual([
      'row-1',
      'row-2',
      'row-3',
      'column-1',
      'column-2',
      'column-3',
      'column-4',
      'column-5',
      'diagonal-1',
      'diagonal-2',
    ]);
  });

  it('finds on a diagonal only points that lie on it: 11 x 6 has six, 5 x 4 its corners', () => {
    const onIt = (columns: number, rows: number) => {
      const flat = Array.from({ length: rows }, () => Array.from({ length: columns }, () => 0));
      return sectionsOf(gridWith(gridReadings(DECK, flat)).grid).find((it) => it.code === 'diagonal-1')?.points.length;
    };

    expect([onIt(11, 6), onIt(5, 4), onIt(5, 3), onIt(7, 7)]).toEqual([6, 2, 3, 7]);
  });
});

describe('layOn', () => {
  it('tells hollow from crowned and where, and nothing of two points', () => {
    const { grid } = gridWith(
      gridReadings(DECK, [
        [0, -9, 0],
        [0, 9, 0],
        [0, 0, 0],
        [0, null, 0],
      ]),
    );
    const laid = sectionsOf(grid)
      .filter((it) => it.kind === 'along')
      .map(layOn);

    expect(laid.map((it) => it?.word)).toEqual(['hollow', 'crowned', 'flat', undefined]);
    expect(laid.map((it) => it?.worstAt)).toEqual(['c2r1', 'c2r2', null, undefined]);
    expect(laid.map((it) => it?.worst.value)).toEqual([9 * 2540, 9 * 2540, 0, undefined]);
  });
});

describe('worstAlong', () => {
  it('is 50 tenths along, 9 tenths across on the worked grid (exact mathematics)', () => {
    // Across: the columns read 0 -6 -8, -28 -36 -38, -40 -52 -50, -26 -34 -30, 6 -2 8.
    expect(worstAlong(worked(), 'along')?.value).toBe(50 * 2540);
    expect(worstAlong(worked(), 'across')?.value).toBe(9 * 2540);
  });

  it('is not known where no section has three points', () => {
    expect(
      worstAlong(
        gridWith(
          gridReadings(DECK, [
            [0, -9, 0],
            [0, -9, 0],
          ]),
        ).grid,
        'across',
      ),
    ).toBeNull();
  });
});

describe('spanOf', () => {
  it('finds 17 tenths in any 9 in along the middle (exact mathematics)', () => {
    expect(spanOf(worked(), { ...SIZES, span: 9 * INCH })).toMatchObject({
      known: { value: 17 * 2540 },
      words: 'along row 2',
      points: ['c2r2', 'c3r2', 'c4r2'],
      isCovered: true,
    });
  });

  it('says that points stand too far apart for 8 in along a head read every 4.5 in', () => {
    expect(spanOf(worked(), { ...SIZES, span: 8 * INCH })).toMatchObject({
      isCovered: false,
      words: 'across column 5',
    });
  });

  it('takes its length from the sheet, and is not asked for without one', () => {
    const { look, face, grid } = gridWith(workedReadings());
    expect(spanAt(look, face, grid)?.known.value).toBe(17 * 2540);

    const bare = gridWith(
      workedReadings(),
      HEAD_LIMITS.filter((it) => it.quantity !== 'deck-span-length'),
    );
    expect(spanAt(bare.look, bare.face, bare.grid)).toBeNull();
  });
});
