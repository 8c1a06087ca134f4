/** Who a request comes from: the device by its token, the person by a sign-in of today on that device. */

import { readDb, writeDb } from '../../db/query.ts';
import { localTime } from '../../host/clock.ts';
import type { Host } from '../../host/host.ts';
import { nobody, type Session, sessionOf } from '../../host/session.ts';
import { type Moment, moment } from '../../kernel/days.ts';
import { AppError } from '../../kernel/errors.ts';
import type { DeviceId, StaffId } from '../../kernel/ids.ts';
import { isFresh, isWaiting, waitSentence } from '../store/pin-tries.ts';
import { findPerson, insertTry, listSignIns } from '../store.ts';

type Asked = Readonly<{ device: DeviceId | null; as: number | undefined; from: string; atTheMachine: boolean }>;

/**
 * The session of a request. Without `as`, or on a screen that is not paired: nobody.
 *
 * @throws AppError `not-allowed` `staff/not-signed-in-here` when that person has no sign-in of today on this device, or
 * `staff/retired` when the person left meanwhile.
 */
export function resolveSession(host: Pick<Host, 'sqlite' | 'clock' | 'timeZone'>, asked: Asked): Session {
  if (asked.as === undefined || asked.device === null) return nobody(asked.device, asked.from, asked.atTheMachine);
  const db = readDb(host.sqlite);
  const person = findPerson(db, asked.as as StaffId);
  if (!person)
    throw new AppError(
      'not-allowed',
      'staff/not-signed-in-here',
      'Nobody of that name is here. Tap your name and type your PIN.',
    );
  if (person.retiredOn !== null) {
    throw new AppError(
      'not-allowed',
      'staff/retired',
      `${person.name} is no longer one of the people here. What you typed is kept. Another person signs in and goes on.`,
    );
  }
  const zone = host.timeZone();
  const today = localTime(moment(host.clock().toISOString()), zone).day;
  const isHere = listSignIns(db, asked.device).some(
    (s) => s.staff === person.id && localTime(s.at, zone).day === today,
  );
  if (!isHere)
    throw new AppError(
      'not-allowed',
      'staff/not-signed-in-here',
      `${person.name} is not signed in here today. Tap the name and type the PIN.`,
    );
  return sessionOf({
    staff: person.id,
    name: person.name,
    initials: person.initials,
    roles: person.roles,
    device: asked.device,
    from: asked.from,
    atTheMachine: asked.atTheMachine,
  });
}

/** The check behind `pin: 'again'`: every try is kept, a right one stays fresh for two minutes on its device. */
export function makePinCheck(host: Pick<Host, 'sqlite' | 'services'>) {
  return async (session: Session, pin: string | undefined, now: Moment): Promise<void> => {
    // Replays and the command line act at the machine itself, without a device.
    if (session.staff === null || session.device === null) return;
    const { staff, device } = session;
    const db = readDb(host.sqlite);
    if (pin === undefined) {
      if (isFresh(db, device, staff, now)) return;
      throw new AppError('not-allowed', 'staff/pin-again', `Type ${session.name}'s PIN to do this.`);
    }
    if (isWaiting(db, device, staff, now))
      throw new AppError('not-allowed', 'staff/pin-wait', waitSentence(session.name));
    const hash = findPerson(db, staff)?.pinHash ?? null;
    const matched = hash !== null && (await host.services.pins.matches(pin, hash));
    host.sqlite
      .transaction(() => insertTry(writeDb(host.sqlite, { now, by: staff }), device, staff, now, matched))
      .immediate();
    if (!matched)
      throw new AppError(
        'not-allowed',
        'staff/pin-wrong',
        `That is not ${session.name}'s PIN. Nothing was done; what you typed is still here.`,
      );
  };
}
