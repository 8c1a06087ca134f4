/**
 * Calendar days and moments as text, without a time library: a day has no time zone, a moment is UTC.
 *
 * Day is `YYYY-MM-DD` (ISO 8601 calendar date), Moment is `YYYY-MM-DDTHH:MM:SS.sssZ` (RFC 3339, always UTC, always
 * milliseconds), so both sort as text. Day arithmetic is the proleptic Gregorian calendar by day number, after the
 * well-known days-from-civil algorithm (common knowledge, checked against reference/dates.json).
 */
declare const dayMark: unique symbol;
declare const momentMark: unique symbol;
export type Day = string & { readonly [dayMark]: 'Day' };
export type Moment = string & { readonly [momentMark]: 'Moment' };

const DAY_TEXT = /^(\d{4})-(\d{2})-(\d{2})$/;
const MOMENT_TEXT = /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d\.\d{3}Z$/;

/** True for a real calendar day in years 0001 to 9999. */
export function isDay(text: string): text is Day {
  const found = DAY_TEXT.exec(text);
  if (!found) return false;
  const [year, month, date] = [Number(found[1]), Number(found[2]), Number(found[3])];
  return year >= 1 && month >= 1 && month <= 12 && date >= 1 && date <= daysInMonth(year, month);
}

/** @throws RangeError when the text is no calendar day. */
export function day(text: string): Day {
  if (!isDay(text)) throw new RangeError(`not a calendar day: ${text}`);
  return text;
}

/** True for UTC text with milliseconds. */
export const isMoment = (text: string): text is Moment => MOMENT_TEXT.test(text) && isDay(text.slice(0, 10));

/** @throws RangeError when the text is no UTC moment with milliseconds. */
export function moment(text: string): Moment {
  if (!isMoment(text)) throw new RangeError(`not a UTC moment: ${text}`);
  return text;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Days in a month, 1 January to 12 December. */
const daysInMonth = (year: number, month: number): number =>
  month === 2 && isLeap(year) ? 29 : (MONTH_DAYS[month - 1] ?? 0);

/** Days since 1970-01-01 (negative before). */
export function dayNumber(d: Day): number {
  const [y, m, date] = [Number(d.slice(0, 4)), Number(d.slice(5, 7)), Number(d.slice(8, 10))];
  const year = m <= 2 ? y - 1 : y;
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (m + (m > 2 ? -3 : 9)) + 2) / 5) + date - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The day of a day number. */
export function dayOfNumber(n: number): Day {
  const z = n + 719_468;
  const era = Math.floor(z / 146_097);
  const dayOfEra = z - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch + (monthFromMarch < 10 ? 3 : -9);
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return day(`${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`);
}

/** The day `n` days later (earlier when negative). */
export const addDays = (d: Day, n: number): Day => dayOfNumber(dayNumber(d) + n);

/** Days from `a` to `b`; negative when b is earlier. */
export const daysBetween = (a: Day, b: Day): number => dayNumber(b) - dayNumber(a);

/** 1 Monday to 7 Sunday (ISO 8601). */
export const weekday = (d: Day): number => ((((dayNumber(d) + 3) % 7) + 7) % 7) + 1;

/** Last day of the day's month. */
export function endOfMonth(d: Day): Day {
  const [year, month] = [Number(d.slice(0, 4)), Number(d.slice(5, 7))];
  return day(`${d.slice(0, 8)}${String(daysInMonth(year, month)).padStart(2, '0')}`);
}
