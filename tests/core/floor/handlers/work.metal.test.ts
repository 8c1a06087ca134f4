/** What no rule and nobody can override at the machine. Caustic, magnet and metal: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { ALUMINIUM_HEAD, benchOf, checkIn, finish, IRON_HEAD, refuseStart, start, tick } from '../builders.ts';

describe('floor/start-operation on metal', () => {
  it('keeps caustic off a casting whose metal nobody confirmed (I10)', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { castings: [{ ...IRON_HEAD, materialHow: 'known' }] });
    await tick(host, job, 'tag-and-photos');
    await finish(host, job, 'disassemble-head');
    const refused = await refuseStart(host, job, 'hot-tank');
    expect(refused).toMatchObject({ message: 'Confirm the metal first: does a magnet stick?' });
    await host.send(
      'castings/confirm-metal',
      { castingId: job.castings[0]?.castingId ?? 0, material: 'iron_grey', how: 'magnet' },
      { as: 'JP' },
    );
    await start(host, job, 'hot-tank');
  });

  it('keeps every wash off a metal that is not known, for nobody to override, and notes the near miss', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, {
      castings: [ALUMINIUM_HEAD],
      operations: ['disassemble-head', 'aluminium-wash'],
    });
    await tick(host, job, 'tag-and-photos');
    await finish(host, job, 'disassemble-head');
    const casting = job.castings[0]?.castingId ?? 0;
    // Somebody at the counter is not sure of the metal any more.
    await host.send('castings/change-casting', {
      castingId: casting,
      seenVersion: (await benchOf(host, job)).version,
      changes: { material: { seen: 'aluminium', to: 'not_known' } },
    });
    const refused = await refuseStart(host, job, 'aluminium-wash');
    expect(refused).toMatchObject({
      code: 'floor/metal',
      message: 'METAL NOT KNOWN: no wash until a person confirms the metal. Does a magnet stick?',
    });
    expect(host.sqlite.prepare('SELECT kind, casting_id FROM incident').all()).toEqual([
      { kind: 'near_miss', casting_id: casting },
    ]);
    const activity = host.sqlite.prepare('SELECT command, subject_table FROM activity ORDER BY id DESC').get();
    expect(activity).toEqual({ command: 'floor/start-operation', subject_table: 'incident' });
  });

  it('refuses caustic and magnet rows on all but iron whoever writes them (I8, I9)', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { castings: [ALUMINIUM_HEAD], operations: ['disassemble-head'] });
    const insert = (code: string) => () =>
      host.sqlite
        .prepare(
          `INSERT INTO operation (casting_id, ticket_id, operation_kind_id, position, work_centre_id, planned_s, created_at)
           SELECT ?, ?, id, 2, work_centre_id, 600, '2026-03-09T14:00:00.000Z' FROM operation_kind WHERE code = ?`,
        )
        .run(job.castings[0]?.castingId, job.ticketId, code);
    expect(insert('hot-tank')).toThrow('caustic and magnet are for iron only');
    expect(insert('mag-particle-check')).toThrow('caustic and magnet are for iron only');
    const iron = await checkIn(host, { operations: ['hot-tank'] });
    const correct = host.sqlite.prepare("UPDATE casting SET material = 'aluminium' WHERE id = ?");
    expect(() => correct.run(iron.castings[0]?.castingId)).toThrow('caustic and magnet are for iron only');
    expect(insert('aluminium-wash')).not.toThrow();
  });

  it('keeps a wash waiting until every piece that does not bear it is off', async () => {
    const host = await startTestHost();
    const items = [{ words: 'plastic plug', counted: 2, removeBeforeWash: true }];
    const job = await checkIn(host, { castings: [{ ...IRON_HEAD, items }], operations: ['hot-tank'] });
    const refused = await refuseStart(host, job, 'hot-tank');
    expect(refused).toMatchObject({ code: 'floor/still-on', message: 'Take off before the wash: plastic plug.' });
    const page = await benchOf(host, job);
    expect(page.warnings).toContain('TAKE OFF BEFORE WASH - PLASTIC PLUG');
    await host.send('floor/remove-item', { itemId: page.arrival.items[0]?.id ?? 0 }, { as: 'JP' });
    const acted = await start(host, job, 'hot-tank');
    expect(acted.warnings).toEqual([
      `${job.castings[0]?.tagNo}: take the card tag off and wire the metal tag on before the wash.`,
    ]);
  });
});
