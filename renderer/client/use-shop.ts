/** The shop's face (name, units, language, zone) and how this shop writes money, days and times. */
import { useMemo } from 'react';
import { type Day, day } from '#core/kernel/days.ts';
import {
  type FormatSettings,
  formatDay,
  formatMoney,
  formatMoneySign,
  formatPrice,
  formatTime,
} from '#core/kernel/format.ts';
import type { Cents, PriceE4 } from '#core/kernel/units.ts';
import { useAppQuery } from './use-app.ts';

/** A moment as the shop's wall clock shows it; minute after midnight. */
export type LocalTime = Readonly<{ day: Day; minute: number; second: number }>;

const NO_SHOP: FormatSettings = { language: 'en', currencySign: '', hourClock: '24' };

/** A UTC moment on the wall clock of a zone (an IANA name). */
export function localTime(at: string, timeZone: string): LocalTime {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  }).formatToParts(new Date(at));
  const get = (type: string) => parts.find((part) => part.type === type)?.value ?? '00';
  return {
    day: day(`${get('year').padStart(4, '0')}-${get('month')}-${get('day')}`),
    minute: Number(get('hour')) * 60 + Number(get('minute')),
    second: Number(get('second')),
  };
}

export type Format = Readonly<{
  settings: FormatSettings;
  timeZone: string;
  /** `1,148.68`: currency is said once per sheet. */
  money(amount: number): string;
  /** `$1,148.68`. */
  moneySign(amount: number): string;
  /** A unit price in 1/10 000. */
  price(amount: number): string;
  /** `Thu 12 Mar`. */
  day(d: string): string;
  /** Minutes after midnight: `17:00`. */
  time(minute: number): string;
  /** `Thu 12 Mar 17:00`. */
  dayTime(d: string, minute: number): string;
  /** A UTC moment: `Thu 12 Mar 17:00`, or `17:00` when it is of `today`. */
  at(moment: string, today?: string): string;
  /** A UTC moment with seconds: `11:32:41`. */
  clock(moment: string): string;
  local(moment: string): LocalTime;
}>;

/** Formats of one shop. */
export function formatOf(settings: FormatSettings, timeZone: string): Format {
  const local = (moment: string) => localTime(moment, timeZone);
  const time = (minute: number) => formatTime(minute, settings);
  const dayTime = (d: string, minute: number) => `${formatDay(day(d))} ${time(minute)}`;
  return {
    settings,
    timeZone,
    money: (amount) => formatMoney(amount as Cents, settings),
    moneySign: (amount) => formatMoneySign(amount as Cents, settings),
    price: (amount) => formatPrice(amount as PriceE4, settings),
    day: (d) => formatDay(day(d)),
    time,
    dayTime,
    at(moment, today) {
      const then = local(moment);
      return then.day === today ? time(then.minute) : dayTime(then.day, then.minute);
    },
    clock(moment) {
      const then = local(moment);
      return `${time(then.minute)}:${String(then.second).padStart(2, '0')}`;
    },
    local,
  };
}

/** The shop's face; the same answer for every screen. */
export const useFace = () => useAppQuery('shop/get-face', {});

/** How this shop writes money, days and times; plain English figures while the face is on its way. */
export function useFormat(): Format {
  const { data } = useFace();
  return useMemo(
    () => formatOf(data ?? NO_SHOP, data?.timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone),
    [data],
  );
}

/**
 * The UTC moment at which a wall clock of a zone shows this day and minute; in the hour that a clock skips, the moment
 * after it.
 */
export function momentAt(d: string, minute: number, timeZone: string): string {
  const wanted = Date.parse(`${d}T00:00:00.000Z`) + minute * 60_000;
  const shown = (at: number) => {
    const local = localTime(new Date(at).toISOString(), timeZone);
    return Date.parse(`${local.day}T00:00:00.000Z`) + local.minute * 60_000;
  };
  // Two steps: the first guess may lie on the other side of a change of the clocks.
  const guess = wanted - (shown(wanted) - wanted);
  return new Date(guess - (shown(guess) - wanted)).toISOString();
}
