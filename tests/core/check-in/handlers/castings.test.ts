import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const casting = (tag: number) => t.send('castings/get-casting', { tag }, { as: 'TV' });

describe('castings/add-casting', () => {
  it('tags a casting onto a ticket that stands, and makes an enquiry a ticket', async () => {
    const enquiry = await t.send(
      'tickets/open-enquiry',
      { customer: { add: { name: 'Ossian Wherrytun' } } },
      { as: 'TV' },
    );
    const added = await t.send(
      'castings/add-casting',
      { ticketId: enquiry.ticketId, castings: [IRON_HEAD] },
      { as: 'TV' },
    );
    expect(added.castings[0]).toMatchObject({ tagNo: 40_001, title: 'Head' });
    const page = await t.send('tickets/get-ticket', { ticketId: enquiry.ticketId }, { as: 'TV' });
    expect(page.word).toBe('checked in');
  });
});

describe('castings/change-casting', () => {
  it('merges fields two people changed, and names what it took over (I42)', async () => {
    await checkIn(t);
    const { castingId, version } = await casting(40_001);
    await t.send(
      'castings/change-casting',
      { castingId, seenVersion: version, changes: { castingNumber: { seen: null, to: 'L-44' } } },
      { as: 'OB' },
    );
    const mine = await t.send(
      'castings/change-casting',
      { castingId, seenVersion: version, changes: { position: { seen: 'single', to: 'left' } } },
      { as: 'TV' },
    );
    expect(mine.takenOver).toMatchObject([{ field: 'castingNumber', value: 'L-44', by: 'Odile Brackwen' }]);
    expect(await casting(40_001)).toMatchObject({ castingNumber: 'L-44', position: 'left' });
  });

  it('holds both when a stamp typed later is in the house already', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K1' }] });
    await checkIn(t);
    const { castingId, version } = await casting(40_002);
    const changed = await t.send(
      'castings/change-casting',
      { castingId, seenVersion: version, changes: { shopStamp: { seen: null, to: 'K1' } } },
      { as: 'TV' },
    );
    expect(changed.identityHold).toContain('Stamp K1 is on 40002 and on 40001.');
  });

  it('takes the confirmation away with the metal it confirmed', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, materialHow: 'magnet' }] });
    const { castingId, version } = await casting(40_001);
    await t.send(
      'castings/change-casting',
      { castingId, seenVersion: version, changes: { material: { seen: 'iron_grey', to: 'aluminium' } } },
      { as: 'TV' },
    );
    expect((await casting(40_001)).metal).toMatchObject({ word: 'ALUMINIUM', confirmedAt: null });
  });

  it('derives the weight class from the weight', async () => {
    await checkIn(t);
    const { castingId, version } = await casting(40_001);
    await t.send(
      'castings/change-casting',
      { castingId, seenVersion: version, changes: { weight: { seen: null, to: 45_001 } } },
      { as: 'TV' },
    );
    expect(await casting(40_001)).toMatchObject({ weightClass: 'hoist', weightWords: '45 kg, use a hoist' });
  });
});

describe('castings/move-casting', () => {
  const move = async (toTicketId: number, tag = 40_001) => {
    const { castingId, version } = await casting(tag);
    return t.ask(
      'castings/move-casting',
      { castingId, seenVersion: version, toTicketId, why: 'put on the wrong ticket' },
      { as: 'TV' },
    );
  };

  it('moves a casting with its tag and pieces before its first operation, with the reason on both tickets', async () => {
    await checkIn(t, { castings: [IRON_HEAD, { ...IRON_HEAD, containers: [{ contents: 'springs' }] }] });
    const right = await checkIn(t);
    expect(await move(right.ticketId, 40_002)).toMatchObject({ ok: true, output: { positionInTicket: 2 } });
    const page = await t.send('tickets/get-ticket', { ticketId: right.ticketId }, { as: 'TV' });
    expect(page.castings.map((one) => [one.tagNo, one.containers.length, one.items.length > 0])).toEqual([
      [40_003, 0, true],
      [40_002, 1, true],
    ]);
    expect(page.activity.map((one) => one.words)).toContain('40002 came from ticket 20001: put on the wrong ticket');
  });

  it('stays where work has begun (I14)', async () => {
    await checkIn(t, { wishes: [{ operation: 'hot-tank' }] });
    const other = await checkIn(t);
    const row = t.db.sql<{ id: number; ticket: number }>('SELECT id, ticket_id AS ticket FROM operation')[0];
    t.sqlite
      .prepare(
        "INSERT INTO operation_run (operation_id, ticket_id, staff_id, started_at, created_at) VALUES (?, ?, 1, '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z')",
      )
      .run(row?.id, row?.ticket);
    const { castingId, version } = t.db.sql<{ castingId: number; version: number }>(
      'SELECT id AS castingId, version FROM casting WHERE tag_no = 40001',
    )[0] ?? { castingId: 0, version: 0 };
    const reply = await t.ask(
      'castings/move-casting',
      { castingId, seenVersion: version, toTicketId: other.ticketId, why: 'x' },
      { as: 'TV' },
    );
    expect(reply).toMatchObject({ ok: false, error: { code: 'castings/work-begun' } });
    expect(() =>
      t.sqlite.prepare('UPDATE casting SET ticket_id = ? WHERE id = ?').run(other.ticketId, castingId),
    ).toThrow(/never changes its ticket/);
  });

  it('asks to withdraw priced work first, and does not move onto itself', async () => {
    const first = await checkIn(t, { wishes: [{ operation: 'hot-tank' }] });
    const other = await checkIn(t);
    expect(await move(other.ticketId)).toMatchObject({ ok: false, error: { code: 'castings/has-lines' } });
    expect(await move(first.ticketId)).toMatchObject({ ok: false, error: { code: 'castings/same-ticket' } });
  });
});
