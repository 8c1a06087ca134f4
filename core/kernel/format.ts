/**
 * Numbers, money, days, times and ages as people read them; the same text in every browser and in Node.
 *
 * No Intl and no Date: the tables here are short, and a paper printed twice must read the same on every machine.
 * Times come in as the shop's wall clock shows them (day and minute), never as a zone.
 */
import { type Day, day, daysBetween, type Moment, weekday } from './days.ts';
import type { BasisPoints, Cents, Factor, Grams, PriceE4, Seconds } from './units.ts';

/** What the shop chose, as far as formatting goes. */
export type FormatSettings = Readonly<{
  /** `en`, `en-GB`, `de` and so on; an unknown one reads like `en`. */
  language: string;
  /** `$`, `€`, `zł`. */
  currencySign: string;
  hourClock: '24' | '12';
}>;

type Signs = Readonly<{ point: string; group: string; fewest: number; signAfter: boolean }>;

const NARROW_SPACE = '\u202f';
const SPACE = '\u00a0';
const ENGLISH: Signs = { point: '.', group: ',', fewest: 4, signAfter: false };
const POINTED: Signs = { point: ',', group: '.', fewest: 4, signAfter: true };
const SPACED: Signs = { point: ',', group: SPACE, fewest: 4, signAfter: true };
/** Separators by language. `fewest`: digits from which a number is grouped. From memory of national practice. */
const SIGNS: Readonly<Record<string, Signs>> = {
  en: ENGLISH,
  de: POINTED,
  nl: { ...POINTED, signAfter: false },
  da: POINTED,
  it: POINTED,
  el: POINTED,
  tr: POINTED,
  es: { ...POINTED, fewest: 5 },
  pt: { ...POINTED, fewest: 5 },
  fr: { ...SPACED, group: NARROW_SPACE },
  pl: { ...SPACED, fewest: 5 },
  cs: SPACED,
  sv: SPACED,
  nb: SPACED,
  fi: SPACED,
  uk: SPACED,
  'de-CH': { point: '.', group: '\u2019', fewest: 4, signAfter: false },
};

const signsOf = (language: string): Signs => SIGNS[language] ?? SIGNS[language.split('-')[0] ?? ''] ?? ENGLISH;

/** `1148` in groups of three: `1,148`. */
function group(digits: string, signs: Signs): string {
  if (digits.length < signs.fewest) return digits;
  return digits.replace(/\B(?=(\d{3})+$)/g, signs.group);
}

/** A whole number with grouping and a real minus. Not for tickets, tags and casting numbers: those are never grouped. */
export function formatNumber(value: number | bigint, settings: Pick<FormatSettings, 'language'>): string {
  const digits = value.toString();
  const signs = signsOf(settings.language);
  return digits.startsWith('-') ? `\u2212${group(digits.slice(1), signs)}` : group(digits, signs);
}

/** Whole steps of a decimal with all its places: 114868 at 2 is `1,148.68`. */
function formatSteps(value: number, places: number, signs: Signs): string {
  const digits = BigInt(Math.abs(value))
    .toString()
    .padStart(places + 1, '0');
  const body = `${group(digits.slice(0, -places), signs)}${signs.point}${digits.slice(-places)}`;
  return value < 0 ? `\u2212${body}` : body;
}

/** An amount without the currency, two decimals always: columns, where the sheet says the currency once. */
export const formatMoney = (amount: Cents, settings: Pick<FormatSettings, 'language'>): string =>
  formatSteps(amount, 2, signsOf(settings.language));

/** An amount with the currency sign where the language puts it: `$1,148.68`, `1.148,68 €`. */
export function formatMoneySign(amount: Cents, settings: Pick<FormatSettings, 'language' | 'currencySign'>): string {
  const signs = signsOf(settings.language);
  const figure = formatSteps(amount < 0 ? -amount : amount, 2, signs);
  const minus = amount < 0 ? '\u2212' : '';
  return signs.signAfter
    ? `${minus}${figure}${SPACE}${settings.currencySign}`
    : `${minus}${settings.currencySign}${figure}`;
}

/** A unit price: two decimals, up to four where they are not zero: `1.85`, `0.0375`. */
export function formatPrice(price: PriceE4, settings: Pick<FormatSettings, 'language'>): string {
  const text = formatSteps(price, 4, signsOf(settings.language));
  return text.replace(/0{1,2}$/, '');
}

/** A percentage: 825 is `8.25 %`, 700 is `7 %`. */
export function formatPercent(share: BasisPoints, settings: Pick<FormatSettings, 'language'>): string {
  const signs = signsOf(settings.language);
  const text = formatSteps(share, 2, signs).replace(/0{1,2}$/, '');
  return `${text.endsWith(signs.point) ? text.slice(0, -1) : text}${SPACE}%`;
}

