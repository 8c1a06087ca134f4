/** Order of a queue: hold-free, promise, rush, time in the shop; alike set-ups where no promise is lost. No source. */
import { describe, expect, it } from 'vitest';
import { aheadWords, type Queued, queueOrder, setUpWords } from '#core/floor/compute/queue.ts';
import type { Day, Moment } from '#core/kernel/days.ts';

const row = (operationId: number, more: Partial<Queued> = {}): Queued => ({
  operationId,
  rank: null,
  promisedOn: '2026-03-12' as Day,
  promisedMinute: 1020,
  rush: false,
  arrivedAt: `2026-03-0${operationId}T08:00:00.000Z` as Moment,
  setUpKey: '',
  ...more,
});
const orderOf = (...rows: Queued[]) => queueOrder(rows).map((r) => r.operationId);
const on = (day: string): Partial<Queued> => ({ promisedOn: day as Day });

describe('queueOrder', () => {
  it('goes by promise, then rush, then time in the shop; no promise comes last', () => {
    expect(orderOf(row(1, { promisedOn: null }), row(2), row(3, on('2026-03-11')), row(4, { rush: true }))).toEqual([
      3, 4, 2, 1,
    ]);
    expect(orderOf(row(3), row(2), row(1))).toEqual([1, 2, 3]);
  });

  it('puts the hour of a promise before time in the shop', () => {
    expect(orderOf(row(1), row(2, { promisedMinute: 600 }))).toEqual([2, 1]);
  });

  it('takes what the lead put first, in that order', () => {
    expect(orderOf(row(1, on('2026-03-10')), row(2, { rank: 2 }), row(3, { rank: 1 }))).toEqual([3, 2, 1]);
  });

  it('draws alike set-ups together among work promised for the same time', () => {
    const stem = (size: string) => ({ setUpKey: `stem ${size}` });
    expect(orderOf(row(1, stem('6.0')), row(2, stem('5.5')), row(3, stem('6.0')))).toEqual([1, 3, 2]);
  });

  it('never lets a same set-up pass somebody who was promised earlier, or a rush', () => {
    const same = { setUpKey: 'stem 6.0' };
    const earlier = orderOf(row(1, same), row(2), row(3, { ...same, ...on('2026-03-13') }));
    expect(earlier).toEqual([1, 2, 3]);
    expect(orderOf(row(1, { ...same, rush: true }), row(2, { rush: true }), row(3, same))).toEqual([1, 2, 3]);
  });

  it('loses and doubles nothing', () => {
    const rows = Array.from({ length: 50 }, (_, i) =>
      row(i + 1, {
        rush: i % 3 === 0,
        setUpKey: `s${i % 4}`,
        rank: i % 7 === 0 ? i : null,
        ...on(`2026-03-1${i % 3}`),
      }),
    );
    expect(orderOf(...rows).sort((a, b) => a - b)).toEqual(rows.map((r) => r.operationId));
  });
});

describe('aheadWords', () => {
  it('rounds up to tenths of an hour', () => {
    expect(aheadWords(6, 34_200)).toBe('6 castings, 9.5 h ahead');
    expect(aheadWords(1, 361)).toBe('1 casting, 0.2 h ahead');
    expect(aheadWords(2, 7200)).toBe('2 castings, 2 h ahead');
    expect(aheadWords(0, 0)).toBe('This bench is clear.');
  });
});

describe('setUpWords', () => {
  it('speaks only when two share one', () => {
    expect(setUpWords(['stem 6.0', 'stem 6.0', 'stem 5.5', ''])).toBe('same set-up first: stem 6.0, then stem 5.5');
    expect(setUpWords(['stem 6.0', 'stem 5.5', ''])).toBe('');
  });
});
