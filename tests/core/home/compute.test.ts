import { describe, expect, it } from 'vitest';
import {
  dayWords,
  goingWords,
  leftWords,
  lengthWords,
  minutesLeft,
  ringBy,
  summaryWords,
  untilWords,
  whenWords,
} from '#core/home/compute.ts';
import type { Day, Moment } from '#core/kernel/days.ts';

const day = (text: string) => text as Day;
const CLOCK = { hourClock: '24' } as const;

describe('minutesLeft', () => {
  it('counts the clock, nights included', () => {
    const now = { day: day('2026-03-10'), minute: 692 };
    expect(minutesLeft(now, { day: day('2026-03-10'), minute: 840 })).toBe(148);
    expect(minutesLeft(now, { day: day('2026-03-11'), minute: 692 })).toBe(1440);
    expect(minutesLeft(now, { day: day('2026-03-09'), minute: 1020 })).toBe(-1112);
  });
});

describe('leftWords', () => {
  it('says what is left, or by how much it was missed', () => {
    expect([leftWords(148), leftWords(60), leftWords(-40), leftWords(-2881)]).toEqual([
      '2 h 28 min left',
      '1 h left',
      'missed by 40 min',
      'missed by 2 days',
    ]);
    expect(leftWords(0)).toBe('missed by 0 min');
    expect(lengthWords(1440)).toBe('1 day');
  });
});

describe('goingWords', () => {
  const going = { ready: false, told: null, blocked: false, where: 'at Assembly', work: 3600, left: 120 };

  it('says ready, on time, behind, will miss, missed', () => {
    expect(goingWords(going)).toEqual({ words: 'at Assembly, on time', tone: 'plain', misses: false });
    expect(goingWords({ ...going, work: 14_400 })).toEqual({
      words: 'at Assembly, 2 h behind',
      tone: 'close',
      misses: true,
    });
    expect(goingWords({ ...going, blocked: true, where: 'waiting parts' })).toMatchObject({
      words: 'will miss: waiting parts',
      tone: 'hold',
    });
    expect(goingWords({ ...going, left: 0 })).toMatchObject({ words: 'missed: at Assembly', misses: true });
    expect(goingWords({ ...going, ready: true, left: -5 })).toEqual({
      words: 'ready, not told',
      tone: 'good',
      misses: false,
    });
    expect(goingWords({ ...going, ready: true, told: '09:52' }).words).toBe('ready, told 09:52');
  });
});

describe('dayWords', () => {
  it('writes the day out', () => {
    expect(dayWords(day('2026-03-10'))).toBe('Tuesday 10 March');
  });
});

describe('whenWords', () => {
  it('gets longer with age', () => {
    const at = (text: string) => whenWords({ day: day(text), minute: 665 }, day('2026-03-10'), CLOCK);
    expect([at('2026-03-10'), at('2026-03-06'), at('2026-03-03')]).toEqual(['11:05', 'Fri', 'Tue 3 Mar']);
  });
});

describe('untilWords', () => {
  const until = (end: string) =>
    untilWords(end, (at: Moment) => ({ day: day(at.slice(0, 10)), minute: 900 }), day('2026-03-10'), CLOCK);

  it('names the day, and the hour where there is one', () => {
    expect(until('2026-03-12')).toBe('until Thu 12 Mar');
    expect(until('2026-03-10T15:00:00.000Z')).toBe('answer by 15:00');
    expect(until('2026-03-13T15:00:00.000Z')).toBe('answer by Fri 13 Mar 15:00');
  });
});

describe('ringBy', () => {
  it('is closing time while somebody is in', () => {
    expect([ringBy(1020, 900, CLOCK), ringBy(1020, 1020, CLOCK), ringBy(null, 900, CLOCK)]).toEqual([
      'ring by 17:00',
      'ring first thing',
      'ring first thing',
    ]);
  });
});

describe('summaryWords', () => {
  it('counts in plain sentences', () => {
    expect(summaryWords({ promised: 5, misses: 1, ring: 4, approvals: 3 })).toBe(
      '5 tickets promised today, 1 will miss. 4 people to ring, 3 approvals to chase.',
    );
    expect(summaryWords({ promised: 0, misses: 0, ring: 0, approvals: 0 })).toBe(
      'Nothing is promised today. Nobody is waiting for a call, no approvals to chase.',
    );
    expect(summaryWords({ promised: 1, misses: 0, ring: 1, approvals: 1 })).toBe(
      '1 ticket promised today. 1 person to ring, 1 approval to chase.',
    );
  });
});
