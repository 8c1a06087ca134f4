import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { basisPoints, cents } from '#core/kernel/units.ts';
import {
  type AnswerFact,
  answerOnLine,
  authorisedAmount,
  authorisedWithOverrun,
  isCommitted,
  lineCovered,
  notCoveredWords,
} from '#core/lines/compute/authorised.ts';

let last = 0;
const answer = (about: AnswerFact['about'], amount: number, more: Partial<AnswerFact> = {}): AnswerFact => {
  last += 1;
  const at = `2026-03-09T14:${String(last % 60).padStart(2, '0')}:00.000Z`;
  return {
    id: last,
    order: last,
    at,
    askedAt: about === 'added_work' ? at : null,
    about,
    answer: 'yes',
    question: about === 'ceiling' ? null : 7,
    amount: cents(amount),
    taxIn: false,
    lines: [],
    withdraws: null,
    ...more,
  };
};

describe('authorisedAmount', () => {
  it('is nothing before anybody answers', () => {
    expect(authorisedAmount([])).toMatchObject({ amount: 0, ceiling: false, base: null });
  });

  it('adds the option said yes to after the ceiling: 1500.00 and 326.72', () => {
    expect(authorisedAmount([answer('ceiling', 150000), answer('added_work', 32672)])).toMatchObject({
      amount: 182672,
      ceiling: true,
    });
  });

  it('takes the later of estimate and ceiling, which means everything', () => {
    const estimate = answer('estimate', 80000);
    const ceiling = answer('ceiling', 90000);
    expect(authorisedAmount([estimate, ceiling]).amount).toBe(90000);
    expect(
      authorisedAmount([ceiling, { ...estimate, id: 99, order: 999, at: '2026-03-10T00:00:00.000Z' }]),
    ).toMatchObject({
      amount: 80000,
      ceiling: false,
    });
  });

  it('leaves out an option that was asked before the ceiling', () => {
    const option = answer('added_work', 20000);
    const ceiling = answer('ceiling', 90000);
    const late = { ...option, id: 88, order: 888, at: '2026-03-10T00:00:00.000Z' };
    expect(authorisedAmount([ceiling, late]).amount).toBe(90000);
  });

  it('lets the earlier base stand again when the later is taken back', () => {
    const first = answer('ceiling', 60000);
    const second = answer('ceiling', 90000);
    const back = answer('ceiling', 0, { answer: 'withdrawn', withdraws: second.id });
    expect(authorisedAmount([first, second, back]).amount).toBe(60000);
  });

  it('adds nothing for yes followed by no', () => {
    const ceiling = answer('ceiling', 60000);
    const yes = answer('added_work', 10000);
    const no = answer('added_work', 10000, { answer: 'no' });
    expect(authorisedAmount([ceiling, yes, no]).amount).toBe(60000);
  });

  it('takes no estimate that was declined, and no ceiling answered no', () => {
    expect(
      authorisedAmount([answer('estimate', 80000, { answer: 'no' }), answer('ceiling', 1, { answer: 'no' })]).amount,
    ).toBe(0);
  });

  it('compares with tax as soon as one part is meant with tax', () => {
    expect(authorisedAmount([answer('ceiling', 60000), answer('added_work', 100, { taxIn: true })]).taxIn).toBe(true);
  });

  it('does not depend on the order the rows are read in', () => {
    const facts = [answer('ceiling', 60000), answer('added_work', 100), answer('estimate', 5), answer('added_work', 7)];
    fc.assert(
      fc.property(fc.shuffledSubarray(facts, { minLength: facts.length }), (mixed) => {
        expect(authorisedAmount(mixed)).toEqual(authorisedAmount(facts));
      }),
    );
  });
});

describe('answerOnLine', () => {
  it('is the last answer that names the line', () => {
    const asked = [{ line: 4, yes: true }];
    const yes = answer('estimate', 100, { lines: asked });
    const no = answer('estimate', 100, { answer: 'no', lines: asked });
    expect(answerOnLine([yes], 4)).toBe('yes');
    expect(answerOnLine([yes, no], 4)).toBe('no');
    expect(answerOnLine([yes, no], 5)).toBeNull();
  });

  it('reads a part answer line by line', () => {
    const part = answer('estimate', 100, {
      answer: 'part',
      lines: [
        { line: 4, yes: true },
        { line: 5, yes: false },
      ],
    });
    expect([answerOnLine([part], 4), answerOnLine([part], 5)]).toEqual(['yes', 'no']);
  });
});

describe('lineCovered', () => {
  const none = basisPoints(0);

  // Common practice, no source: ceiling 900.00, done 700.00, next line 265.00: stop and ask.
  it('stops at 700.00 done and 265.00 more under a ceiling of 900.00', () => {
    const coverage = lineCovered([answer('ceiling', 90000)], 1, cents(96500), none);
    expect(coverage).toMatchObject({ covered: false, why: 'over the ceiling', most: 90000 });
    expect(notCoveredWords(coverage, cents(26500))).toBe(
      'Not approved yet: 265.00 would pass the 900.00 agreed. Ask the customer.',
    );
  });

  it('goes on up to the ceiling exactly, and past it by the agreed overrun only', () => {
    const ceiling = [answer('ceiling', 90000)];
    expect(lineCovered(ceiling, 1, cents(90000), none).covered).toBe(true);
    expect(lineCovered(ceiling, 1, cents(90001), none).covered).toBe(false);
    expect(lineCovered(ceiling, 1, cents(99000), basisPoints(1000)).covered).toBe(true);
  });

  it('covers a line answered yes whatever the sum, and never one answered no', () => {
    const yes = answer('estimate', 100, { lines: [{ line: 1, yes: true }] });
    expect(lineCovered([yes], 1, cents(99999), none).covered).toBe(true);
    const no = answer('estimate', 100, { answer: 'no', lines: [{ line: 1, yes: true }] });
    const coverage = lineCovered([answer('ceiling', 90000), no], 1, cents(1), none);
    expect(coverage).toMatchObject({ covered: false, why: 'answered no' });
    expect(notCoveredWords(coverage, cents(1))).toContain('said no');
  });

  it('holds a line nobody was asked about', () => {
    const coverage = lineCovered([answer('estimate', 100, { lines: [{ line: 2, yes: true }] })], 1, cents(1), none);
    expect(coverage).toMatchObject({ covered: false, why: 'not asked' });
    expect(notCoveredWords(coverage, cents(1))).toContain('not been asked');
  });
});

describe('authorisedWithOverrun', () => {
  it('rounds once', () => {
    expect(authorisedWithOverrun(cents(12345), basisPoints(1000))).toBe(13580);
  });
});

describe('isCommitted', () => {
  it('follows work for labour, the order for parts, and counts typed charges at once', () => {
    expect(isCommitted({ kind: 'operation', started: true, ordered: false })).toBe(true);
    expect(isCommitted({ kind: 'package', started: false, ordered: true })).toBe(false);
    expect(isCommitted({ kind: 'part', started: false, ordered: true })).toBe(true);
    expect(isCommitted({ kind: 'sublet', started: true, ordered: false })).toBe(false);
    expect(isCommitted({ kind: 'fee', started: false, ordered: false })).toBe(true);
  });
});