/** A price factor: `× 1.15`. */
export const formatFactor = (factor: Factor, settings: Pick<FormatSettings, 'language'>): string =>
  `×${SPACE}${formatPrice(factor as unknown as PriceE4, settings)}`;

/**
 * Money as typed: `1148.68`, `1,148.68`, `1.148,68`, `$ 12`, `12,5`. A single separator before exactly three digits is
 * grouping in the shop's language or else refused, because `1,148` may be either.
 *
 * @returns cents, or null when it cannot be read for certain.
 */
export function readMoney(text: string, settings: Pick<FormatSettings, 'language' | 'currencySign'>): Cents | null {
  const signs = signsOf(settings.language);
  const bare = text
    .normalize('NFC')
    .trim()
    .split(settings.currencySign)
    .join('')
    .replace(/[\s\u00a0\u202f\u2019']/gu, '')
    .replace(/^\u2212/u, '-');
  if (/^-?\d{1,3}(,\d{3})+(\.\d{1,2})?$/.test(bare) && (bare.includes('.') || signs.group === ',')) {
    return centsOf(bare.replaceAll(',', ''));
  }
  if (/^-?\d{1,3}(\.\d{3})+(,\d{1,2})?$/.test(bare) && (bare.includes(',') || signs.group === '.')) {
    return centsOf(bare.replaceAll('.', '').replace(',', '.'));
  }
  return /^-?\d+([.,]\d{1,2})?$/.test(bare) ? centsOf(bare.replace(',', '.')) : null;
}

function centsOf(text: string): Cents | null {
  const [whole = '', rest = ''] = text.replace('-', '').split('.');
  const value = Number(`${whole}${rest.padEnd(2, '0')}`);
  if (!Number.isSafeInteger(value)) return null;
  return (text.startsWith('-') && value !== 0 ? -value : value) as Cents;
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day on screen: `Thu 12 Mar`. */
export const formatDay = (d: Day): string =>
  `${WEEKDAYS[weekday(d) - 1]} ${Number(d.slice(8, 10))} ${MONTHS[Number(d.slice(5, 7)) - 1]}`;

/** A day on paper, with its year: `Thu 12 Mar 2026`. */
export const formatDayYear = (d: Day): string => `${formatDay(d)} ${d.slice(0, 4)}`;

/** A minute of the day, 0 to 1439: `17:00`, or `5:00 pm`. */
export function formatTime(minute: number, settings: Pick<FormatSettings, 'hourClock'>): string {
  const [hour, rest] = [Math.floor(minute / 60), String(minute % 60).padStart(2, '0')];
  if (settings.hourClock === '24') return `${String(hour).padStart(2, '0')}:${rest}`;
  return `${((hour + 11) % 12) + 1}:${rest} ${hour < 12 ? 'am' : 'pm'}`;
}

/** Day and time on screen: `Thu 12 Mar 17:00`. */
export const formatDayTime = (
  at: Readonly<{ day: Day; minute: number }>,
  settings: Pick<FormatSettings, 'hourClock'>,
): string => `${formatDay(at.day)} ${formatTime(at.minute, settings)}`;

/** Whole minutes from one moment to a later one; negative when it is earlier. */
export function minutesBetween(from: Moment, to: Moment): number {
  const minutes = (m: Moment) => Number(m.slice(11, 13)) * 60 + Number(m.slice(14, 16));
  return daysBetween(day(from.slice(0, 10)), day(to.slice(0, 10))) * 1440 + minutes(to) - minutes(from);
}

/** An age: minutes under an hour, hours under a day, then days: `12 min`, `2 h`, `5 days`. */
export function formatAge(minutes: number): string {
  if (minutes < 60) return `${Math.max(minutes, 0)} min`;
  if (minutes < 1440) return `${Math.floor(minutes / 60)} h`;
  return formatCount(Math.floor(minutes / 1440), 'day');
}

/** A count with its noun: `1 day`, `5 days`; give the plural where it is not an s. */
export const formatCount = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** A length of working time: `1 h 30 min`, `45 min`, `20 s`. */
export function formatSeconds(time: Seconds): string {
  const [hours, minutes] = [Math.floor(time / 3600), Math.floor((time % 3600) / 60)];
  const parts = [hours > 0 ? `${hours} h` : '', minutes > 0 ? `${minutes} min` : ''].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(' ') : `${time} s`;
}

/** A weight in kilograms with one decimal where it matters: `24 kg`, `1.5 kg`. */
export function formatWeight(weight: Grams, settings: Pick<FormatSettings, 'language'>): string {
  const tenths = Math.floor((weight + 50) / 100);
  const signs = signsOf(settings.language);
  return tenths % 10 === 0 ? `${group(String(tenths / 10), signs)} kg` : `${formatSteps(tenths, 1, signs)} kg`;
}
