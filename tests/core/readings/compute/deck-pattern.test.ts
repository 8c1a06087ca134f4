import { describe, expect, it } from 'vitest';
import { FACES } from '#core/catalogue/compute/faces.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { gridOf, zoneOf } from '#core/readings/compute/deck-grid.ts';
import { type LineRead, NO_FEELER_SHOWS, patternOfGrid, patternOfLines } from '#core/readings/compute/deck-pattern.ts';
import { DECK, gridReadings, headFacts } from '#tests/kit/face-facts.ts';
import { WORKED_GRID } from '#tests/kit/flatness-cases.ts';

/** The word for rows of readings in tenths of a thou, whatever the tilt. */
function wordOf(rows: readonly (readonly number[])[]): string {
  const tilted = rows.map((row, r) => row.map((z, c) => z + 9 * c - 4 * r));
  const look = openBench(headFacts({ readings: gridReadings(DECK, tilted) })).look({ spot: null, stage: 'before' });
  const [face] = FACES;
  const grid = face && gridOf(look, face);
  const zone = grid && zoneOf(grid);
  return grid && zone ? patternOfGrid(grid, zone, 'in').word : 'none';
}

const rows = (count: number, of: (row: number) => number[]) => Array.from({ length: count }, (_, r) => of(r));

describe('patternOfGrid', () => {
  it.each([
    ['the worked grid', WORKED_GRID, 'hollow'],
    ['a bow along', rows(3, () => [0, -30, -40, -30, 0]), 'hollow'],
    ['a crown along', rows(3, () => [0, 30, 40, 30, 0]), 'crowned'],
    [
      'a crown across',
      [
        [0, 0, 0, 0],
        [25, 25, 25, 25],
        [0, 0, 0, 0],
      ],
      'crowned',
    ],
    ['a propeller', rows(3, (r) => [-40, -20, 0, 20, 40].map((z) => z * (r - 1))), 'twisted'],
    [
      'one corner worn',
      [
        [0, 0, 0, 0, -40],
        [0, 0, 0, 0, 0],
        [0, 0, 0, 0, 0],
      ],
      'low corner',
    ],
    [
      'a groove between fire rings',
      [
        [0, 0, 0, 0, 0],
        [0, 0, -40, 0, 0],
        [0, 0, 0, 0, 0],
      ],
      'local dip',
    ],
    [
      'a burr',
      [
        [0, 0, 0, 0, 0],
        [0, 0, 40, 0, 0],
        [0, 0, 0, 0, 0],
      ],
      'high spot',
    ],
    ['a worn land at the rear', rows(3, () => [0, 0, 0, 0, -40]), 'step'],
    ['a worn land at one side', rows(4, (r) => [0, 0, 0, 0, 0].map(() => (r === 3 ? -40 : 0))), 'step'],
    [
      'nothing that has a name',
      [
        [0, 20, -20, 20, -20],
        [-20, 20, 0, -20, 20],
        [20, -20, 20, 0, -20],
      ],
      'uneven',
    ],
    ['less than a feeler shows', rows(3, () => [0, -4, -5, -4, 0]), 'flat'],
  ])('calls %s by its name, on any jacks (common practice, no source)', (_, grid, word) => {
    expect(wordOf(grid)).toBe(word);
  });

  it('ends with flat where the first feeler begins: half a thou', () => {
    expect(NO_FEELER_SHOWS).toBe(12_700);
    expect(wordOf(rows(2, () => [0, -5, 0]))).toBe('flat');
    expect(wordOf(rows(2, () => [0, -6, 0]))).toBe('hollow');
  });
});

describe('patternOfLines', () => {
  const line = (code: string, gap: number, place: LineRead['place'] = null): LineRead => ({
    code,
    words: code,
    kind: code.startsWith('d') ? 'diagonal' : 'along',
    gap,
    place,
  });
  const INCH = 25_400_000;

  it.each([
    ['middle', 'hollow'],
    ['both ends, it rocks', 'crowned'],
    ['one end', 'low corner'],
    ['at the edge', 'step'],
    ['one spot', 'local dip'],
  ] as const)('is named by where the worst line gaps: %s is %s (common practice, no source)', (place, word) => {
    expect(patternOfLines([line('a', 0.001 * INCH, 'one spot'), line('b', 0.004 * INCH, place)])?.word).toBe(word);
  });

  it('is twisted where one diagonal gaps more than twice the other, flat where nothing goes under', () => {
    expect(patternOfLines([line('d1', 0.004 * INCH), line('d2', 0.001 * INCH)])?.word).toBe('twisted');
    expect(patternOfLines([line('d1', 0.0005 * INCH), line('a', 0)])?.word).toBe('flat');
  });

  it('says nothing where nobody wrote where it gaps, or no line was laid', () => {
    expect(patternOfLines([line('a', 0.004 * INCH)])).toBeNull();
    expect(patternOfLines([])).toBeNull();
  });
});
