/** The counter's first page on a whole host: each list finds its ticket and nothing else. */
import { describe, expect, it } from 'vitest';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';
import { checkIn, finish, type Job, tick } from '../floor/builders.ts';

const page = (host: TestHost) => host.send('home/get-counter', {}, { as: 'TV' });
const numbers = (list: Readonly<{ rows: readonly Readonly<{ ticketNumber: number | null }>[] }>) =>
  list.rows.map((row) => row.ticketNumber);
const promised = (day: string, minute = 1020) => ({ promise: { day, minute } }) as never;

/** Strip and wash done by JP, signed by BL, put away. */
async function makeReady(host: TestHost, job: Job): Promise<void> {
  await tick(host, job, 'tag-and-photos');
  for (const code of ['disassemble-head', 'hot-tank']) await finish(host, job, code);
  const castingId = job.castings[0]?.castingId ?? 0;
  const { version } = await host.send('floor/get-bench', { tag: job.castings[0]?.tagNo ?? 0 }, { as: 'BL' });
  await host.send(
    'castings/sign-off-casting',
    { castingId, seenVersion: version, place: 'first' },
    { as: 'BL', pin: '740107' },
  );
}

describe('home/get-counter', () => {
  it('is calm on an empty day', async () => {
    const host = await startTestHost();
    const empty = await page(host);
    expect(empty).toMatchObject({ today: '2026-03-09', dayWords: 'Monday 9 March' });
    expect(empty.summary).toBe('Nothing is promised today. Nobody is waiting for a call, no approvals to chase.');
    expect(
      [empty.missed, empty.ringBack, empty.ready, empty.holds, empty.quotes, empty.due].map((l) => l.count),
    ).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('moves a promise from today to missed when its minute has come', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, promised('2026-03-09', 900));
    const before = await page(host);
    expect(before.promisedToday.rows).toMatchObject([
      {
        ticketNumber: job.number,
        ownTime: true,
        minute: 900,
        tone: 'hold',
        words: 'will miss: waits for tag and photos',
      },
    ]);
    expect(before.missed.count).toBe(0);
    // 15:00 in New York in March is 19:00 UTC.
    host.setClock('2026-03-09T19:00:00.000Z');
    const after = await page(host);
    expect(after.missed.rows).toMatchObject([
      { ticketNumber: job.number, leftWords: 'missed by 0 min', target: { screen: 'ticket', ticketId: job.ticketId } },
    ]);
    expect(after.summary).toBe('1 ticket promised today, 1 will miss. 1 person to ring, no approvals to chase.');
  });

  it('says who has to be told that it is ready, and when they were', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, promised('2026-03-09'));
    await makeReady(host, job);
    const before = await page(host);
    expect(before.ready.rows).toMatchObject([
      { ticketNumber: job.number, right: 'tell them', words: 'not put away, 1 casting' },
    ]);
    expect(before.ready.rows[0]?.toPay).toBeGreaterThan(0);
    expect(before.promisedToday.rows[0]?.words).toBe('ready, not told');
    host.setClock('2026-03-09T15:10:00.000Z');
    await host.send(
      'tickets/log-contact',
      {
        ticketId: job.ticketId,
        customerId: job.customerId,
        means: 'call',
        about: 'ready',
        words: 'told',
        reached: true,
      } as never,
      { as: 'TV' },
    );
    const after = await page(host);
    expect(after.ready.rows).toMatchObject([{ right: 'told 11:10', tone: 'plain' }]);
  });

  it('keeps a call in vain until somebody is reached', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const call = (reached: boolean) =>
      host.send(
        'tickets/log-contact',
        {
          ticketId: job.ticketId,
          customerId: job.customerId,
          means: 'call',
          about: 'late',
          words: 'wants to know about the valves',
          reached,
        } as never,
        { as: 'TV' },
      );
    await call(false);
    expect((await page(host)).ringBack.rows).toMatchObject([
      {
        ticketNumber: job.number,
        words: 'wants to know about the valves',
        right: 'called 10:00',
        person: 'Petra Lindqvist',
      },
    ]);
    host.setClock('2026-03-09T14:30:00.000Z');
    await call(true);
    expect((await page(host)).ringBack.count).toBe(0);
  });

  it('chases holds that nobody owns or whose day has come', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const owner = host.sqlite.prepare("SELECT id FROM staff WHERE initials = 'MN'").get() as { id: number };
    const hold = {
      reason: 'parts',
      castingId: job.castings[0]?.castingId ?? 0,
      ownerId: owner.id,
      words: 'gasket set',
    } as const;
    await host.send('floor/open-hold', { ...hold, followUpOn: '2026-03-12' }, { as: 'MN' });
    expect((await page(host)).holds.count).toBe(0);
    host.setClock('2026-03-12T14:00:00.000Z');
    expect((await page(host)).holds.rows).toMatchObject([
      { reason: 'parts', words: 'waiting parts, gasket set', right: '3 days', days: 3, target: { screen: 'hold' } },
    ]);
    await host.send('floor/open-hold', { reason: 'spec_question', ticketId: job.ticketId }, { as: 'MN' });
    const words = (await page(host)).holds.rows.map((row) => row.words);
    expect(words).toContain('question about size, owner not named');
  });

  it('lists for tomorrow what cannot be done yet, with when to ring', async () => {
    const host = await startTestHost();
    const going = await checkIn(host, promised('2026-03-10'));
    await tick(host, going, 'tag-and-photos');
    const stuck = await checkIn(host, promised('2026-03-10'));
    await host.send('floor/open-hold', { reason: 'parts', ticketId: stuck.ticketId }, { as: 'MN' });
    const { tomorrow } = await page(host);
    expect(numbers(tomorrow)).toEqual([stuck.number]);
    expect(tomorrow.rows[0]).toMatchObject({ right: 'ring by 17:00', words: 'will miss: waiting parts' });
  });

  it('forgets what is over', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, promised('2026-03-09', 900));
    await host.send(
      'tickets/log-contact',
      {
        ticketId: job.ticketId,
        customerId: job.customerId,
        means: 'call',
        about: 'late',
        words: 'x',
        reached: false,
      } as never,
      { as: 'TV' },
    );
    await host.send('floor/open-hold', { reason: 'parts', ticketId: job.ticketId }, { as: 'MN' });
    host.sqlite.prepare('UPDATE casting SET out_at = ?').run('2026-03-09T14:00:00.000Z');
    host.sqlite.prepare("UPDATE ticket SET declined_at = ?, declined_why = 'too dear'").run('2026-03-09T14:00:00.000Z');
    host.sqlite.prepare('UPDATE ticket_now SET over = 1, ring_at = NULL, ready = 0, promise_open = 0, stuck = 0').run();
    host.setClock('2026-03-10T14:00:00.000Z');
    const reply = (await host.ask('home/get-counter', {}, { as: 'TV' })) as unknown as {
      output: Awaited<ReturnType<typeof page>>;
    };
    const { missed, ringBack, holds, promisedToday } = reply.output;
    expect([missed, ringBack, holds, promisedToday].map((list) => list.count)).toEqual([0, 0, 0, 0]);
  });

  it('is not for the bench', async () => {
    const host = await startTestHost();
    expect((await host.refuse('home/get-counter', {}, { as: 'JP' })).kind).toBe('not-allowed');
  });
});
