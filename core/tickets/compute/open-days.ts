/** Which days the shop is open, and counting in them. Pure and browser-safe. */
import { addDays, type Day, weekday } from '../../kernel/days.ts';

/** Opening of one weekday (1 Monday to 7 Sunday), in minutes after midnight; a day may have several. */
export type Hours = Readonly<{ weekday: number; from: number; until: number }>;

export type Calendar = Readonly<{
  /** Empty: the shop has not said; then every day that is no holiday is open. */
  hours: readonly Hours[];
  holidays: readonly Day[];
}>;

/** A year of closed days in a row means the calendar is wrong, not that the shop is away. */
const LONGEST_CLOSED = 366;

export const isOpenDay = (calendar: Calendar, d: Day): boolean =>
  !calendar.holidays.includes(d) &&
  (calendar.hours.length === 0 || calendar.hours.some((one) => one.weekday === weekday(d)));

/** The day itself when it is open, else the next open one. */
export function nextOpenDay(calendar: Calendar, from: Day): Day {
  let d = from;
  for (let tries = 0; tries < LONGEST_CLOSED; tries += 1) {
    if (isOpenDay(calendar, d)) return d;
    d = addDays(d, 1);
  }
  return from;
}

/** The start rolls forward to an open day, then `n` more open days. */
export function openDayAfter(calendar: Calendar, start: Day, n: number): Day {
  let d = nextOpenDay(calendar, start);
  for (let step = 0; step < n; step += 1) d = nextOpenDay(calendar, addDays(d, 1));
  return d;
}

/** How many open days lie between: 0 for the first open day from `start` on; a closed `d` counts as the next open one. */
export function openDayIndex(calendar: Calendar, start: Day, d: Day): number {
  let at = nextOpenDay(calendar, start);
  const wanted = nextOpenDay(calendar, d);
  let index = 0;
  while (at < wanted && index < LONGEST_CLOSED * 3) {
    at = nextOpenDay(calendar, addDays(at, 1));
    index += 1;
  }
  return index;
}

/** First opening and last closing of a day in minutes; null when closed or when the shop has not said. */
export function hoursOf(calendar: Calendar, d: Day): { from: number; until: number } | null {
  const day = calendar.hours.filter((one) => one.weekday === weekday(d));
  if (day.length === 0 || !isOpenDay(calendar, d)) return null;
  return { from: Math.min(...day.map((one) => one.from)), until: Math.max(...day.map((one) => one.until)) };
}

/** The hour of a promise: the shop's usual one, or closing time on a day that closes earlier. */
export const promiseMinute = (calendar: Calendar, d: Day, usual: number): number =>
  Math.min(usual, hoursOf(calendar, d)?.until ?? usual);

/** How much of today's work is over, in 1/10 000 of the day, and the first day that counts. */
export function workedShare(calendar: Calendar, today: Day, minute: number): { start: Day; now: number } {
  const hours = hoursOf(calendar, today);
  if (!isOpenDay(calendar, today)) return { start: nextOpenDay(calendar, today), now: 0 };
  if (!hours) return { start: today, now: 0 };
  if (minute >= hours.until) return { start: nextOpenDay(calendar, addDays(today, 1)), now: 0 };
  if (minute <= hours.from) return { start: today, now: 0 };
  return { start: today, now: Math.floor(((minute - hours.from) * 10_000) / (hours.until - hours.from)) };
}
