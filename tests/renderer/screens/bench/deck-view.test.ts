import { describe, expect, it } from 'vitest';
import {
  edgeRows,
  foundWords,
  gridRows,
  heightsSeen,
  isSecondUp,
  isWhole,
  type Lie,
  limitWords,
  partComeFor,
  plateOfFace,
  pointBeside,
  pointsInOrder,
  seenAt,
  sheetFor,
  sizeRows,
  stageComeFor,
  viewOfFace,
} from '#renderer/screens/bench/deck-view.ts';
import { startAt, stepFrom } from '#renderer/screens/bench/reading-view.ts';
import { BOWED, EMPTY_GRID, surveyOf } from './surveys.ts';

const LYING: Lie = { turned: false, second: false };
const survey = surveyOf(BOWED);
const { points } = survey.before;
const codes = (lie: Lie, way: 'there' | 'rows') => pointsInOrder(points, lie, way).map((point) => point.code);

describe('pointsInOrder', () => {
  it('goes there and back, so that the dial always slides to a neighbour', () => {
    const order = pointsInOrder(points, LYING, 'there');
    expect(order.map((point) => point.code).slice(0, 7)).toEqual([
      'c1r1',
      'c2r1',
      'c3r1',
      'c4r1',
      'c5r1',
      'c5r2',
      'c4r2',
    ]);
    order.slice(1).forEach((point, n) => {
      const before = order[n];
      expect(Math.abs(point.column - (before?.column ?? 0)) + Math.abs(point.row - (before?.row ?? 0))).toBe(1);
    });
  });

  it('goes row by row as a form is filled', () => {
    expect(codes(LYING, 'rows').slice(4, 7)).toEqual(['c5r1', 'c1r2', 'c2r2']);
  });

  it.each([
    [{ turned: true, second: false }, 'c5r3', 'c4r3'],
    [{ turned: false, second: true }, 'c1r3', 'c2r3'],
    [{ turned: true, second: true }, 'c5r1', 'c4r1'],
  ] as const)('starts at the upper left as the face lies: %o', (lie, first, second) => {
    const order = pointsInOrder(points, lie, 'there');
    expect(order.slice(0, 2).map((point) => point.code)).toEqual([first, second]);
    expect(order.map((point) => seenAt(point, lie))[0]).toEqual({ x: 0, y: 0 });
    expect(new Set(order)).toEqual(new Set(points));
  });
});

describe('seenAt', () => {
  it('turns a place end for end and never mirrors it: twice turned is where it was (property)', () => {
    for (const point of points) {
      const turned = seenAt(point, { turned: true, second: false });
      const back = seenAt({ along: turned.x, across: turned.y }, { turned: true, second: false });
      expect(back).toEqual(seenAt(point, LYING));
      expect(turned).toEqual({ x: 1 - point.along, y: 1 - point.across });
    }
  });
});

describe('pointBeside', () => {
  it('is the next row of the same column as the face lies, and nothing at the edge', () => {
    expect(pointBeside(points, 'c2r2', LYING, 1)?.code).toBe('c2r3');
    expect(pointBeside(points, 'c2r2', { turned: true, second: false }, 1)?.code).toBe('c2r1');
    expect(pointBeside(points, 'c2r3', LYING, 1)).toBeUndefined();
  });
});

describe('heightsSeen', () => {
  it('is row by row as seen, the lowest zero', () => {
    const { columns, heights } = heightsSeen(points, { turned: true, second: false });
    expect(columns).toBe(5);
    expect(heights[0]).toBe((8 + 52) * 2_540);
    expect(heights[7]).toBe(0);
  });

  it('is nothing before there is a plane', () => {
    expect(heightsSeen(surveyOf(EMPTY_GRID).before.points, LYING).heights).toEqual([]);
  });
});

