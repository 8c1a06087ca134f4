import { describe, expect, it } from 'vitest';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { DECK, gridReadings, HEAD_LIMITS, headFacts, survey, workedReadings } from '#tests/kit/face-facts.ts';

const early = { stage: 'before' } as const;
const limits = [...HEAD_LIMITS, limitOf('cam-line', 'in', { ...early, high: '0.0020' })];
const cam = (typed: string) => readingOf('cam-line', typed, 'in', early);
const thick = (typed: string) => readingOf('thickness', typed, 'in', early);

function said(words: Parameters<typeof headFacts>[0], ...more: ReturnType<typeof cam>[]) {
  const { advice, measureFirst } = survey(
    headFacts({ limits, readings: [...workedReadings(), ...more], ...words }),
  ).before;
  return { advice, measureFirst };
}

describe('adviceOf', () => {
  it('asks for the cam line of an overhead cam head first, and says nothing of a cut (common practice, no source)', () => {
    expect(said({})).toEqual({
      advice: ['The deck is bowed. Measure cam line before anything is bent or cut.'],
      measureFirst: 'cam-line',
    });
  });

  it('straightens where both are bowed; surfaces where the cam line is straight (common practice, no source)', () => {
    expect(said({}, cam('0.0050'))).toMatchObject({
      advice: [expect.stringContaining('straighten before surfacing')],
      measureFirst: null,
    });
    expect(said({}, cam('0.0010'), thick('3.9600')).advice).toEqual([
      expect.stringContaining('do not bend it'),
      'Surface it: 0.0066 in off, levelled best, leaves 3.9534 in.',
    ]);
  });

  it('never bends a pushrod head or a block', () => {
    expect(said({ camLayout: 'ohv' }, thick('3.9600'))).toEqual({
      advice: ['Surface it: 0.0066 in off, levelled best, leaves 3.9534 in.'],
      measureFirst: null,
    });
    expect(said({ camLayout: 'ohv' }).advice).toEqual(['Surface it: 0.0066 in off, levelled best.']);
    expect(said({ kind: 'block' }).advice[0]).toMatch(/^Surface it/);
  });

  it('says not to cut where nothing is left to cut, whatever the cam line', () => {
    const tooThin = 'Every way of levelling leaves less than the least allowed: do not cut, ask the lead.';

    expect(said({}, thick('3.9550')).advice).toContain(tooThin);
    expect(said({ camLayout: 'ohv' }, thick('3.9550')).advice).toEqual([tooThin]);
  });

  it('says nothing of a flat face', () => {
    const flat = gridReadings(DECK, [
      [0, -5, 0],
      [0, -5, 0],
    ]);

    expect(survey(headFacts({ limits, readings: flat })).before).toMatchObject({ advice: [], measureFirst: null });
  });
});
