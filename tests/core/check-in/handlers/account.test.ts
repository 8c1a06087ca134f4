import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, customerNamed, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const checkInFor = async (words: string) =>
  checkIn(t, {
    customer: { customerId: await customerNamed(t, words) },
    wishes: [{ package: 'valve-job' }],
    ceiling: null,
  });

describe('holdForAccount', () => {
  it('tags a casting of an account on stop, and its work waits for a named yes (I33)', async () => {
    const made = await checkInFor('back basin');
    expect(made.castings[0]?.tagNo).toBe(40_001);
    expect(made.account).toMatchObject({
      state: 'on stop',
      waitsForYes: true,
      words: expect.stringContaining('Account on stop since'),
    });
    const page = await t.send('tickets/get-ticket', { number: 20001 }, { as: 'TV' });
    expect(page.holds).toMatchObject([{ reason: 'money', onWhat: 'whole ticket' }]);
    expect(page.operations.every((one) => !one.mayStart)).toBe(true);
  });

  it('lets work go on with the yes of a lead or the owner, not of the counter', async () => {
    const made = await checkInFor('back basin');
    const input = { ticketId: made.ticketId, about: 'work' as const, why: 'pays cash on Friday' };
    expect((await t.refuse('tickets/give-account-yes', input, { as: 'TV' })).kind).toBe('not-allowed');
    await t.send('tickets/give-account-yes', input, { as: 'OB', pin: '740101' });
    const page = await t.send('tickets/get-ticket', { number: 20001 }, { as: 'TV' });
    expect(page.holds).toEqual([]);
    expect(t.db.sql('SELECT s.initials, y.why FROM account_yes y JOIN staff s ON s.id = y.created_by')).toEqual([
      { initials: 'OB', why: 'pays cash on Friday' },
    ]);
  });

  it('orders nothing before the named yes', async () => {
    const made = await checkInFor('back basin');
    const { partId } = await t.send(
      'parts/add-part',
      {
        ticketId: made.ticketId,
        castingId: made.castings[0]?.castingId ?? null,
        part: {
          words: 'exhaust valves',
          quantity: 4,
          source: 'shop',
          sell: 'typed',
          price: 100_000,
          priceWhy: 'quoted',
        },
      } as never,
      { as: 'TV' },
    );
    const error = await t.refuse('parts/order-part', { part: partId, seenVersion: 1 } as never, { as: 'TV' });
    expect(error).toMatchObject({ code: 'tickets/account-waits', offers: [{ request: 'tickets/give-account-yes' }] });
    await t.send(
      'tickets/give-account-yes',
      { ticketId: made.ticketId, about: 'work', why: 'cash' },
      { as: 'OB', pin: '740101' },
    );
    const after = await t.refuse('parts/order-part', { part: partId, seenVersion: 1 } as never, { as: 'TV' });
    expect(after.code).toBe('approvals/not-covered');
  });

  it('stops only what would pass the limit: this ticket counts too', async () => {
    const customerId = await customerNamed(t, 'crankle');
    const { version } = await t.send('customers/get-customer', { customerId }, { as: 'OB' });
    await t.send('customers/set-terms', { customerId, seenVersion: version, creditLimit: 20_000 }, { as: 'OB' });
    const over = await checkInFor('crankle');
    expect(over.account).toMatchObject({ state: 'over', waitsForYes: true, limit: 20_000 });
    expect(over.account.words).toContain('200.00 used');
  });

  it('holds nothing for an account in order', async () => {
    const made = await checkInFor('ferry');
    expect(made.account).toMatchObject({ state: 'ok', waitsForYes: false, words: '' });
    expect(t.db.sql('SELECT id FROM hold')).toEqual([]);
  });
});

describe('customers/get-account', () => {
  it('shows the stop before anything is unloaded, and the deposit of somebody new', async () => {
    const stopped = await t.send(
      'customers/get-account',
      { customerId: await customerNamed(t, 'back basin') },
      { as: 'TV' },
    );
    expect(stopped).toMatchObject({ state: 'on stop', depositSuggested: 0 });
    const { customerId } = await t.send('customers/add-customer', { name: 'Ossian Wherrytun' }, { as: 'TV' });
    expect(await t.send('customers/get-account', { customerId }, { as: 'TV' })).toMatchObject({
      state: 'none',
      depositSuggested: 10_000,
    });
    await checkIn(t, { customer: { customerId }, castings: [IRON_HEAD] });
    expect((await t.send('customers/get-account', { customerId }, { as: 'TV' })).depositSuggested).toBe(0);
  });
});
