/** The word of an operation, rule by rule, and what stops it. */
import { describe, expect, it } from 'vitest';
import { know } from '#core/state/compute/live.ts';
import { isCovered, operationNow } from '#core/state/compute/operations.ts';
import { answer, at, casting, factsOf, hold, line, operation, part, question, run, signature } from '../builders.ts';

function nowOf(wanted: Parameters<typeof factsOf>[0], id = 1) {
  const known = know(factsOf({ operations: [operation(1)], ...wanted }));
  const found = known.facts.operations.find((o) => o.id === id);
  if (!found) throw new Error('no operation');
  return operationNow(known, found);
}
const wordOf = (wanted: Parameters<typeof factsOf>[0], id = 1) => nowOf(wanted, id).word;

describe('operationNow', () => {
  it('reads ready to start, started, stopped, done, signed', () => {
    expect(wordOf({})).toBe('ready to start');
    expect(wordOf({ runs: [run(1)] })).toBe('started');
    expect(wordOf({ runs: [run(1, { endedAt: at(20) })] })).toBe('stopped');
    const done = { operations: [operation(1, { finishedAt: at(30) })] };
    expect(wordOf(done)).toBe('done');
    expect(wordOf({ ...done, signOffs: [signature()] })).toBe('signed');
  });

  it('reads requested, quoted, approved by what the customer was asked and said', () => {
    const not = { answer: null, covered: false } as const;
    expect(wordOf({ lines: [line(1, { ...not, asked: false })] })).toBe('requested');
    expect(wordOf({ lines: [line(1, not)] })).toBe('quoted');
    expect(wordOf({ holds: [hold()] })).toBe('approved');
    expect(wordOf({ lines: [line(1, { ...not, answer: 'no' })] })).toBe('declined');
    expect(wordOf({ lines: [line(1, { withdrawn: true })] })).toBe('declined');
  });

  it('reads not needed and redone above all', () => {
    expect(wordOf({ operations: [operation(1, { notNeededAt: at(5) })] })).toBe('not needed');
    const redo = [operation(1, { finishedAt: at(5) }), operation(2, { redoOf: 1 as never, lineId: null })];
    expect(wordOf({ operations: redo })).toBe('redone');
    expect(wordOf({ operations: redo }, 2)).toBe('ready to start');
  });

  it('drops the options that were not chosen, and brings them back when the answer is taken back', () => {
    const asked = {
      questions: [question()],
      operations: [operation(1, { optionId: 11 }), operation(2, { optionId: 12, lineId: 2 as never })],
      lines: [line(1, { optionId: 11, answer: 'yes' }), line(2, { optionId: 12, answer: null, covered: false })],
    };
    expect(wordOf({ ...asked, answers: [answer({ question: 11 })] }, 2)).toBe('declined');
    expect(wordOf({ ...asked, answers: [answer({ question: 11 })] }, 1)).toBe('ready to start');
    const takenBack = [
      answer({ question: 11 }),
      answer({ id: 2, order: 2, answer: 'withdrawn', question: null, withdraws: 1 }),
    ];
    expect(wordOf({ ...asked, answers: takenBack }, 2)).toBe('quoted');
  });

  it('names what stops it in the order a person can mend it', () => {
    const stops = nowOf({
      operations: [operation(1, { groups: ['caustic', 'clean'] })],
      castings: [casting(1, { metalConfirmedAt: null })],
      holds: [hold({ castingId: 1 as never, words: 'gasket set' })],
      lines: [
        line(1, {
          covered: false,
          answer: null,
          coverWords: 'Not approved yet: 265.00 would pass the 900.00 agreed. Ask the customer.',
        }),
      ],
      parts: [part({ blocks: 1 })],
    }).stops;
    expect(stops.map((stop) => [stop.kind, stop.words])).toEqual([
      ['hold', 'On hold: waiting parts (gasket set).'],
      ['metal', 'Confirm the metal first: does a magnet stick?'],
      ['approval', 'Not approved yet: 265.00 would pass the 900.00 agreed. Ask the customer.'],
      ['part', 'Waits for a part: pistons.'],
    ]);
  });

  it('stops nothing by a part that is here, or is of another casting', () => {
    expect(nowOf({ parts: [part({ blocks: 1, hereAt: at(3) })] }).stops).toEqual([]);
    expect(nowOf({ parts: [part({ blocks: 1, castingId: 2 as never })] }).stops).toEqual([]);
    expect(nowOf({ parts: [part({ blocks: 2 })] }).stops).toEqual([]);
  });

  it('stops everything of the ticket while a casting is in doubt (I22)', () => {
    const other = hold({ reason: 'identity', castingId: 2 as never });
    const { stops, word } = nowOf({ castings: [casting(1), casting(2)], holds: [other] });
    expect(stops.map((stop) => stop.words)).toEqual(['Which casting is this? Clear the identity question first.']);
    expect(word).toBe('approved');
  });

  it.each([
    [{ ticket: { declinedAt: at(1) } }, 'The ticket was declined. No work is done on it.'],
    [{ ticket: { arrivedAt: null } }, 'It has not arrived yet: this is an enquiry.'],
    [{ castings: [casting(1, { outAt: at(1) })] }, 'This casting has left the shop.'],
    [{ castings: [casting(1, { scrapAt: at(1) })] }, 'This casting was declared scrap.'],
    [{ castings: [casting(1, { unworkedWhy: 'too far gone' })] }, 'This casting goes home unworked.'],
    [{ signOffs: [signature()] }, 'This casting is signed off. A lead must reopen it first.'],
  ])('works on nothing that ended (%#)', (facts, words) => {
    expect(nowOf(facts).stops[0]?.words).toBe(words);
  });

  it('counts a done operation as begun although nobody started it', () => {
    expect(nowOf({}).begun).toBe(false);
    expect(nowOf({ operations: [operation(1, { finishedAt: at(3) })] }).begun).toBe(true);
  });
});

describe('isCovered', () => {
  it('asks nobody about rework that is charged to nobody', () => {
    const known = know(factsOf({ operations: [operation(1, { lineId: null })] }));
    expect(known.facts.operations.map((o) => isCovered(known, o))).toEqual([true]);
  });
});
