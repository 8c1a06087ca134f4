import { describe, expect, it } from 'vitest';
import { faceQuantities } from '#core/catalogue/compute/faces.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { blankFaces, faceSurveys } from '#core/sheets/compute/face-surveys.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';

const deck = faceQuantities({ code: 'deck' });
/** Three by three: the middle 20 tenths of a thou below the rest. */
const dipped = [1, 2, 3].flatMap((column) =>
  [1, 2, 3].map((row) =>
    readingOf(deck.dial, column === 2 && row === 2 ? '-0.0020' : '0.0000', 'in', {
      point: `c${column}r${row}`,
      stage: 'before',
    }),
  ),
);
const counts = [
  readingOf(deck.columns, '3', 'count', { stage: 'before' }),
  readingOf(deck.rows, '3', 'count', { stage: 'before' }),
];
const benchOf = (readings: Parameters<typeof factsOf>[0] = {}) =>
  openBench(factsOf({ limits: [limitOf(deck.flatness, 'in', { high: '.004', stage: 'before' })], ...readings }));

describe('faceSurveys', () => {
  it('shows the heights above the lowest plane and the points that decide (exact mathematics)', () => {
    const [survey] = faceSurveys(benchOf({ readings: [...counts, ...dipped] }));

    expect(survey).toMatchObject({ heading: 'Deck, as found', columns: 3, rows: 3 });
    expect(survey?.points.map(({ text }) => text)).toEqual(['20', '20', '20', '20', '0', '20', '20', '20', '20']);
    expect(survey?.points.find(({ column, row }) => column === 2 && row === 2)).toMatchObject({
      share: 0,
      touches: 'lower',
    });
    expect(survey?.said).toContain('Flatness 0.0020 in, pass.');
    expect(survey?.said).toContain('Local dip:');
  });

  it('lists the straightedge lines that were read', () => {
    const readings = [
      readingOf(deck.gap, '.003', 'in', { point: 'along-2', stage: 'before' }),
      readingOf(deck.gapPlace, 'middle', null, { point: 'along-2', stage: 'before' }),
    ];
    const [survey] = faceSurveys(benchOf({ readings }));

    expect(survey?.points).toEqual([]);
    expect(survey?.lines).toMatchObject([{ text: '0.003 in, middle' }]);
  });

  it('is empty where nobody surveyed a face', () => {
    expect(faceSurveys(benchOf())).toEqual([]);
    expect(faceSurveys(benchOf({ readings: [readingOf(deck.flatness, '.002', 'in', { stage: 'before' })] }))).toEqual(
      [],
    );
  });
});

describe('blankFaces', () => {
  it('gives a grid as it was laid out and a box for each line', () => {
    const [face] = blankFaces(benchOf({ readings: counts }), new Set([deck.flatness]));

    expect(face).toMatchObject({ heading: 'Deck, flatness', groups: [], face: { columns: 3, rows: 3 } });
    expect(face?.rows.length).toBeGreaterThan(4);
  });

  it('gives none where flatness is not wanted', () => {
    expect(blankFaces(benchOf(), new Set(['thickness']))).toEqual([]);
  });
});
