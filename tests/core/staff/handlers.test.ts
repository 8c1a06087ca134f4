import { describe, expect, it } from 'vitest';
import { nobody, type Session } from '#core/host/session.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

async function paired(host: TestHost): Promise<Session> {
  const { device } = await host.send('devices/pair-device', {
    name: 'Bench 1',
    kind: 'tablet',
    tokenHash: 'a'.repeat(64),
  });
  return nobody(device, 'test');
}
const idOf = async (host: TestHost, initials: string) => {
  const { people } = await host.send('staff/list-staff', {});
  const person = people.find((p) => p.initials === initials);
  if (!person) throw new Error(initials);
  return person;
};

describe('staff/sign-in', () => {
  it('lets a person in with the PIN, keeps the try, and offers one touch afterwards', async () => {
    const host = await startTestHost();
    const bench = await paired(host);
    const { id } = await idOf(host, 'SO');

    const wrong = await host.send('staff/sign-in', { staff: id, pin: '740101' }, { as: bench });
    const right = await host.send('staff/sign-in', { staff: id, pin: '740106' }, { as: bench });

    expect(wrong).toMatchObject({ signedIn: false, message: expect.stringContaining("not Sami Okkerbee's PIN") });
    expect(right).toMatchObject({ signedIn: true, me: { initials: 'SO', roles: ['machinist'] } });
    const { people } = await host.send('staff/list-sign-in-names', {}, { as: bench });
    expect(people[0]).toMatchObject({ initials: 'SO', signedInHere: true });
  });

  it('is refused on a screen that is not paired', async () => {
    const host = await startTestHost();
    const { id } = await idOf(host, 'SO');

    expect(
      await host.refuse('staff/sign-in', { staff: id, pin: '740106' }, { as: nobody(null, 'test') }),
    ).toMatchObject({ code: 'staff/not-paired' });
  });

  it('shows neither telephone nor price nor ticket to a screen nobody signed in on', async () => {
    const host = await startTestHost();
    const bench = await paired(host);

    const { people, device } = await host.send('staff/list-sign-in-names', {}, { as: bench });

    expect(device).toBe('Bench 1');
    expect(Object.keys(people[0] ?? {}).sort()).toEqual(['initials', 'name', 'signedInHere', 'staff']);
    expect(await host.refuse('staff/list-staff', {}, { as: bench })).toMatchObject({ code: 'host/nobody-signed-in' });
  });
});

describe('staff/change-roles', () => {
  it('keeps somebody owner (I41)', async () => {
    const host = await startTestHost();
    const owner = await idOf(host, 'OB');

    const refused = await host.refuse('staff/change-roles', {
      staff: owner.id,
      seenVersion: owner.version,
      roles: ['counter'],
    });

    expect(refused).toMatchObject({ kind: 'rule-broken', code: 'staff/last-owner' });
  });

  it('gives and takes roles, and refuses a stale screen (I42)', async () => {
    const host = await startTestHost();
    const person = await idOf(host, 'TV');
    await host.send('staff/change-roles', {
      staff: person.id,
      seenVersion: person.version,
      roles: ['counter', 'books'],
    });

    const refused = await host.refuse('staff/change-roles', {
      staff: person.id,
      seenVersion: person.version,
      roles: ['machinist'],
    });

    expect(refused).toMatchObject({ kind: 'conflict', code: 'host/changed-meanwhile' });
    expect((await idOf(host, 'TV')).roles.sort()).toEqual(['books', 'counter']);
  });
});

describe('staff/retire-person', () => {
  it('never lets the last owner go (I41)', async () => {
    const host = await startTestHost();
    const owner = await idOf(host, 'OB');

    expect(await host.refuse('staff/retire-person', { staff: owner.id, seenVersion: owner.version })).toMatchObject({
      code: 'staff/last-owner',
    });
  });

  it('takes the PIN away, so that the person cannot sign in again', async () => {
    const host = await startTestHost();
    const bench = await paired(host);
    const person = await idOf(host, 'SO');
    await host.send('staff/retire-person', { staff: person.id, seenVersion: person.version });

    expect(await host.send('staff/sign-in', { staff: person.id, pin: '740106' }, { as: bench })).toMatchObject({
      signedIn: false,
    });
  });
});

describe('staff/add-person', () => {
  it('refuses initials that somebody active has, beside the field', async () => {
    const { refuse } = await startTestHost();

    expect(await refuse('staff/add-person', { name: 'Nils Ode', initials: 'TV', roles: ['counter'] })).toMatchObject({
      fields: { initials: expect.stringContaining('TV') },
    });
  });

  it('is the owner only', async () => {
    const { refuse } = await startTestHost();

    expect(
      await refuse('staff/add-person', { name: 'Nils Ode', initials: 'NO', roles: ['counter'] }, { as: 'TV' }),
    ).toMatchObject({ code: 'host/not-allowed' });
  });
});

describe('staff/set-pin', () => {
  it("lets everybody set their own and nobody another's, but the owner", async () => {
    const { refuse, send, ...host } = await startTestHost();
    const { id } = await idOf({ refuse, send, ...host }, 'SO');

    expect(await refuse('staff/set-pin', { staff: id, pin: '918273' }, { as: 'TV' })).toMatchObject({
      code: 'staff/not-your-pin',
    });
    await send('staff/set-pin', { staff: id, pin: '918273' }, { as: 'SO' });
    expect(await refuse('staff/set-pin', { staff: id, pin: '111111' })).toMatchObject({
      fields: { pin: expect.stringContaining('alike') },
    });
  });
});

describe('devices/keep-draft', () => {
  it("keeps the newest of what is typed, and shows nobody else's", async () => {
    const { send } = await startTestHost();
    const first = await send(
      'devices/keep-draft',
      { kind: 'check_in', title: 'Mudlark Lane', body: '{"a":1}' },
      { as: 'TV' },
    );
    await send(
      'devices/keep-draft',
      { draft: first.draft, kind: 'check_in', title: 'Mudlark Lane', body: '{"a":2}' },
      { as: 'TV' },
    );

    expect(await send('devices/list-drafts', { kind: 'check_in' }, { as: 'TV' })).toMatchObject({
      drafts: [{ draft: first.draft, body: '{"a":2}' }],
    });
    expect(await send('devices/list-drafts', {}, { as: 'MN' })).toEqual({ drafts: [] });
    await send('devices/drop-draft', { draft: first.draft }, { as: 'TV' });
    expect(await send('devices/list-drafts', {}, { as: 'TV' })).toEqual({ drafts: [] });
  });
});

describe('devices/list-devices', () => {
  it('shows each paired screen, names it, gives it a work centre, and shuts it out', async () => {
    const host = await startTestHost();
    const bench = await paired(host);
    const { centres } = await host.send('operations/list-work-centres', {});
    const centre = centres.find((c) => c.code === 'head-bench')?.id ?? null;
    const [device] = (await host.send('devices/list-devices', {})).devices;
    if (!device) throw new Error('no device');

    await host.send('devices/set-device', {
      device: device.id,
      seenVersion: device.version,
      name: 'Head bench',
      workCentre: centre,
    });
    const [named] = (await host.send('devices/list-devices', {}, { as: { ...host.as('OB'), device: bench.device } }))
      .devices;
    expect(named).toMatchObject({ name: 'Head bench', workCentre: 'Head bench', revoked: false, thisOne: true });

    await host.send('devices/revoke-device', { device: device.id, seenVersion: device.version + 1 });
    expect((await host.send('devices/list-devices', {})).devices).toMatchObject([{ revoked: true }]);
  });
});
