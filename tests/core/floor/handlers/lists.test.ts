/** Queues, benches, tags. Order of a queue: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { nobody } from '#core/host/session.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';
import { acting, benchOf, checkIn, finish, IRON_HEAD, operationOf, tick } from '../builders.ts';

async function centreOf(host: TestHost, code: string) {
  const { centres } = await host.send('floor/list-centres', {}, { as: 'JP' });
  const found = centres.find((c) => c.code === code);
  if (!found) throw new Error(`no centre ${code}`);
  return found;
}
const queueOf = async (host: TestHost, code: string) =>
  host.send('floor/list-queue', { centreId: (await centreOf(host, code)).id }, { as: 'JP' });
const promise = (day: string) => ({ promise: { day, minute: 1020 } }) as never;

describe('floor/list-queue', () => {
  it('stands by promise, then rush, then time in the shop; held and not approved apart', async () => {
    const host = await startTestHost();
    const late = await checkIn(host, promise('2026-03-13'));
    host.setClock('2026-03-09T14:10:00.000Z');
    const early = await checkIn(host, promise('2026-03-11'));
    const rush = await checkIn(host, { ...(promise('2026-03-11') as object), rush: 2500 } as never);
    const held = await checkIn(host, promise('2026-03-10'));
    await checkIn(host, { ceiling: null });
    for (const job of [late, early, rush, held]) await tick(host, job, 'tag-and-photos');
    await host.send('floor/open-hold', { reason: 'parts', castingId: held.castings[0]?.castingId ?? 0 }, { as: 'JP' });
    const queue = await queueOf(host, 'teardown');
    const tags = (jobs: (typeof late)[]) => jobs.map((job) => job.castings[0]?.tagNo);
    expect(queue.next.map((row) => row.tag)).toEqual(tags([rush, early, late]));
    expect(queue.held.map((row) => [row.tag, row.hold?.words])).toEqual([[tags([held])[0], 'waiting parts']]);
    expect(queue.notApproved).toBe(1);
    expect(queue.centre).toMatchObject({ ready: 3, held: 1, words: '3 castings, 1.1 h ahead' });
    expect(queue.next[0]).toMatchObject({
      words: 'Strip head',
      customer: 'P. Lindqvist',
      promise: { rush: true, late: false },
    });
  });

  it('moves on as work is done: waiting, next, on the machine', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    expect((await queueOf(host, 'wash-caustic')).waiting).toMatchObject([
      { right: 'waits for strip head', mayStart: false },
    ]);
    await tick(host, job, 'tag-and-photos');
    await finish(host, job, 'disassemble-head');
    expect((await queueOf(host, 'wash-caustic')).next).toMatchObject([{ word: 'ready to start', mayStart: true }]);
    await host.send(
      'floor/start-operation',
      { operations: [acting(await benchOf(host, job), 'hot-tank')] },
      { as: 'JP' },
    );
    expect((await queueOf(host, 'wash-caustic')).running).toMatchObject([{ running: [{ initials: 'JP' }] }]);
    await finish(host, job, 'hot-tank');
    const clear = await queueOf(host, 'wash-caustic');
    expect([clear.running, clear.next, clear.centre.words]).toEqual([[], [], 'This bench is clear.']);
  });
});

describe('floor/reorder-queue', () => {
  it('puts what the lead named first, and back', async () => {
    const host = await startTestHost();
    const jobs = [await checkIn(host, promise('2026-03-11')), await checkIn(host, promise('2026-03-12'))];
    for (const job of jobs) await tick(host, job, 'tag-and-photos');
    const centreId = (await centreOf(host, 'teardown')).id;
    const second = operationOf(await benchOf(host, jobs[1] as never), 'disassemble-head').id;
    await host.send('floor/reorder-queue', { centreId, operationIds: [second] }, { as: 'BL' });
    expect((await queueOf(host, 'teardown')).next.map((row) => row.operationId)[0]).toBe(second);
    await host.send('floor/reorder-queue', { centreId, operationIds: [] }, { as: 'BL' });
    expect((await queueOf(host, 'teardown')).next.map((row) => row.operationId)[1]).toBe(second);
    expect((await host.refuse('floor/reorder-queue', { centreId, operationIds: [] }, { as: 'JP' })).kind).toBe(
      'not-allowed',
    );
  });
});

describe('floor/list-tags', () => {
  it('shows nobody signed in the tags and nothing of the customer', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { castings: [IRON_HEAD], ...(promise('2026-03-10') as object) });
    host.setClock('2026-03-11T14:00:00.000Z');
    const { tags } = await host.send('floor/list-tags', {}, { as: nobody(null, 'tablet') });
    expect(tags).toEqual([
      {
        tag: job.castings[0]?.tagNo,
        kindWords: 'Head',
        metal: { word: 'IRON', class: 'iron', outline: 'filled', confirmedAt: '2026-03-09T14:00:00.000Z' },
        next: 'strip head',
        centre: 'Teardown',
        held: false,
        late: true,
      },
    ]);
  });
});

describe('floor/list-holds', () => {
  it('names tag, ticket and how long', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    await host.send(
      'floor/open-hold',
      { reason: 'spec_question', castingId: job.castings[0]?.castingId ?? 0 },
      { as: 'JP' },
    );
    host.setClock('2026-03-11T14:00:00.000Z');
    const { holds } = await host.send('floor/list-holds', {}, { as: 'BL' });
    expect(holds).toMatchObject([
      { tag: job.castings[0]?.tagNo, ticketNumber: job.number, reasonWords: 'question about size', days: 2, due: true },
    ]);
  });
});
