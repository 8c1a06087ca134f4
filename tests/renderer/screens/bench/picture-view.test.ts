import { describe, expect, it } from 'vitest';
import { barsOf, firstPicture, picturesOf, profileAxes } from '#renderer/screens/bench/picture-view.ts';
import { pagesOf, type Spot, spotAt } from '#renderer/screens/bench/reading-view.ts';
import { boresOf } from './bores-sheet.ts';
import { cellOf, sheetOf } from './sheets.ts';

const at = (sheet: ReturnType<typeof boresOf>, row: string, column = '1'): Spot => {
  const spot = spotAt(sheet, row, column);
  if (!spot) throw new Error(`no place ${row} ${column}`);
  return spot;
};
const bores = boresOf();
const heights = sheetOf([cellOf('35.12'), cellOf('36.31'), cellOf(null), cellOf('35.61')]);

describe('picturesOf', () => {
  it('cuts a bore open where three levels stand in two axes, and draws judged or whole rows as bars', () => {
    const pictures = picturesOf(at(bores, 'bore|p0|before'));
    expect(pictures.map((one) => `${one.kind} ${one.words}`)).toEqual([
      'profile Bore before work',
      'bars Taper before',
      'bars Size wanted',
      'bars Taper after',
    ]);
  });

  it('offers nothing of a row in which nothing is read', () => {
    const empty = sheetOf([cellOf(null), cellOf(null), cellOf(null), cellOf(null)]);
    expect(picturesOf(at(empty, 'installed-height||before'))).toEqual([]);
  });
});

describe('firstPicture', () => {
  it('begins with what the hand is at: the bore, or the height that is judged', () => {
    const bore = at(bores, 'bore|p1|before');
    expect(firstPicture(bore, picturesOf(bore))?.kind).toBe('profile');
    const height = at(heights, 'installed-height||before');
    expect(firstPicture(height, picturesOf(height))?.row.quantity).toBe('height-with-shim');
    expect(firstPicture(height, [])).toBeNull();
  });
});

describe('barsOf', () => {
  it('has a bar for each place of the page with its figure, limits and verdict, and none for an unread one', () => {
    const spot = at(heights, 'installed-height||before');
    const groups = pagesOf(heights, false, 16)[0]?.groups ?? [];
    const bars = barsOf(spot, spot.row, groups);
    expect(bars.map((bar) => [bar.label, bar.text, bar.mark, bar.starts])).toEqual([
      ['1I', '35.12', 'pass', true],
      ['2I', '36.31', 'pass', false],
      ['1E', '', 'not-measured', true],
      ['2E', '35.61', 'pass', false],
    ]);
    expect(bars[2]?.value).toBeNull();
    expect([bars[0]?.low, bars[0]?.high, bars[0]?.target]).toEqual([34_750_000, 35_250_000, 35_000_000]);
  });
});

describe('profileAxes', () => {
  it('takes the readings of the place of the hand, axis by axis from the top down', () => {
    const row = at(bores, 'bore|p0|before').row;
    expect(profileAxes(at(bores, 'bore|p0|before'), row).map((axis) => axis.points.map((one) => one.text))).toEqual([
      ['3.9562', '3.9538', '3.9512'],
      ['3.9535', '3.9522', '3.9508'],
    ]);
    expect(profileAxes(at(bores, 'bore|p0|before', '2'), row)[0]?.points[0]?.value).toBeNull();
  });

  it('puts a level between where it lies, wherever the table has it', () => {
    const rows = bores.rows.map((row, n) => (n === 2 ? { ...row, pointWords: 'thrust, a quarter down' } : row));
    const sheet = { ...bores, rows };
    const spot = at(sheet, 'bore|p0|before');
    expect(profileAxes(spot, spot.row)[0]?.points.map((one) => one.words)).toEqual(['top', 'a quarter down', 'middle']);
  });
});
