import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});

/** Seen through the page of the door, which reads what the commands read. */
describe('readDoor', () => {
  it('asks nothing about pieces of a casting nobody took apart', async () => {
    const { ticketId } = await checkIn(t, { castings: [{ ...IRON_HEAD, items: [{ words: 'caps', counted: 5 }] }] });
    const page = await t.send('racks/get-release', { ticketId }, { as: 'TV' });
    expect(page.rows[0]?.stops).toEqual(['40001 is not signed off. Sign it off, or write why it leaves unworked.']);
  });

  it('asks where pieces are once work has begun and nothing closed them', async () => {
    const { ticketId } = await checkIn(t, {
      castings: [
        {
          ...IRON_HEAD,
          items: [
            { words: 'springs', counted: 8 },
            { words: 'caps', counted: 5, boltedInPlace: true },
          ],
        },
      ],
      wishes: [{ operation: 'hot-tank' }],
    });
    const row = t.db.sql<{ id: number; ticket: number }>('SELECT id, ticket_id AS ticket FROM operation')[0];
    t.sqlite
      .prepare(
        "INSERT INTO operation_run (operation_id, ticket_id, staff_id, started_at, created_at) VALUES (?, ?, 1, '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z')",
      )
      .run(row?.id, row?.ticket);
    const reply = await t.ask('racks/get-release', { ticketId }, { as: 'TV' });
    const stops = reply.ok ? (reply.output as { rows: { stops: string[] }[] }).rows[0]?.stops : [];
    expect(stops?.some((stop) => stop.startsWith('springs: say where they are'))).toBe(true);
    expect(stops?.some((stop) => stop.startsWith('caps'))).toBe(false);
  });
});
