import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const CEILING = { amount: 50_000_000, taxIn: false, saidBy: 'x', words: 'go on', overrideWhy: 'known well' };
const WORK = { wishes: [{ package: 'valve-job' }], ceiling: CEILING };

describe('promises/get-suggestion', () => {
  it('suggests a day for a ticket, names the bottleneck and shows its working', async () => {
    const { ticketId } = await checkIn(t, WORK, 'OB');
    const suggestion = await t.send('promises/get-suggestion', { ticketId }, { as: 'TV' });
    expect(suggestion.dependsOn).toEqual([]);
    expect(suggestion.earliest?.day.localeCompare('2026-03-09')).toBeGreaterThanOrEqual(0);
    expect(suggestion.comfortable?.day.localeCompare(suggestion.earliest?.day ?? '')).toBeGreaterThanOrEqual(0);
    expect(suggestion.bottleneck?.words).toMatch(/ is the bottleneck$/);
    expect(suggestion.working.length).toBeGreaterThan(3);
  });

  it('says the same for work only thought of', async () => {
    const thought = { castings: [{ type: 'LO-4', material: 'iron_grey', packages: ['valve-job'] }] };
    const before = await t.send('promises/get-suggestion', thought, { as: 'TV' });
    const { ticketId } = await checkIn(t, WORK, 'OB');
    const after = await t.send('promises/get-suggestion', { ticketId }, { as: 'TV' });
    expect([before.earliest, before.comfortable]).toEqual([after.earliest, after.comfortable]);
  });

  it('gets later by the queue of tickets before it', async () => {
    const thought = { castings: [{ type: 'LO-4', material: 'iron_grey', packages: ['valve-job'] }] };
    const empty = await t.send('promises/get-suggestion', thought, { as: 'TV' });
    for (let i = 0; i < 6; i += 1)
      await checkIn(
        t,
        { ...WORK, castings: Array.from({ length: 8 }, () => ({ type: 'HB-24', material: 'iron_grey' as const })) },
        'OB',
      );
    const full = await t.send('promises/get-suggestion', thought, { as: 'TV' });
    expect((full.earliest?.day ?? '') > (empty.earliest?.day ?? '')).toBe(true);
    const rush = await t.send('promises/get-suggestion', { ...thought, rush: true }, { as: 'TV' });
    expect(rush.earliest).toEqual(empty.earliest);
  });

  it('promises nothing while a part that holds work up has no date', async () => {
    const { ticketId, castings } = await checkIn(t, WORK, 'OB');
    const blocks = t.db.sql<{ id: number }>("SELECT id FROM operation_kind WHERE code = 'assemble-head'")[0]?.id;
    const part = await t.send(
      'parts/add-part',
      {
        ticketId,
        castingId: castings[0]?.castingId,
        part: {
          words: 'exhaust valves',
          quantity: 4,
          source: 'shop',
          sell: 'typed',
          price: 100_000,
          priceWhy: 'quoted',
          blocks,
        },
      } as never,
      { as: 'TV' },
    );
    expect(part).toBeTruthy();
    const suggestion = await t.send('promises/get-suggestion', { ticketId }, { as: 'TV' });
    expect(suggestion).toMatchObject({ earliest: null, comfortable: null, dependsOn: ['exhaust valves: no date yet'] });
  });
});

describe('promises/list-due', () => {
  it('lists what is promised for a day, by its hour', async () => {
    await checkIn(t, { promise: { day: '2026-03-10' } });
    await checkIn(t, { promise: { day: '2026-03-10', minute: 600 } });
    await checkIn(t, { promise: { day: '2026-03-11' } });
    const due = await t.send('promises/list-due', { day: '2026-03-10' }, { as: 'TV' });
    expect(due.tickets.map((one) => [one.number, one.promise?.words, one.promise?.ownTime])).toEqual([
      [20_002, 'Tue 10 Mar 10:00', true],
      [20_001, 'Tue 10 Mar 16:30', false],
    ]);
    expect((await t.send('promises/list-due', {}, { as: 'TV' })).tickets).toEqual([]);
  });
});

describe('promises/list-late', () => {
  it('lists what was promised and is not ready, oldest first', async () => {
    await checkIn(t, { promise: { day: '2026-03-10' } });
    await checkIn(t, { promise: { day: '2026-03-09', minute: 660 } });
    t.setClock('2026-03-10T20:29:00.000Z');
    const late = await t.send('promises/list-late', {}, { as: 'TV' });
    expect(late.tickets.map((one) => [one.number, one.lateWords])).toEqual([[20_002, 'missed by 1 day']]);
    t.setClock('2026-03-10T20:30:00.000Z');
    expect((await t.send('promises/list-late', {}, { as: 'TV' })).tickets.map((one) => one.number)).toEqual([
      20_002, 20_001,
    ]);
  });
});

describe('tickets/list-open', () => {
  it('lists open tickets newest first, by word and by customer', async () => {
    const first = await checkIn(t);
    await t.send('tickets/open-enquiry', { customer: { customerId: first.customerId } }, { as: 'TV' });
    const numbers = async (input: object) =>
      (await t.send('tickets/list-open', input, { as: 'TV' })).tickets.map((one) => one.number);
    expect(await numbers({})).toEqual([20_002, 20_001]);
    expect(await numbers({ word: 'enquiry' })).toEqual([20_002]);
    expect(await numbers({ customerId: 1 })).toEqual([]);
    expect(await t.send('tickets/list-open', { limit: 1 }, { as: 'TV' })).toMatchObject({
      more: true,
      tickets: [{ number: 20_002 }],
    });
  });
});
