/** Which days the promise's rule shows. Pure. */
import { addDays, type Day, daysBetween, weekday } from '#core/kernel/days.ts';
import type { DayPoint } from '../../../kit/rules.tsx';

const MOST = 8;
/** The graduation of a day runs from eight in the morning to six in the evening. */
const FROM = 480;
const LENGTH = 600;

/**
 * Monday to Friday from the first of the days given to the last, and any of them that is a weekend day; null when they
 * do not fit on the rule or there are none.
 */
export function ruleDays(wanted: readonly Day[]): Day[] | null {
  const sorted = wanted.toSorted();
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last) return null;
  const span = daysBetween(first, last);
  if (span > 3 * MOST) return null;
  const days = Array.from({ length: span + 1 }, (_, n) => addDays(first, n)).filter(
    (one) => weekday(one) < 6 || wanted.includes(one),
  );
  return days.length > MOST ? null : days;
}

/** Where a day and minute stand on the rule; undefined when the day is not on it. */
export function pointOf(
  days: readonly Day[],
  at: Readonly<{ day: Day; minute: number }> | null | undefined,
): DayPoint | undefined {
  if (!at) return undefined;
  const column = days.indexOf(at.day);
  if (column === -1) return undefined;
  return { column, part: Math.min(1, Math.max(0, (at.minute - FROM) / LENGTH)) };
}
