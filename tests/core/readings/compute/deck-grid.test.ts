import { describe, expect, it } from 'vitest';
import { FACES } from '#core/catalogue/compute/faces.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import {
  gridOf,
  isWhole,
  ofPart,
  readOf,
  surveyedTables,
  zoneKnown,
  zoneOf,
} from '#core/readings/compute/deck-grid.ts';
import { readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { DECK, gridReadings, headFacts, lineReadings } from '#tests/kit/face-facts.ts';

type Words = Parameters<typeof headFacts>[0];
const lookAt = (words: Words) => openBench(headFacts(words)).look({ spot: null, stage: 'before' });
const grid = (words: Words) => {
  const [face] = FACES;
  if (!face) throw new Error('no face');
  return gridOf(lookAt(words), face);
};

describe('gridOf', () => {
  it('is five columns and three rows until somebody chooses others', () => {
    expect(grid({})).toMatchObject({ columns: 5, rows: 3, wanted: 15, points: [] });
    const chosen = ['11', '7'].map((typed, n) =>
      readingOf(n === 0 ? 'deck-columns' : 'deck-rows', typed, 'count', { stage: 'before' }),
    );
    expect(grid({ readings: chosen })).toMatchObject({ columns: 11, rows: 7, wanted: 77 });
  });

  it('keeps to what can be laid out: two to fifteen columns', () => {
    const columns = (typed: string) =>
      grid({ readings: [readingOf('deck-columns', typed, 'count', { stage: 'before' })] }).columns;

    expect([columns('1'), columns('40')]).toEqual([2, 15]);
  });

  it('does not see points outside the grid that is chosen now', () => {
    const readings = [
      ...gridReadings(DECK, [
        [0, -5, 0],
        [0, -5, 0],
      ]),
      readingOf('deck-dial', '0.0090', 'in', { stage: 'before', point: 'c9r1' }),
    ];

    expect(grid({ readings }).points.map((it) => it.code)).toEqual(['c1r1', 'c1r2', 'c2r1', 'c2r2', 'c3r1', 'c3r2']);
  });
});

describe('surveyedTables', () => {
  it('names the table of each face that was read on a dial or with a straightedge', () => {
    const grid = gridReadings({ code: 'intake-face' }, [
      [0, 0],
      [0, 0],
    ]);

    expect([...surveyedTables(headFacts({ readings: grid }))]).toEqual(['head-faces']);
    expect([...surveyedTables(headFacts({ readings: lineReadings(DECK, { 'along-1': '0.0010' }) }))]).toEqual([
      'surface',
    ]);
    expect(surveyedTables(headFacts()).size).toBe(0);
  });
});

describe('zoneOf', () => {
  it('is nothing for fewer than four points, and tells how many were read (exact mathematics)', () => {
    const three = grid({
      readings: gridReadings(DECK, [
        [0, -9, 0],
        [null, null, null],
      ]),
    });

    expect(zoneOf(three)).toBeNull();
    expect([isWhole(three), readOf(three)]).toEqual([false, '3 of 6 points']);
  });

  it('is without doubt figure while a gauge was not named', () => {
    const rows = [
      [0, -9, 0],
      [0, -9, 0],
    ];
    const tool = toolOf({ uncertainty: 5080 });
    const named = grid({ readings: gridReadings(DECK, rows, { tool: tool.id }), tools: [tool] });
    const [not, is] = [grid({ readings: gridReadings(DECK, rows) }), named].map((it) => {
      const zone = zoneOf(it);
      return zone && zoneKnown(it, zone);
    });

    expect(not).toMatchObject({ value: 9 * 2540, uncertainty: null });
    expect(is?.uncertainty).toBeGreaterThan(5080);
  });
});

describe('ofPart', () => {
  const known = { value: 100_000, uncertainty: null, marks: [], planned: false };

  it('lets a part speak only when it is over the limit already', () => {
    expect(ofPart(lookAt({}), 'deck-flatness', known, false, 'part')).toMatchObject({ value: null, marks: ['part'] });
    expect(ofPart(lookAt({}), 'deck-flatness', { ...known, value: 200_000 }, false, 'part').value).toBe(200_000);
    expect(ofPart(lookAt({}), 'deck-flatness', known, true, 'part').value).toBe(100_000);
    expect(ofPart(lookAt({}), 'deck-along', { ...known, value: 9e9 }, false, 'part').value).toBeNull();
  });
});
