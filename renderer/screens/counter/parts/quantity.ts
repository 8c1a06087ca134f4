/** How many, as typed: whole pieces, or working time for work sold by the hour. Pure. */
import { readCount } from '../../../kit/count.tsx';

/** The most a request takes. */
const MOST = 100_000;

/**
 * Working time in seconds: `1.5`, `1,5`, `1.5 h` and `1:30` are an hour and a half, `45 min` is three quarters of one.
 *
 * @returns null when it cannot be read or is none
 */
export function readHours(text: string): number | null {
  const bare = text.trim().toLowerCase();
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(bare);
  if (clock) return within(Number(clock[1]) * 3600 + Number(clock[2]) * 60);
  const minutes = /^(\d{1,4})\s*min$/.exec(bare);
  if (minutes) return within(Number(minutes[1]) * 60);
  const hours = /^(\d{1,3})(?:[.,](\d{1,2}))?\s*h?$/.exec(bare);
  // Hundredths of an hour are 36 seconds each, so no fraction is left.
  return hours ? within(Number(hours[1]) * 3600 + Number((hours[2] ?? '').padEnd(2, '0')) * 36) : null;
}

const within = (seconds: number): number | null => (seconds > 0 && seconds <= MOST ? seconds : null);

/** The quantity of a request; null: none was typed, or it cannot be read. */
export const readQuantity = (text: string, hourly: boolean | undefined): number | null =>
  hourly ? readHours(text) : readCount(text, MOST) || null;

/** Why it cannot be read, or undefined; nothing typed is no fault. */
export function quantityFault(text: string, hourly: boolean | undefined): string | undefined {
  if (text.trim() === '' || readQuantity(text, hourly) !== null) return undefined;
  return hourly ? 'Write the time, for example 1.5 h or 45 min.' : 'Write a whole number.';
}

/** Working time as it may be typed again: 5400 is `1:30`. Seconds below a minute are left out. */
export const hoursText = (seconds: number): string =>
  `${Math.floor(seconds / 3600)}:${String(Math.floor((seconds % 3600) / 60)).padStart(2, '0')}`;

type Sold = Readonly<{ uses: readonly Readonly<{ castingKind: string; chargeUnit: string }>[] }>;

/** Whether an operation is sold by the hour on a kind of casting. */
export function isHourly(operation: Sold, castingKind: string | null | undefined): boolean {
  const use = operation.uses.find((one) => one.castingKind === castingKind) ?? operation.uses[0];
  return use?.chargeUnit === 'hour';
}
