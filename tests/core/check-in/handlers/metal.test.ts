import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const live = () =>
  t.db
    .sql<{ code: string }>(
      'SELECT k.code FROM operation o JOIN operation_kind k ON k.id = o.operation_kind_id WHERE o.not_needed_at IS NULL ORDER BY o.position',
    )
    .map((row) => row.code);
/** What stands as iron and is not: the grease hid it. */
const HIDDEN = { ...IRON_HEAD, type: 'CF-4', material: 'iron_grey' as const };

describe('castings/confirm-metal', () => {
  it('replaces what the corrected metal forbids, before anybody starts it (I8)', async () => {
    const made = await checkIn(t, {
      castings: [HIDDEN],
      wishes: [{ package: 'valve-job' }, { operation: 'hot-tank' }],
    });
    expect(live()).toContain('hot-tank');
    const castingId = made.castings[0]?.castingId ?? 0;
    const done = await t.send(
      'castings/confirm-metal',
      { castingId, material: 'aluminium', how: 'magnet' },
      { as: 'JP' },
    );
    expect(done.metal).toMatchObject({ word: 'ALUMINIUM', confirmedAt: '2026-03-09T14:00:00.000Z' });
    expect(done.warnings[0]).toContain('ALUMINIUM: no caustic.');
    expect(live()).not.toContain('hot-tank');
    expect(live()).toContain('aluminium-wash');
  });

  it('leaves prices as they were agreed', async () => {
    const made = await checkIn(t, { castings: [HIDDEN], wishes: [{ operation: 'hot-tank' }] });
    const before = t.db.sql('SELECT id, amount_cents FROM work_line');
    await t.send(
      'castings/confirm-metal',
      { castingId: made.castings[0]?.castingId ?? 0, material: 'aluminium', how: 'magnet' },
      { as: 'JP' },
    );
    expect(t.db.sql('SELECT id, amount_cents FROM work_line')).toEqual(before);
  });

  it('says STOP when the wrong wash was begun, and still keeps the true metal', async () => {
    const made = await checkIn(t, { castings: [HIDDEN], wishes: [{ operation: 'hot-tank' }] });
    const id = t.db.sql<{ id: number; ticket: number }>('SELECT id, ticket_id AS ticket FROM operation')[0];
    t.sqlite
      .prepare(
        "INSERT INTO operation_run (operation_id, ticket_id, staff_id, started_at, created_at) VALUES (?, ?, 1, '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z')",
      )
      .run(id?.id, id?.ticket);
    const reply = await t.ask(
      'castings/confirm-metal',
      { castingId: made.castings[0]?.castingId, material: 'aluminium', how: 'magnet' },
      { as: 'JP' },
    );
    expect(reply).toMatchObject({ ok: true, output: { metal: { word: 'ALUMINIUM' } } });
    expect(reply.ok && (reply.output as { warnings: string[] }).warnings).toEqual([
      'STOP: hot tank was begun on 40001. ALUMINIUM: no caustic. Use the aluminium-safe wash.',
      'ALUMINIUM: no caustic. Use the aluminium-safe wash. Hot tank is now alu wash; the price of its line stays.',
    ]);
    expect(t.db.sql('SELECT id FROM operation_run WHERE ended_at IS NULL')).toEqual([]);
  });

  it('makes an unknown metal known, with who looked and how', async () => {
    const made = await checkIn(t, { castings: [{ ...IRON_HEAD, material: 'not_known' }] });
    await t.send(
      'castings/confirm-metal',
      { castingId: made.castings[0]?.castingId ?? 0, material: 'iron_grey', how: 'magnet' },
      { as: 'JP' },
    );
    const casting = await t.send('castings/get-casting', { tag: 40_001 }, { as: 'TV' });
    expect(casting).toMatchObject({
      metal: { word: 'IRON' },
      materialHow: 'magnet',
      metalConfirmedBy: 'Jorun Pellathy',
    });
  });

  it('does not confirm "not known"', async () => {
    const made = await checkIn(t);
    const error = await t.refuse(
      'castings/confirm-metal',
      { castingId: made.castings[0]?.castingId ?? 0, material: 'not_known' as never, how: 'magnet' },
      { as: 'JP' },
    );
    expect(error.fields?.material).toContain('Bare casting, two places');
  });
});
