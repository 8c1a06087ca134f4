/** Moments on the shop's wall clock. The only place where a time zone meets a moment. */
import { type Day, day, type Moment } from '../kernel/days.ts';

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-CA', {
      timeZone: zone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(zone, format);
  }
  return format;
}

/** The calendar day and minute of day (0..1439) that a clock in `zone` (IANA name) shows at `at`. */
export function localTime(at: Moment, zone: string): { day: Day; minute: number } {
  const parts: Record<string, string> = {};
  for (const part of formatOf(zone).formatToParts(new Date(at))) parts[part.type] = part.value;
  return {
    day: day(`${parts.year}-${parts.month}-${parts.day}`),
    minute: Number(parts.hour) * 60 + Number(parts.minute),
  };
}

/** True when the running system knows this IANA zone name. */
export function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone.length > 0;
  } catch {
    return false;
  }
}
