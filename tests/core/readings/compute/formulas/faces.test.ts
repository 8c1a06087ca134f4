import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { FACE_FORMULAS } from '#core/readings/compute/formulas/faces.ts';
import { FORMULAS } from '#core/readings/compute/formulas.ts';
import type { Facts, Reading } from '#core/readings/compute/model.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { DECK, gridReadings, HEAD_LIMITS, headFacts, lineReadings, workedReadings } from '#tests/kit/face-facts.ts';

const TENTH = 2540;
const early = { stage: 'before' } as const;

function known(
  quantity: string,
  readings: readonly Reading[],
  words: Partial<Facts> = {},
  stage: 'before' | 'after' = 'before',
) {
  return openBench(headFacts({ readings: [...readings], ...words })).known(quantity, null, null, stage);
}

describe('FACE_FORMULAS', () => {
  it('are among the formulas of the bench', () => {
    for (const name of Object.keys(FACE_FORMULAS)) expect(FORMULAS[name]).toBe(FACE_FORMULAS[name]);
  });

  it.each([
    ['deck-flatness', 56],
    ['deck-along', 50],
    ['deck-across', 9],
    ['deck-span', 17],
    ['deck-cut-best', 66],
  ])('%s of the worked head is %i tenths (exact mathematics)', (quantity, tenths) => {
    expect(known(quantity, workedReadings())?.value).toBe(tenths * TENTH);
  });

  it('asks for length and width before it judges a span, and says when points stand too far apart', () => {
    const limits = (quantity: string, target: string) => [
      ...HEAD_LIMITS.filter((it) => it.quantity !== quantity),
      ...(target === '' ? [] : [limitOf(quantity, 'in', { target })]),
    ];

    expect(known('deck-span', workedReadings(), { limits: limits('deck-width', '') })?.marks).toEqual([
      'type the length and the width of the grid',
    ]);
    expect(known('deck-span', workedReadings(), { limits: limits('deck-span-length', '6') })).toMatchObject({
      value: null,
      marks: ['points too far apart for this span'],
    });
    expect(known('deck-span', workedReadings(), { limits: limits('deck-span-length', '') })).toBeNull();
  });

  it('goes to a whole set of straightedge lines where the grid is read only in part', () => {
    const lines = {
      'along-1': '0.0010',
      'along-2': '0.0020',
      'along-3': '0.0010',
      'diagonal-1': '0.0015',
      'diagonal-2': '0',
    };
    const part = gridReadings(DECK, [
      [0, -5, 0, null],
      [0, -5, 0, null],
    ]);

    expect(known('deck-flatness', [...part, ...lineReadings(DECK, lines)])?.value).toBe(20 * TENTH);
    expect(known('deck-flatness', part)?.value).toBeNull();
  });

  it('counts a line laid across for the whole face, and does not ask for it', () => {
    const lines = {
      'along-1': '0.0010',
      'along-2': '0.0010',
      'along-3': '0.0010',
      'diagonal-1': '0.0010',
      'diagonal-2': '0.0010',
    };

    expect(known('deck-flatness', lineReadings(DECK, lines))?.value).toBe(10 * TENTH);
    expect(known('deck-flatness', lineReadings(DECK, { ...lines, 'across-2': '0.0060' }))?.value).toBe(60 * TENTH);
  });

  it('says nothing of a face that nobody read', () => {
    for (const quantity of ['deck-flatness', 'deck-along', 'deck-span', 'deck-cut-best', 'total-removed'])
      expect(known(quantity, [])).toBeNull();
  });

  it('reads a grid after the work apart from the one before it', () => {
    const after = gridReadings(
      DECK,
      [
        [0, -2, 0],
        [0, -2, 0],
      ],
      { stage: 'after' },
    );
    const grid = [
      ...gridReadings(DECK, [
        [0, -50, 0],
        [0, -50, 0],
      ]),
      ...after.filter((it) => it.stage === 'after'),
    ];

    expect(known('deck-flatness', grid)?.value).toBe(50 * TENTH);
    expect(known('deck-flatness', grid, {}, 'after')?.value).toBe(2 * TENTH);
  });
});

describe('total-removed', () => {
  const thick = (typed: string, stage: 'before' | 'after') => readingOf('thickness', typed, 'in', { stage });
  const stamp = (typed: string) => readingOf('earlier-removal', typed, 'in', early);
  const total = (readings: readonly Reading[], words: Partial<Facts> = {}) =>
    known('total-removed', readings, words, 'after');
  const cut = [thick('3.9600', 'before'), thick('3.9540', 'after')];

  it('is what is missing to the thickness of a new one, where the sheet gives it (exact arithmetic)', () => {
    const limits = [...HEAD_LIMITS, limitOf('thickness', 'in', { stage: 'before', target: '3.9700', low: '3.9520' })];

    expect(total(cut, { limits })?.value).toBe(160 * TENTH);
  });

  it('else adds earlier visits, a stamp and this visit (exact arithmetic)', () => {
    const earlier = [{ tag: 30112, position: 'left', removed: 40 * TENTH }];

    expect(total([...cut, stamp('0.0020')], { earlier })?.value).toBe((40 + 20 + 60) * TENTH);
    expect(total([...cut, stamp('0')])?.value).toBe(60 * TENTH);
  });

  it('is not known while nobody looked for a stamp, or a visit was not measured: empty is not zero', () => {
    const blind = [{ tag: 30112, position: 'left', removed: null }];

    expect(total(cut)).toMatchObject({
      value: null,
      marks: ['write what was taken off before, 0 where no stamp is found'],
    });
    expect(total([...cut, stamp('0')], { earlier: blind })?.marks).toEqual(['visit with tag 30112 was not measured']);
  });

  it('fails all the same where the known part is too much already', () => {
    const limits = [...HEAD_LIMITS, limitOf('total-removed', 'in', { high: '0.0050' })];

    expect(total(cut, { limits })?.value).toBe(60 * TENTH);
  });
});
