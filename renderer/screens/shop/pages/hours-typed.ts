/** Opening hours as typed: one line a day and part. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { formatTime } from '#core/kernel/format.ts';

export type OpenHours = OutputOf<App['shop/get-settings']>['openHours'];
export type Part = 'counter' | 'bench';
/** Text by `counter-1` to `bench-7`: `7:30 - 12:00, 13:00 - 17:00`; empty is closed. */
export type HoursTyped = Readonly<Record<string, string>>;

export const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
export const PARTS: readonly Part[] = ['counter', 'bench'];

export const hoursKey = (part: Part, weekday: number): string => `${part}-${weekday}`;

/** The hours kept, as text. */
export function hoursText(hours: OpenHours): HoursTyped {
  const texts: Record<string, string> = {};
  for (const part of PARTS) {
    for (let weekday = 1; weekday <= 7; weekday += 1) {
      texts[hoursKey(part, weekday)] = hours
        .filter((one) => one.part === part && one.weekday === weekday)
        .sort((a, b) => a.from - b.from)
        .map((one) => `${clock(one.from)} - ${clock(one.until)}`)
        .join(', ');
    }
  }
  return texts;
}

const clock = (minute: number): string => (minute === 1440 ? '24:00' : formatTime(minute, { hourClock: '24' }));

const SPAN = /^(\d{1,2})(?:[:.](\d{2}))?\s*[-\u2013]\s*(\d{1,2})(?:[:.](\d{2}))?$/u;

/** The spans of one line in minutes, or null when it cannot be read. Empty is closed. */
export function readSpans(text: string): readonly Readonly<{ from: number; until: number }>[] | null {
  if (text.trim() === '') return [];
  const spans: { from: number; until: number }[] = [];
  for (const part of text.split(',')) {
    const found = SPAN.exec(part.trim());
    if (!found) return null;
    const from = Number(found[1]) * 60 + Number(found[2] ?? 0);
    const until = Number(found[3]) * 60 + Number(found[4] ?? 0);
    if (from >= until || until > 1440) return null;
    spans.push({ from, until });
  }
  return spans;
}

/** The whole week as the request takes it, or the first line that cannot be read. */
export function hoursInput(
  typed: HoursTyped,
): Readonly<{ hours: InputOf<App['promises/set-open-hours']>['hours'] }> | Readonly<{ wrong: string }> {
  const hours: InputOf<App['promises/set-open-hours']>['hours'] = [];
  for (const part of PARTS) {
    for (let weekday = 1; weekday <= 7; weekday += 1) {
      const key = hoursKey(part, weekday);
      const spans = readSpans(typed[key] ?? '');
      if (spans === null) return { wrong: key };
      hours.push(...spans.map((span) => ({ weekday, part, ...span })));
    }
  }
  return { hours };
}