describe('isSecondUp', () => {
  it.each([
    ['I', ['intake side', 'exhaust side'], false],
    ['E', ['intake side', 'exhaust side'], true],
    ['E', ['valley side', 'outer side'], false],
    ['none', ['intake side', 'exhaust side'], false],
    [undefined, ['upper edge', 'lower edge'], false],
  ] as const)('drawing begins with %s, face with %o: %s', (upper, sides, second) => {
    expect(isSecondUp(sides, upper)).toBe(second);
  });
});

describe('gridRows, edgeRows, sizeRows', () => {
  const after = surveyOf([[0, null, null, null, null], ...EMPTY_GRID.slice(1)]);
  const sheet = sheetFor(after, gridRows(after, after.before, LYING, 'there'));

  it('make a sheet that the bench types into: the hand starts at the first point not read and goes on along the path', () => {
    const start = startAt(sheet, ['once']);
    expect(start).toEqual({ row: 'deck-dial|c2r1|before', column: 'once' });
    const step = (from: string) => stepFrom(sheet, ['once'], { row: from, column: 'once' }, 1)?.row;
    expect(step('deck-dial|c5r1|before')).toBe('deck-dial|c5r2|before');
    expect(step('deck-dial|c1r3|before')).toBe('deck-dial|c2r3|before');
    expect(step('deck-dial|c5r3|before')).toBeUndefined();
  });

  it('step over where a gap is: it is touched at its line', () => {
    const rows = edgeRows(after, after.before);
    expect(rows.filter((row) => row.shown).map((row) => row.key)).toEqual([
      'deck-gap|along-1|before',
      'deck-gap|along-2|before',
    ]);
    expect(rows.find((row) => row.quantity === 'deck-gap-place')).toMatchObject({
      family: 'choice',
      choices: ['middle', 'one end'],
    });
  });

  it('count columns and measure sizes, each at the stage it is kept at', () => {
    expect(sizeRows(after).map((row) => [row.key, row.family, row.unit])).toEqual([
      ['deck-columns||before', 'count', 'count'],
      ['deck-length||before', 'length', 'in'],
      ['deck-width||before', 'length', 'in'],
    ]);
  });

  it('say when nothing is left to read', () => {
    expect(isWhole(sheet.rows)).toBe(false);
    expect(isWhole(gridRows(survey, survey.before, LYING, 'there'))).toBe(true);
  });
});

describe('stageComeFor and partComeFor', () => {
  it('come for the survey before work until something was read after it', () => {
    expect(stageComeFor(survey)).toBe('before');
    expect(stageComeFor(surveyOf(BOWED, [[0, null, null, null, null], ...EMPTY_GRID.slice(1)]))).toBe('after');
  });

  it('come for the grid, unless only gaps were read', () => {
    expect(partComeFor(surveyOf(EMPTY_GRID))).toBe('grid');
    const only = surveyOf(EMPTY_GRID);
    const [line, ...lines] = only.before.lines;
    if (!line) throw new Error('no line');
    const gapped = { ...line, cell: { ...line.cell, state: 'read' as const } };
    expect(partComeFor({ ...only, before: { ...only.before, lines: [gapped, ...lines] } })).toBe('edge');
  });
});

describe('limitWords', () => {
  it('says the unit of a limit that is not in the unit of the survey, so that nobody reads inches as millimetres', () => {
    const { limit } = survey.before.flatness;
    expect(limitWords(limit, 'in')).toBe('at most .0040');
    expect(limitWords(limit, 'mm')).toBe('at most .0040 in');
    expect(limitWords(null, 'in')).toBe('');
  });
});

describe('foundWords', () => {
  it('says what was measured, against what, and what comes first', () => {
    expect(foundWords(survey, survey.before)).toBe(
      'Deck .0056 in out of flat (at most .0040), hollow. Straighten before surfacing.',
    );
  });
});

describe('viewOfFace and plateOfFace', () => {
  it('show each face where it is drawn', () => {
    expect(
      ['deck', 'left-deck', 'right-deck', 'exhaust-face'].map((code) => [viewOfFace(code), plateOfFace(code)]),
    ).toEqual([
      ['deck', 0],
      ['deck', 1],
      ['deck', 0],
      ['exhaust_face', 0],
    ]);
  });
});
