import { describe, expect, it } from 'vitest';
import type { Cents } from '#core/kernel/units.ts';
import { isDeclined, isLive, isOptionLost, know } from '#core/state/compute/live.ts';
import { answer, at, casting, factsOf, line, onDay, operation, question } from '../builders.ts';

const estimate = (revision: number, minute: number) => ({
  id: revision,
  revision,
  sentAt: at(minute),
  validUntil: onDay('2026-04-08'),
  total: 37_594 as Cents,
});
const unanswered = (wanted: Parameters<typeof factsOf>[0]) => know(factsOf(wanted)).unanswered.map((q) => q.words);

describe('know', () => {
  it('lists the last estimate and every added work that waits for an answer', () => {
    expect(unanswered({ estimates: [estimate(1, 5), estimate(2, 9)] })).toEqual(['Estimate 2']);
    expect(unanswered({ questions: [question(), question({ id: 2, number: 2, askedAt: null })] })).toEqual([
      'Crack at seat 6',
    ]);
    expect(unanswered({ questions: [question({ closedAt: at(60) })] })).toEqual([]);
  });

  it('counts a ceiling said after the estimate as its answer, one said before not', () => {
    const ceiling = (minute: number) => [answer({ about: 'ceiling', question: null, at: at(minute) })];
    expect(unanswered({ estimates: [estimate(1, 9)], answers: ceiling(10) })).toEqual([]);
    expect(unanswered({ estimates: [estimate(1, 9)], answers: ceiling(8) })).toEqual(['Estimate 1']);
  });

  it('needs no answer while a ceiling agreed before covers the whole estimate', () => {
    const answers = [answer({ about: 'ceiling', question: null, at: at(8) })];
    expect(unanswered({ estimates: [estimate(1, 9)], answers, authorised: 37_594 as Cents })).toEqual([]);
    expect(unanswered({ estimates: [estimate(1, 9)], answers, authorised: 37_593 as Cents })).toEqual(['Estimate 1']);
  });

  it('asks nothing any more once it is declined or all of it is out', () => {
    const out = casting(1, { outAt: at(90) });
    expect(unanswered({ estimates: [estimate(1, 9)], ticket: { declinedAt: at(60) } })).toEqual([]);
    expect(unanswered({ estimates: [estimate(1, 9)], castings: [out] })).toEqual([]);
    expect(unanswered({ estimates: [estimate(1, 9)], castings: [out, casting(2)] })).toEqual(['Estimate 1']);
  });

  it('asks again when the answer was taken back', () => {
    const answers = [answer(), answer({ id: 2, order: 2, answer: 'withdrawn', question: null, withdraws: 1 })];
    expect(unanswered({ questions: [question()], answers })).toEqual(['Crack at seat 6']);
  });
});

describe('isLive', () => {
  it('keeps the last of a redo chain only', () => {
    const known = know(
      factsOf({
        operations: [
          operation(1, { finishedAt: at(1) }),
          operation(2, { redoOf: 1 as never, finishedAt: at(2), lineId: null }),
          operation(3, { redoOf: 2 as never, lineId: null }),
        ],
      }),
    );
    expect(known.live.map((o) => o.id)).toEqual([3]);
    expect(known.facts.operations.map((o) => isLive(o, known))).toEqual([false, false, true]);
  });
});

describe('isDeclined', () => {
  it('never takes away what was done', () => {
    const known = know(
      factsOf({ operations: [operation(1, { finishedAt: at(1) }), operation(2)], lines: [line(1, { answer: 'no' })] }),
    );
    expect(known.facts.operations.map((o) => isDeclined(o, known))).toEqual([false, true]);
  });
});

describe('isOptionLost', () => {
  it('is lost when another option was chosen or the question was closed', () => {
    const facts = factsOf({ questions: [question()], answers: [answer({ question: 12 })] });
    expect([isOptionLost(11, facts), isOptionLost(12, facts), isOptionLost(null, facts)]).toEqual([true, false, false]);
    expect(isOptionLost(11, factsOf({ questions: [question({ closedAt: at(9) })] }))).toBe(true);
  });
});
