/**
 * When a ticket could be promised: the queues before it, its own work, its waits. Pure and browser-safe.
 *
 * Unit: 1/10 000 of a working day of a centre, counted from the opening of the first open day. Every division rounds up,
 * so that a promise is never too early by rounding. Source of the rule: common practice, no source; the arithmetic is
 * exact.
 */
import type { Day } from '../../kernel/days.ts';
import { type Calendar, openDayAfter, openDayIndex } from './open-days.ts';

const DAY = 10_000;

export type PromiseStep = Readonly<{
  /** Code of the work centre. */
  centre: string;
  /** Attended planned seconds. */
  seconds: number;
  /** The machine runs on after the hand is done. */
  unattended: number;
  waitAfter: 'none' | 'overnight' | 'working_days';
  waitDays: number;
  /** The step waits for a part, an answer or outside work: until the opening of this day; `null` when nobody knows. */
  waitsFor: readonly Readonly<{ words: string; day: Day | null }>[];
}>;

export type PromiseInput = Readonly<{
  /** The first open day (today while it is open). */
  start: Day;
  /** Share of that day already worked, 0 to 10 000. */
  now: number;
  calendar: Calendar;
  /** Open seconds of a day, for machines that run by themselves. */
  openSeconds: number;
  centres: Readonly<Record<string, Readonly<{ name: string; capacity: number; queue: number }>>>;
  castings: readonly Readonly<{ label: string; steps: readonly PromiseStep[] }>[];
  /** Basis points on top of waits and own work. */
  buffer: number;
}>;

export type CastingEnd = Readonly<{
  label: string;
  /** Null: a wait without a date. */
  end: number | null;
  comfortable: number | null;
  working: readonly string[];
}>;

export type PromiseAnswer = Readonly<{
  earliest: Day | null;
  comfortable: Day | null;
  /** Centre with the greatest wait and own work of the slowest casting; null without work. */
  bottleneck: string | null;
  dependsOn: readonly string[];
  castings: readonly CastingEnd[];
}>;

const up = (over: number, under: number): number => Number((BigInt(over) + BigInt(under) - 1n) / BigInt(under));
const roundUpToDay = (at: number): number => up(at, DAY) * DAY;

/** Reckon every casting; the ticket is as slow as its slowest one. */
export function suggestPromise(input: PromiseInput): PromiseAnswer {
  const castings = input.castings.map((casting) => reckon(input, casting));
  const dependsOn = [...new Set(castings.flatMap((one) => one.undated))];
  const slowest = castings.reduce<Reckoned | null>((a, b) => (a === null || b.end > a.end ? b : a), null);
  const ends = castings.map((one) => ({
    label: one.label,
    end: one.undated.length > 0 ? null : one.end,
    comfortable: one.undated.length > 0 ? null : one.comfortable,
    working: one.working,
  }));
  if (slowest === null || dependsOn.length > 0) {
    return { earliest: null, comfortable: null, bottleneck: slowest?.bottleneck ?? null, dependsOn, castings: ends };
  }
  const comfortable = Math.max(...castings.map((one) => one.comfortable));
  return {
    earliest: dayOf(input, slowest.end),
    comfortable: dayOf(input, comfortable),
    bottleneck: slowest.bottleneck,
    dependsOn,
    castings: ends,
  };
}

/** Open day number ceil(end / 10 000) - 1; nothing to do ends today. */
const dayOf = ({ calendar, start }: PromiseInput, end: number): Day =>
  openDayAfter(calendar, start, Math.max(0, up(end, DAY) - 1));

type Reckoned = {
  label: string;
  end: number;
  comfortable: number;
  bottleneck: string | null;
  undated: string[];
  working: string[];
};

function reckon(input: PromiseInput, casting: PromiseInput['castings'][number]): Reckoned {
  let cursor = input.now;
  let spent = 0;
  const visited = new Map<string, number>();
  const undated: string[] = [];
  const working: string[] = [];
  for (const step of casting.steps) {
    cursor = Math.max(cursor, dated(input, step, undated));
    const centre = input.centres[step.centre];
    const capacity = Math.max(1, centre?.capacity ?? 1);
    // At the first visit only: the queue runs down while the casting is elsewhere.
    const clears = visited.has(step.centre) ? cursor : input.now + up((centre?.queue ?? 0) * DAY, capacity);
    const wait = Math.max(0, clears - cursor);
    const own = up(step.seconds * DAY, capacity);
    visited.set(step.centre, (visited.get(step.centre) ?? 0) + wait + own);
    spent += wait + own;
    cursor = afterwards(cursor + wait + own, step, input.openSeconds);
    if (wait + own > 0) working.push(`${centre?.name ?? step.centre}: wait ${wait}, work ${own}, until ${cursor}`);
  }
  const busiest = [...visited].reduce<[string, number] | null>((a, b) => (a === null || b[1] > a[1] ? b : a), null);
  return {
    label: casting.label,
    end: cursor,
    comfortable: cursor + up(input.buffer * spent, DAY),
    bottleneck: busiest?.[0] ?? null,
    undated,
    working,
  };
}

/** The opening of the latest day waited for; undated waits are noted. */
function dated(input: PromiseInput, step: PromiseStep, undated: string[]): number {
  let opening = 0;
  for (const wait of step.waitsFor) {
    if (wait.day === null) undated.push(wait.words);
    else opening = Math.max(opening, openDayIndex(input.calendar, input.start, wait.day) * DAY);
  }
  return opening;
}

function afterwards(at: number, step: PromiseStep, openSeconds: number): number {
  let cursor = at;
  if (step.unattended > 0) {
    // Machines run on after closing: at the next opening at the latest it is done.
    const nextOpening = (Math.floor(cursor / DAY) + 1) * DAY;
    cursor = Math.min(cursor + up(step.unattended * DAY, Math.max(1, openSeconds)), nextOpening);
  }
  if (step.waitAfter === 'overnight') return roundUpToDay(cursor);
  return step.waitAfter === 'working_days' ? cursor + step.waitDays * DAY : cursor;
}
