import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD, letGo } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const holds = () =>
  t.db.sql<{ tag: number; reason: string }>(
    'SELECT c.tag_no AS tag, h.reason FROM hold h JOIN casting c ON c.id = h.casting_id WHERE h.closed_at IS NULL ORDER BY c.id',
  );

describe('addCastings', () => {
  it('tags a casting whose stamp is in the house, and holds both (I13)', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K77' }] });
    const second = await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K77' }] });
    expect(second.castings[0]).toMatchObject({
      tagNo: 40_002,
      identityHold: 'Stamp K77 is on 40002 and on 40001. Check both before going on.',
    });
    expect(holds()).toEqual([
      { tag: 40_001, reason: 'identity' },
      { tag: 40_002, reason: 'identity' },
    ]);
  });

  it('shows the hold on both tickets at once', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K77' }] });
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K77' }] });
    const { tickets } = await t.send('tickets/list-open', {}, { as: 'TV' });
    expect(tickets.map((one) => one.chips.map((chip) => chip.chip))).toEqual([['held'], ['held']]);
  });

  it('holds nothing for a stamp that left the house, and knows the visit before', async () => {
    const first = await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K77' }] });
    await letGo(t, first);
    const back = await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K77' }] });
    expect(back.castings[0]?.identityHold).toBeNull();
    const { visits } = await t.send(
      'castings/list-visits',
      { castingId: back.castings[0]?.castingId ?? 0 },
      { as: 'TV' },
    );
    expect(visits.map((visit) => [visit.tagNo, visit.inHouse])).toEqual([
      [40_002, true],
      [40_001, false],
    ]);
  });

  it('numbers castings of a kind on the ticket', async () => {
    const made = await checkIn(t, {
      castings: [
        { ...IRON_HEAD, position: 'left' },
        { ...IRON_HEAD, position: 'right' },
        { ...IRON_HEAD, type: 'NV-8B', position: 'not_known' },
      ],
    });
    expect(made.castings.map((one) => one.title)).toEqual(['Head 1 of 2, left', 'Head 2 of 2, right', 'Block']);
  });

  it('makes a private type from counts for what the catalogue does not know', async () => {
    await checkIn(t, {
      castings: [
        {
          described: {
            kind: 'head',
            name: 'garden tractor head',
            camLayout: 'ohv',
            counts: { cylinders: 1, intakeValves: 1, exhaustValves: 1 },
          },
          material: 'aluminium',
        },
      ],
      wishes: [{ operation: 'pressure-test' }],
    });
    const page = await t.send('tickets/get-ticket', { number: 20001 }, { as: 'TV' });
    expect(page.castings[0]).toMatchObject({ typePrivate: true, typeName: 'garden tractor head', kind: 'head' });
    expect(page.operations.map((one) => one.kindCode)).toEqual(['pressure-test']);
    expect(
      t.db.sql(
        "SELECT label FROM spot s JOIN casting_type y ON y.id = s.casting_type_id WHERE y.private = 1 AND s.kind = 'valve' ORDER BY bench_order",
      ).length,
    ).toBe(2);
  });

  it('takes a lot of a hundred castings in one command', async () => {
    const made = await checkIn(t, { castings: Array.from({ length: 100 }, () => ({ ...IRON_HEAD, type: 'UN-1' })) });
    expect(new Set(made.castings.map((one) => one.tagNo)).size).toBe(100);
  });
});
