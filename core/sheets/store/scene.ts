/** What every paper needs beside its own facts: the shop, its way of writing figures, who prints and when. */
import type { ReadDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import { type FormatSettings, formatDayTime, formatDayYear, formatMoney, formatTime } from '../../kernel/format.ts';
import type { Cents } from '../../kernel/units.ts';
import { getShop, listOpenHours } from '../../shop/store.ts';
import type { PaperHead } from '../contract/papers.ts';

type Local = Readonly<{ day: Day; minute: number }>;

/** What a request knows, as far as papers need it. */
export type Printing = Readonly<{
  db: ReadDb;
  today: Day;
  minute: number;
  now: Moment;
  local(at: Moment): Local;
  session: Readonly<{ name: string }>;
}>;

export type Scene = Readonly<{
  db: ReadDb;
  today: Day;
  shop: ReturnType<typeof getShop>;
  settings: FormatSettings;
  /** Without its revision, which the document gives. */
  head: Omit<PaperHead, 'revision'>;
  money(amount: Cents): string;
  /** "Thu 12 Mar 2026". */
  day(day: Day): string;
  /** "Thu 12 Mar 2026 17:00" of a moment on the shop's clock. */
  moment(at: Moment): string;
  /** "Thu 12 Mar 17:00". */
  shortMoment(at: Moment): string;
  localDay(at: Moment): Day;
}>;

/** @throws AppError `rule-broken` `shop/not-set` before the first run. */
export function openScene({ db, today, minute, now, local, session }: Printing): Scene {
  const shop = getShop(db);
  const settings: FormatSettings = {
    language: shop.language,
    currencySign: shop.currency_sign,
    hourClock: shop.hour_clock,
  };
  const time = (at: number) => formatTime(at, settings);
  const printed = `${formatDayYear(today)} ${time(minute)}`;
  return {
    db,
    today,
    shop,
    settings,
    head: {
      paper: shop.paper,
      shop: { name: shop.name, line: shopLine(db, shop, settings) },
      printed: session.name === '' ? printed : `${printed}, ${session.name}`,
      printedAt: now,
      practice: shop.practice === 1,
    },
    money: (amount) => formatMoney(amount, settings),
    day: formatDayYear,
    moment: (at) => `${formatDayYear(local(at).day)} ${time(local(at).minute)}`,
    shortMoment: (at) => formatDayTime(local(at), settings),
    localDay: (at) => local(at).day,
  };
}

/** Address, telephone and counter hours on one line. */
function shopLine(db: ReadDb, shop: Scene['shop'], settings: FormatSettings): string {
  const address = shop.address?.split('\n').join(', ');
  return [address, shop.phone, hoursWords(db, settings)].filter(Boolean).join('. ');
}

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** "Mon to Fri 07:30 – 17:00, Sat 08:00 – 12:00"; empty when no hours are set. */
function hoursWords(db: ReadDb, settings: FormatSettings): string {
  const hours = listOpenHours(db).filter(({ part }) => part === 'counter');
  const groups: { first: number; last: number; words: string }[] = [];
  for (const { weekday, from, until } of hours) {
    const words = `${formatTime(from, settings)} – ${formatTime(until, settings)}`;
    const before = groups.at(-1);
    if (before && before.words === words && before.last === weekday - 1) before.last = weekday;
    else groups.push({ first: weekday, last: weekday, words });
  }
  return groups
    .map(({ first, last, words }) => `${DAYS[first - 1]}${last > first ? ` to ${DAYS[last - 1]}` : ''} ${words}`)
    .join(', ');
}
