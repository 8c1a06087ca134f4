/** Which device and which person a request comes from. */
import { createHash } from 'node:crypto';
import { readDb } from '#core/db/query.ts';
import type { Host } from '#core/host/host.ts';
import { everything, type Session, sessionOf } from '#core/host/session.ts';
import { AppError } from '#core/kernel/errors.ts';
import type { DeviceId } from '#core/kernel/ids.ts';
import { findDevice, listPeople } from '#core/staff/store.ts';
import type { Workspace } from './open-workspace.ts';

export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex');

/** The paired device that shows this token, or null. */
export const deviceOfToken = (host: Host, token: string | undefined): DeviceId | null =>
  token ? (findDevice(readDb(host.sqlite), hashToken(token))?.id ?? null) : null;

/** Pair a screen; the caller has checked that it may be paired. @returns the token it must show from now on. */
export async function pairDevice(
  workspace: Workspace,
  name: string,
  kind: 'desktop' | 'tablet' | 'pc',
  from: string,
): Promise<string> {
  const token = workspace.host().secret();
  const reply = await workspace.answer(
    { name: 'devices/pair-device', input: { name, kind, tokenHash: hashToken(token) } },
    everything(from),
  );
  if (!reply.ok) throw new AppError(reply.error.kind, reply.error.code, reply.error.message);
  return token;
}

/**
 * The person with these initials, acting at the machine itself from the command line.
 *
 * @throws AppError `not-allowed` when nobody active has them.
 */
export function commandLineSession(host: Host, initials: string | undefined): Session {
  const people = listPeople(readDb(host.sqlite), false);
  if (people.length === 0) return everything('command line');
  const person = people.find((p) => p.initials === initials);
  if (!person) {
    const known = people.map((p) => p.initials).join(', ');
    throw new AppError('not-allowed', 'request/nobody', `Say who asks: --as with one of ${known}.`);
  }
  return sessionOf({
    staff: person.id,
    name: person.name,
    initials: person.initials,
    roles: person.roles,
    device: null,
    from: 'command line',
    atTheMachine: true,
  });
}
