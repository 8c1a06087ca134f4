/** Words and order of the counter's first page. Pure; what a state is, core/state has said already. */
import { type Day, daysBetween, type Moment, weekday } from '../kernel/days.ts';
import { type FormatSettings, formatCount, formatDay, formatTime } from '../kernel/format.ts';

export type Now = Readonly<{ day: Day; minute: number }>;

/** Minutes from now to a promise; negative when it has passed. Nights count: the clock does not stop. */
export const minutesLeft = (now: Now, promise: Now): number =>
  daysBetween(now.day, promise.day) * 1440 + promise.minute - now.minute;

/** "2 h 10 min left", "missed by 40 min", "missed by 2 days". */
export function leftWords(left: number): string {
  const size = lengthWords(Math.abs(left));
  return left > 0 ? `${size} left` : `missed by ${size}`;
}

/** "40 min", "2 h 10 min", "2 days". */
export function lengthWords(minutes: number): string {
  if (minutes >= 1440) return formatCount(Math.floor(minutes / 1440), 'day');
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

const LONG_DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const LONG_MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** "Tuesday 10 March". */
export const dayWords = (d: Day): string =>
  `${LONG_DAYS[weekday(d) - 1]} ${Number(d.slice(8, 10))} ${LONG_MONTHS[Number(d.slice(5, 7)) - 1]}`;

/** A moment of the past: "11:05" today, "Fri" within the week, else "Fri 6 Mar". */
export function whenWords(at: Now, today: Day, settings: Pick<FormatSettings, 'hourClock'>): string {
  if (at.day === today) return formatTime(at.minute, settings);
  const ago = daysBetween(at.day, today);
  return ago > 0 && ago < 7 ? formatDay(at.day).slice(0, 3) : formatDay(at.day);
}

export type Going = Readonly<{
  ready: boolean;
  told: string | null;
  /** A hold, a question or a missing part keeps all of it back. */
  blocked: boolean;
  where: string;
  /** Work left on the slowest casting, seconds. */
  work: number;
  left: number;
}>;

/** How a promise of today goes: "ready, told 09:52", "at Assembly, on time", "will miss: waiting parts", "Hone now, 2 h behind". */
export function goingWords({ ready, told, blocked, where, work, left }: Going): Readonly<{
  words: string;
  tone: 'plain' | 'good' | 'close' | 'hold';
  misses: boolean;
}> {
  if (ready) return { words: told === null ? 'ready, not told' : `ready, told ${told}`, tone: 'good', misses: false };
  if (left <= 0) return { words: `missed: ${where}`, tone: 'hold', misses: true };
  if (blocked) return { words: `will miss: ${where}`, tone: 'hold', misses: true };
  const behind = Math.ceil(work / 60) - left;
  if (behind > 0) return { words: `${where}, ${lengthWords(behind)} behind`, tone: 'close', misses: true };
  return { words: `${where}, on time`, tone: 'plain', misses: false };
}

/** When to ring about tomorrow: while somebody is in today, else first thing. */
export function ringBy(closing: number | null, minute: number, settings: Pick<FormatSettings, 'hourClock'>): string {
  return closing === null || minute >= closing ? 'ring first thing' : `ring by ${formatTime(closing, settings)}`;
}

export type Counts = Readonly<{ promised: number; misses: number; ring: number; approvals: number }>;

/** "5 castings promised today, 1 will miss. 4 people to ring, 3 approvals to chase." */
export function summaryWords({ promised, misses, ring, approvals }: Counts): string {
  const today =
    promised === 0
      ? 'Nothing is promised today.'
      : `${formatCount(promised, 'ticket')} promised today${misses > 0 ? `, ${misses} will miss` : ''}.`;
  const people = ring === 0 ? 'Nobody is waiting for a call' : `${formatCount(ring, 'person', 'people')} to ring`;
  const asked = approvals === 0 ? 'no approvals to chase' : `${formatCount(approvals, 'approval')} to chase`;
  return `${today} ${people}, ${asked}.`;
}

/** The end of an answer's time as it is printed: a day, or a moment with its hour. */
export function untilWords(
  end: string,
  local: (at: Moment) => Now,
  today: Day,
  settings: Pick<FormatSettings, 'hourClock'>,
): string {
  if (end.length === 10) return `until ${formatDay(end as Day)}`;
  const at = local(end as Moment);
  const hour = formatTime(at.minute, settings);
  return at.day === today ? `answer by ${hour}` : `answer by ${formatDay(at.day)} ${hour}`;
}
