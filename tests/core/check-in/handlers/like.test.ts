import { beforeEach, describe, expect, it } from 'vitest';
import { ALUMINIUM_HEAD, checkIn } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});

describe('tickets/get-like', () => {
  it('gives work and packages of an earlier ticket for the page, no price and no reading', async () => {
    const made = await checkIn(t, {
      castings: [
        { ...ALUMINIUM_HEAD, pair: 1 },
        { ...ALUMINIUM_HEAD, position: 'right', pair: 1 },
      ],
      wishes: [{ package: 'valve-job' }, { operation: 'pressure-test', castings: [1] }],
    });
    const like = await t.send('tickets/get-like', { ticketId: made.ticketId }, { as: 'TV' });
    expect(like.castings.map((one) => [one.type, one.position, one.pair])).toEqual([
      ['BV-6', 'left', 1],
      ['BV-6', 'right', 1],
    ]);
    expect(like.wishes).toMatchObject([
      { package: 'valve-job', castings: [0, 1] },
      { operation: 'pressure-test', castings: [1], quantity: 1 },
    ]);
    expect(JSON.stringify(like)).not.toMatch(/price|amount|reading/i);
  });

  it('checks in again from what it gave', async () => {
    const made = await checkIn(t, { castings: [ALUMINIUM_HEAD], wishes: [{ package: 'valve-job' }] });
    const like = await t.send('tickets/get-like', { ticketId: made.ticketId }, { as: 'TV' });
    const again = await checkIn(t, {
      like: made.ticketId,
      castings: [ALUMINIUM_HEAD],
      wishes: like.wishes.map(({ castings, operation, package: pack }) => ({
        castings,
        ...(operation && { operation }),
        ...(pack && { package: pack }),
      })),
    });
    const page = await t.send('tickets/get-ticket', { ticketId: again.ticketId }, { as: 'TV' });
    expect(page.lines.map((line) => line.words)).toEqual(['Valve job']);
  });
});

describe('copyLimits', () => {
  it('copies limits written for the job, which wait for a second person again', async () => {
    const made = await checkIn(t);
    const castingId = made.castings[0]?.castingId;
    const quantity =
      t.db.sql<{ id: number }>("SELECT id FROM quantity WHERE code = 'guide-clearance'")[0]?.id ??
      t.db.sql<{ id: number }>('SELECT id FROM quantity LIMIT 1')[0]?.id;
    t.sqlite
      .prepare(
        "INSERT INTO limit_row (quantity_id, stage, for_what, casting_id, high, unit, typed_high, source_words, from_on, created_at) VALUES (?, 'after', 'this_job', ?, 63500, 'in', '0.0025', 'cam card', '2026-03-09', '2026-03-09T14:00:00.000Z')",
      )
      .run(quantity, castingId);
    const again = await checkIn(t, { like: made.ticketId });
    expect(
      t.db.sql('SELECT high, source_words AS source FROM limit_row WHERE casting_id = ?', again.castings[0]?.castingId),
    ).toEqual([{ high: 63_500, source: 'cam card' }]);
  });
});
