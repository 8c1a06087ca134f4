/** The brake on guessing PINs: tries are counted per device and person. */
import type { ReadDb } from '../../db/query.ts';
import { type Moment, moment } from '../../kernel/days.ts';
import type { DeviceId, StaffId } from '../../kernel/ids.ts';
import { FRESH_MINUTES, MOST_TRIES, WAIT_MINUTES } from '../compute.ts';
import { listTries } from '../store.ts';

const MS_A_MINUTE = 60_000;
const minutesBefore = (at: Moment, minutes: number): Moment =>
  moment(new Date(Date.parse(at) - minutes * MS_A_MINUTE).toISOString());

/** True while this device waits for this person after too many wrong tries in a row. */
export function isWaiting(db: ReadDb, device: DeviceId, staff: StaffId, now: Moment): boolean {
  const tries = listTries(db, device, staff, minutesBefore(now, WAIT_MINUTES));
  const wrongInARow = tries.findIndex((t) => t.matched === 1);
  return (wrongInARow < 0 ? tries.length : wrongInARow) >= MOST_TRIES;
}

/** True when the right PIN was typed here moments ago. */
export const isFresh = (db: ReadDb, device: DeviceId, staff: StaffId, now: Moment): boolean =>
  listTries(db, device, staff, minutesBefore(now, FRESH_MINUTES))[0]?.matched === 1;

export const waitSentence = (name: string): string =>
  `Too many wrong PINs for ${name}. This screen waits ${WAIT_MINUTES} minutes; another screen or an owner can help.`;
