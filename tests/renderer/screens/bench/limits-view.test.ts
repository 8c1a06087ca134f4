import { describe, expect, it } from 'vitest';
import { answeredBy, figuresOf, groupLimits, type LimitRow, nameOf } from '#renderer/screens/bench/limits-view.ts';

const row = (over: Partial<LimitRow>): LimitRow =>
  ({
    id: 1,
    quantity: 'margin',
    words: 'margin',
    stage: 'after',
    side: 'any',
    text: 'at least 0.047',
    targetText: null,
    unit: 'in',
    forWhat: 'shop',
    typedBy: '',
    checkedBy: '',
    others: [],
    ...over,
  }) as LimitRow;

describe('nameOf, figuresOf, answeredBy', () => {
  it('says side and stage only where they matter', () => {
    expect(nameOf(row({ side: 'E' }))).toBe('margin, exhaust');
    expect(nameOf(row({ stage: 'before' }))).toBe('margin, before work');
  });

  it('gives the figures with their unit, a target beside limits or alone', () => {
    expect(figuresOf(row({}))).toBe('at least 0.047 in');
    expect(figuresOf(row({ text: '1.690 – 1.710', targetText: '1.700' }))).toBe('1.690 – 1.710 in, target 1.700');
    expect(figuresOf(row({ text: '', targetText: '0.004' }))).toBe('0.004 in');
  });

  it('names who answers for it, and nobody where nobody does', () => {
    expect(answeredBy(row({ typedBy: 'DK', checkedBy: 'BL' }))).toBe('typed by DK, checked by BL');
    expect(answeredBy(row({}))).toBe('');
  });
});

describe('groupLimits', () => {
  it('sets what was typed for the job before what the shop falls back on; empty groups are left out', () => {
    const own = row({ forWhat: 'this_job' });
    const reckoned = row({ quantity: 'hone-allowance', text: '', targetText: '0.004' });

    expect(groupLimits([row({}), reckoned, own]).map((it) => it.limits.length)).toEqual([1, 1, 1]);
    expect(groupLimits([reckoned]).map((it) => it.title)).toEqual(['Figures the shop reckons with']);
  });
});
