import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import type { Calendar } from '#core/tickets/compute/open-days.ts';
import { type PromiseInput, type PromiseStep, suggestPromise } from '#core/tickets/compute/promise.ts';

const CALENDAR: Calendar = {
  hours: [1, 2, 3, 4, 5].map((weekday) => ({ weekday, from: 480, until: 1020 })),
  holidays: [],
};
const hours = (n: number) => Math.round(n * 3600);
const step = (centre: string, attended: number, more: Partial<PromiseStep> = {}): PromiseStep => ({
  centre,
  seconds: hours(attended),
  unattended: 0,
  waitAfter: 'none',
  waitDays: 0,
  waitsFor: [],
  ...more,
});

/**
 * Worked by hand from the rule: Monday 9 March 2026, open 8 to 17, 09:48 is 2 000 of 10 000. Wash: 1.3 h ahead of 6.5 h clears
 * 4 000, own 0.65 h ends 5 000, overnight 10 000. Surfacer: (14.5 + 6.0) h of 13.0 h; clears 13 154, ends 17 770. Assembly
 * 1.3 h of 6.5 h: 19 770, Tuesday. Buffer 25 % of 12 770 is 3 193: 22 963, Wednesday.
 */
const WORKED: PromiseInput = {
  start: day('2026-03-09'),
  now: 2000,
  calendar: CALENDAR,
  openSeconds: hours(9),
  centres: {
    wash: { name: 'Wash', capacity: hours(6.5), queue: hours(1.3) },
    surfacer: { name: 'Surfacer', capacity: hours(13), queue: hours(14.5) },
    assembly: { name: 'Assembly', capacity: hours(6.5), queue: 0 },
  },
  castings: [
    {
      label: '30917',
      steps: [step('wash', 0.65, { waitAfter: 'overnight' }), step('surfacer', 6), step('assembly', 1.3)],
    },
  ],
  buffer: 2500,
};
const ours = WORKED.castings[0]?.steps ?? [];

describe('suggestPromise', () => {
  it('reckons the worked example to the day part', () => {
    const answer = suggestPromise(WORKED);
    expect(answer).toMatchObject({
      earliest: '2026-03-10',
      comfortable: '2026-03-11',
      bottleneck: 'surfacer',
      dependsOn: [],
    });
    expect(answer.castings[0]).toMatchObject({ end: 19_770, comfortable: 22_963 });
    expect(answer.castings[0]?.working).toEqual([
      'Wash: wait 2000, work 1000, until 10000',
      'Surfacer: wait 3154, work 4616, until 17770',
      'Assembly: wait 0, work 2000, until 19770',
    ]);
  });

  it('skips a holiday', () => {
    const answer = suggestPromise({ ...WORKED, calendar: { ...CALENDAR, holidays: [day('2026-03-11')] } });
    expect(answer.comfortable).toBe('2026-03-12');
  });

  it('is as slow as the slowest casting, which waits for pistons', () => {
    const waiting = [step('assembly', 0.65, { waitsFor: [{ words: 'pistons', day: day('2026-03-12') }] })];
    const answer = suggestPromise({ ...WORKED, castings: [...WORKED.castings, { label: '30919', steps: waiting }] });
    expect(answer).toMatchObject({ earliest: '2026-03-12', bottleneck: 'assembly' });
  });

  it('promises nothing while a wait has no date, and says which', () => {
    const waiting = [step('assembly', 1, { waitsFor: [{ words: 'pistons: no date yet', day: null }] })];
    const answer = suggestPromise({ ...WORKED, castings: [{ label: '30919', steps: waiting }] });
    expect(answer).toMatchObject({ earliest: null, comfortable: null, dependsOn: ['pistons: no date yet'] });
    expect(answer.castings[0]).toMatchObject({ end: null, comfortable: null });
  });

  it('asks the queue of a centre at the first visit only', () => {
    const twice = [step('surfacer', 1.3), step('surfacer', 1.3)];
    const answer = suggestPromise({ ...WORKED, now: 0, castings: [{ label: 'a', steps: twice }] });
    // 14.5 h of 13 h clears 11 154; two times 1 000 own work.
    expect(answer.castings[0]?.end).toBe(13_154);
  });

  it('lets a machine run on after closing, not past the next opening', () => {
    const run = (seconds: number) =>
      suggestPromise({
        ...WORKED,
        now: 9000,
        castings: [{ label: 'a', steps: [step('assembly', 0, { unattended: seconds })] }],
      }).castings[0]?.end;
    expect(run(hours(0.45))).toBe(9500);
    expect(run(hours(20))).toBe(10_000);
  });

  it('adds whole working days for a wait in days', () => {
    const waits = [step('assembly', 1.3, { waitAfter: 'working_days', waitDays: 2 })];
    expect(suggestPromise({ ...WORKED, castings: [{ label: 'a', steps: waits }] }).castings[0]?.end).toBe(24_000);
  });

  it('is today when there is nothing to do', () => {
    expect(suggestPromise({ ...WORKED, castings: [] })).toMatchObject({ earliest: null, bottleneck: null });
    expect(suggestPromise({ ...WORKED, castings: [{ label: 'a', steps: [] }] })).toMatchObject({
      earliest: '2026-03-09',
    });
  });

  it('never gets earlier by more work, more queue or a longer wait', () => {
    const order = fc.record({
      work: fc.integer({ min: 0, max: 200_000 }),
      queue: fc.integer({ min: 0, max: 500_000 }),
      more: fc.integer({ min: 0, max: 100_000 }),
    });
    fc.assert(
      fc.property(order, ({ work, queue, more }) => {
        const end = (w: number, q: number) => {
          const centres = { ...WORKED.centres, assembly: { name: 'Assembly', capacity: hours(6.5), queue: q } };
          const steps = ours.map((one) => (one.centre === 'assembly' ? { ...one, seconds: w } : one));
          return (
            suggestPromise({ ...WORKED, centres, castings: [{ label: 'a', steps }] }).castings[0]?.comfortable ?? 0
          );
        };
        return end(work + more, queue) >= end(work, queue) && end(work, queue + more) >= end(work, queue);
      }),
    );
  });
});
