import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { facesAt, surveyOf } from '#core/readings/compute/deck-survey.ts';
import type { StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { DECK, gridReadings, HEAD_LIMITS, headFacts, lineReadings, survey } from '#tests/kit/face-facts.ts';

const vee = {
  words: 'V8',
  cylinders: 8,
  layout: 'v',
  bankLean: null,
  faceLean: null,
  bore: null,
  stroke: null,
} as const;

const asRead = (readings: ReturnType<typeof lineReadings>): StageSurvey => survey(headFacts({ readings })).before;

describe('surveyOf', () => {
  it('has the faces of each casting, and none for a crank', () => {
    const codes = (more: Parameters<typeof headFacts>[0]) => facesAt(openBench(headFacts(more))).map((it) => it.code);

    expect(codes({})).toEqual(['deck', 'intake-face', 'exhaust-face']);
    expect(codes({ kind: 'block' })).toEqual(['deck']);
    expect(codes({ kind: 'block', engine: vee })).toEqual(['left-deck', 'right-deck']);
    expect(surveyOf(openBench(headFacts({ kind: 'crank' })), null)).toBeNull();
    expect(surveyOf(openBench(headFacts({})), 'left-deck')).toBeNull();
  });

  it('is as uneven as the worse of two decks, and not measured while one is not read', () => {
    const deck = (code: string, middle: number) =>
      gridReadings({ code }, [
        [0, middle, 0],
        [0, middle, 0],
      ]);
    const whole = (readings: ReturnType<typeof deck>) =>
      openBench(headFacts({ kind: 'block', engine: vee, readings })).known('deck-flatness', null, null, 'before');

    expect(whole(deck('left-deck', -10))).toMatchObject({ value: null, marks: ['right deck not measured'] });
    expect(whole([...deck('left-deck', -10), ...deck('right-deck', -20)])?.value).toBe(20 * 2540);
    const { faces } = survey(headFacts({ kind: 'block', engine: vee, readings: deck('left-deck', -41) }));
    expect(faces[0]?.summary).toBe('0.0041 in, too much');
  });

  it('takes grid, span and limits of a bank from those of the deck where it has none of its own', () => {
    const limits = [...HEAD_LIMITS, limitOf('deck-columns', 'count', { target: '7' })];
    const { grid, before } = survey(headFacts({ kind: 'block', engine: vee, limits }), 'right-deck');

    expect(grid).toEqual({ columns: 7, rows: 3, length: 457_200_000, width: 152_400_000 });
    expect(before.flatness.limit?.text).toBe('at most 0.0040');
    expect(before.span.limit?.text).toBe('at most 0.0030');
  });

  it('surveys by straightedge where no dial was used, with the feeler step as doubt (common practice)', () => {
    const lines = { 'along-1': '0.0020', 'along-2': '0.0045', 'along-3': '0.0030', 'diagonal-1': '0.0030' };
    const all = lineReadings(DECK, { ...lines, 'diagonal-2': '0.0025' });

    expect(asRead(lineReadings(DECK, lines)).flatness).toMatchObject({ text: '0.0045', word: 'too much' });
    expect(asRead(lineReadings(DECK, { ...lines, 'along-2': '0.0015' })).flatness).toMatchObject({
      word: 'not measured',
      marks: ['4 of 5 straightedge lines'],
    });
    expect(asRead(all)).toMatchObject({ basis: 'straightedge', flatness: { text: '0.0045', uncertainty: 12_700 } });
    expect(asRead(all).along.text).toBe('0.0045');
  });
});
