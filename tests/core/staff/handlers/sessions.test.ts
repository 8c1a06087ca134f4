import { describe, expect, it } from 'vitest';
import { nobody } from '#core/host/session.ts';
import { moment } from '#core/kernel/days.ts';
import { resolveSession } from '#core/staff/handlers/sessions.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

async function signedIn() {
  const host = await startTestHost();
  const { device } = await host.send('devices/pair-device', { name: 'Counter', kind: 'pc', tokenHash: 'b'.repeat(64) });
  const { people } = await host.send('staff/list-staff', {});
  const staff = people.find((p) => p.initials === 'TV')?.id ?? (0 as never);
  await host.send('staff/sign-in', { staff, pin: '740102' }, { as: nobody(device, 'test') });
  const asked = { device, as: staff as number, from: 'test', atTheMachine: true };
  return { host, device, staff, asked };
}

describe('resolveSession', () => {
  it('is the person who signed in on this device today', async () => {
    const { host, asked } = await signedIn();

    expect(resolveSession(host.host, asked)).toMatchObject({ initials: 'TV', roles: ['counter'] });
  });

  it("is over the next day, by the shop's clock", async () => {
    const { host, asked } = await signedIn();
    // 03:59 UTC on the 10th is still 23:59 on the 9th in the shop; a minute later it is not.
    host.setClock('2026-03-10T03:59:00.000Z');
    expect(resolveSession(host.host, asked).initials).toBe('TV');

    host.setClock('2026-03-10T04:01:00.000Z');

    expect(() => resolveSession(host.host, asked)).toThrow(
      expect.objectContaining({ code: 'staff/not-signed-in-here' }),
    );
  });

  it('is nobody on another device', async () => {
    const { host, asked } = await signedIn();
    const { device } = await host.send('devices/pair-device', { name: 'Other', kind: 'pc', tokenHash: 'c'.repeat(64) });

    expect(() => resolveSession(host.host, { ...asked, device })).toThrow(
      expect.objectContaining({ code: 'staff/not-signed-in-here' }),
    );
  });
});

describe('makePinCheck', () => {
  it('asks the PIN again unless it was typed here within two minutes', async () => {
    const { host, asked } = await signedIn();
    const session = resolveSession(host.host, asked);
    const check = (pin: string | undefined, at: string) => host.host.checkPinAgain(session, pin, moment(at));

    await check(undefined, '2026-03-09T14:01:59.000Z');
    await expect(check(undefined, '2026-03-09T14:02:01.000Z')).rejects.toMatchObject({ code: 'staff/pin-again' });
    await expect(check('999111', '2026-03-09T14:02:01.000Z')).rejects.toMatchObject({ code: 'staff/pin-wrong' });
    await check('740102', '2026-03-09T14:02:02.000Z');
    await check(undefined, '2026-03-09T14:03:00.000Z');
  });

  it('waits after five wrong PINs in a row', async () => {
    const { host, asked } = await signedIn();
    const session = resolveSession(host.host, asked);
    const now = moment('2026-03-09T14:10:00.000Z');
    for (let i = 0; i < 5; i += 1) await host.host.checkPinAgain(session, '999111', now).catch(() => undefined);

    await expect(host.host.checkPinAgain(session, '740102', now)).rejects.toMatchObject({ code: 'staff/pin-wait' });
  });
});
