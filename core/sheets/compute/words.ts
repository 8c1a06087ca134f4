/** Words that papers share: long dates, counts in words, lists. Pure. */
import { type Day, weekday } from '../../kernel/days.ts';
import { type FormatSettings, formatTime } from '../../kernel/format.ts';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const MONTHS = [
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

type Clock = Pick<FormatSettings, 'hourClock'>;

/** A promise as the customer reads it: "Thursday 12 March, 17:00". */
export const longDayTime = (day: Day, minute: number, settings: Clock): string =>
  `${WEEKDAYS[weekday(day) - 1]} ${Number(day.slice(8, 10))} ${MONTHS[Number(day.slice(5, 7)) - 1]}, ${formatTime(minute, settings)}`;

/** A day as the bench reads it: "THU 12 MAR". */
export const tagDay = (day: Day): string =>
  `${WEEKDAYS[weekday(day) - 1]?.slice(0, 3)} ${Number(day.slice(8, 10))} ${MONTHS[Number(day.slice(5, 7)) - 1]?.slice(0, 3)}`.toUpperCase();

/** First letter large. */
export const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Joined by commas, empty ones left out. */
export const list = (words: readonly (string | null | undefined)[]): string => words.filter(Boolean).join(', ');

type Lined = Readonly<{ words: string; tags: readonly number[]; units: string; price: string; amount: number }>;

/**
 * Lines that say the same for several castings become one line with how many: "Pressure test, 2 × 86.25". Order is that of
 * the first of each.
 *
 * @returns each line once, with its count and the sum of its amounts
 */
export function joinAlike(lines: readonly Lined[]): (Lined & { count: number })[] {
  const joined = new Map<string, Lined & { count: number }>();
  for (const line of lines) {
    const key = [line.words, line.units, line.price, line.amount].join('|');
    const known = joined.get(key);
    if (known && line.tags.length === 1 && !known.tags.includes(line.tags[0] ?? 0)) {
      joined.set(key, {
        ...known,
        tags: [...known.tags, ...line.tags],
        count: known.count + 1,
        amount: known.amount + line.amount,
      });
    } else joined.set(known ? `${key}|${joined.size}` : key, { ...line, count: 1 });
  }
  return [...joined.values()];
}

/**
 * Which lines of a later paper say something else than an earlier one: "new: ...", "changed: ...", "gone: ...".
 *
 * @param before lines of the earlier paper by what they are about
 */
export function changesBetween(
  before: Readonly<Record<string, string>>,
  now: Readonly<Record<string, string>>,
): string[] {
  const changed = Object.entries(now).flatMap(([about, words]) => {
    const old = before[about];
    if (old === undefined) return [`new: ${about}${words === '' ? '' : `, ${words}`}`];
    return old === words
      ? []
      : [`changed: ${about}, ${words === '' ? 'nothing' : words} (was ${old === '' ? 'nothing' : old})`];
  });
  const gone = Object.keys(before)
    .filter((about) => !(about in now))
    .map((about) => `gone: ${about}`);
  return [...changed, ...gone];
}
