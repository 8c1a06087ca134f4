import { describe, expect, it } from 'vitest';
import { DECK, gridReadings, headFacts, survey, workedReadings } from '#tests/kit/face-facts.ts';

const planes = (readings: ReturnType<typeof workedReadings>) => survey(headFacts({ readings })).before.planes;

describe('planesOf', () => {
  it('says 0.0060 raw, 0.0059 least squares, 0.0056 closest planes, 0.0030 off on the average (exact mathematics)', () => {
    const found = planes(workedReadings());

    expect(found?.rawSpread.text).toBe('0.0060');
    // 58.7333 tenths and 29.6 tenths, to a nanometre.
    expect(found?.leastSquares.value).toBe(149_183);
    expect(found?.zone.text).toBe('0.0056');
    expect(found?.meanStock.value).toBe(75_184);
  });

  it('levels on three corners in four ways, the hand’s first: 0.0061 (exact mathematics)', () => {
    const corners = planes(workedReadings())?.corners;

    expect(corners).toHaveLength(4);
    expect(corners?.[0]).toMatchObject({
      points: ['c1r1', 'c5r1', 'c1r3'],
      words: 'front intake side, rear intake side, front exhaust side',
      flatness: { text: '0.0061' },
    });
  });

  it('leaves out three corners of which one is not read', () => {
    const part = [
      [0, 0, 0],
      [0, -9, 0],
      [0, 0, null],
    ];

    expect(planes(gridReadings(DECK, part))?.corners.map((it) => it.points)).toEqual([['c1r1', 'c3r1', 'c1r3']]);
  });

  it('says how the head stood on its jacks', () => {
    const tilted = gridReadings(DECK, [
      [0, 10, 20],
      [-5, 5, 15],
      [-10, 0, 10],
    ]);

    expect(planes(tilted)?.tiltWords).toBe('rear 0.0020 in higher, exhaust side 0.0010 in lower');
  });
});

describe('planesOf, sections', () => {
  it('draws the middle of the worked head: 48 tenths hollow at the third column (exact mathematics)', () => {
    const middle = planes(workedReadings())?.sections.find((it) => it.isMiddle);

    expect(middle).toMatchObject({
      words: 'Along, middle',
      word: 'hollow',
      worst: { text: '0.0048' },
      worstAt: 'c3r2',
    });
    expect(middle?.points.map(({ at, height }) => [at, height / 2540])).toEqual([
      [0, 0],
      [0.25, -31],
      [0.5, -48],
      [0.75, -31],
      [1, 0],
    ]);
  });

  it('has rows 43, 48, 50 and diagonals 56, 51 tenths (exact mathematics)', () => {
    const sections = planes(workedReadings())?.sections ?? [];
    const gapOf = (code: string) => (sections.find((it) => it.code === code)?.gap.value ?? 0) / 2540;

    expect(['row-1', 'row-2', 'row-3', 'diagonal-1', 'diagonal-2'].map(gapOf)).toEqual([43, 48, 50, 56, 51]);
    expect(sections.find((it) => it.code === 'diagonal-1')?.points.map(({ at }) => at)).toEqual([0, 0.5, 1]);
  });

  it('leaves out a diagonal on which the grid has no third point', () => {
    const found = planes(
      gridReadings(DECK, [
        [0, 1, 2, 3],
        [0, 1, 2, 3],
        [0, 1, 2, 9],
      ]),
    );

    expect(found?.sections.map((it) => it.kind)).not.toContain('diagonal');
  });
});
