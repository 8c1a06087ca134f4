import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, customerNamed, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const CEILING = { amount: 150_000, taxIn: false, saidBy: 'Ysolde Kerrow', words: 'up to fifteen hundred' };
const ask = async (ceiling: object, as: string) => {
  const customerId = await customerNamed(t, 'mudlark');
  return t.ask(
    'tickets/check-in-ticket',
    { customer: { customerId }, castings: [IRON_HEAD], ceiling: { ...CEILING, ...ceiling } },
    { as },
  );
};

describe('setCeiling', () => {
  it('counts for a named person within the limit', async () => {
    expect((await ask({ amount: 60_000 }, 'TV')).ok).toBe(true);
    expect(t.db.sql('SELECT about, answer, amount_cents AS amount, said_by AS said FROM approval')).toEqual([
      { about: 'ceiling', answer: 'yes', amount: 60_000, said: 'Ysolde Kerrow' },
    ]);
  });

  it('does not count above the limit of the person (I7)', async () => {
    const reply = await ask({}, 'TV');
    expect(reply).toMatchObject({
      ok: false,
      error: { fields: { 'ceiling.saidBy': expect.stringContaining('Ysolde Kerrow may approve up to 600.00') } },
    });
  });

  it('does not count from a driver nobody named (I7)', async () => {
    const reply = await ask({ saidBy: 'Finn', amount: 100 }, 'TV');
    expect(reply).toMatchObject({
      ok: false,
      error: { message: expect.stringContaining('Finn may not approve for this customer.') },
    });
  });

  it('counts with a reason of a lead, whose name is kept, not with one of the counter', async () => {
    expect((await ask({ overrideWhy: 'rang the owner' }, 'TV')).ok).toBe(false);
    expect((await ask({ overrideWhy: 'rang the owner' }, 'DK')).ok).toBe(true);
    expect(
      t.db.sql('SELECT s.initials, a.override_why AS why FROM approval a JOIN staff s ON s.id = a.override_by'),
    ).toEqual([{ initials: 'DK', why: 'rang the owner' }]);
  });

  it('needs the number that was called (I6)', async () => {
    const reply = await ask({ amount: 100, means: 'phone' }, 'TV');
    expect(reply).toMatchObject({
      ok: false,
      error: { fields: { 'ceiling.numberCalled': 'Write who said yes and the number you called.' } },
    });
  });

  it('lets the person a new customer was made with set a ceiling', async () => {
    const made = await checkIn(t, {
      customer: { add: { name: 'Ossian Wherrytun' } },
      ceiling: { ...CEILING, saidBy: 'Ossian Wherrytun' },
    });
    const page = await t.send('tickets/get-ticket', { ticketId: made.ticketId }, { as: 'TV' });
    expect(page.money).toMatchObject({ authorised: 150_000, basis: 'before tax' });
  });
});
