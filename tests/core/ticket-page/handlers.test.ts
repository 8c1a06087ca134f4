import { beforeEach, describe, expect, it } from 'vitest';
import { ALUMINIUM_HEAD, checkIn, customerNamed } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
  await checkIn(t, {
    customer: { customerId: await customerNamed(t, 'mudlark') },
    ticket: { orderNumber: 'ML-7731', engine: 'BV-6', gasket: 'mls', historyWords: 'overheated while towing' },
    castings: [
      {
        ...ALUMINIUM_HEAD,
        pair: 1,
        containers: [{ kind: 'tray', contents: 'followers', count: 12, ownerMark: 'customers_own' }],
      },
      { ...ALUMINIUM_HEAD, position: 'right', pair: 1 },
    ],
    wishes: [{ package: 'valve-job' }, { operation: 'pressure-test' }],
    ceiling: { amount: 150_000, taxIn: false, saidBy: 'Piet Vandrell', words: 'up to fifteen hundred' },
    promise: { day: '2026-03-12' },
  });
});
const page = () => t.send('tickets/get-ticket', { number: 20_001 }, { as: 'TV' });

describe('tickets/get-ticket', () => {
  it('shows the title block in words', async () => {
    expect(await page()).toMatchObject({
      number: 20_001,
      arrivedWords: 'Mon 9 Mar 10:00',
      customer: {
        name: 'Mudlark Lane Garage Ltd',
        words: 'account, net 30 days',
        person: { name: 'Ysolde Kerrow' },
        phone: '555-0115',
      },
      takenInBy: { initials: 'TV' },
      said: [
        { label: 'What they said', words: 'overheated while towing' },
        { label: 'Gasket', words: 'MLS' },
      ],
    });
  });

  it('shows castings with their bar and what comes next', async () => {
    const { castings, word, agreement } = await page();
    expect(word).toBe('approved');
    expect(agreement.find((stage) => stage.here)?.word).toBe('approved');
    expect(castings[0]).toMatchObject({
      tagNo: 40_001,
      title: 'Head 1 of 2, left',
      word: 'received',
      done: 0,
      metalWarning: 'ALUMINIUM - NO CAUSTIC',
    });
    expect(castings[0]?.bar.length).toBe(castings[0]?.of);
    expect(castings[0]?.nowWords).toMatch(/^next /);
  });

  it('lists operations in the order of the traveller, the amount once a line', async () => {
    const { operations, lines } = await page();
    const left = operations.filter((one) => one.castingId === operations[0]?.castingId);
    expect(left.map((one) => one.kindCode)[0]).toBe('disassemble-head');
    expect(left.filter((one) => one.group === 'in package').length).toBeGreaterThan(4);
    const shown = operations.flatMap((one) => one.amount ?? []);
    expect(shown.reduce((sum, amount) => sum + amount, 0)).toBe(lines.reduce((sum, line) => sum + line.amount, 0));
    expect(left.filter((one) => one.next)).toHaveLength(1);
  });

  it('adds the money up from the lines and says how far the ceiling reaches', async () => {
    const { money } = await page();
    expect(money.rows.map((row) => row.words)).toEqual(['Work on the ticket now', 'Authorised, ceiling']);
    expect(money).toMatchObject({
      authorised: 150_000,
      basis: 'before tax',
      exposure: 0,
      moneyWord: 'unbilled',
      balance: 0,
    });
    expect(money.now.total).toBe(money.now.beforeTax + money.now.tax);
  });

  it('says what is past the ceiling in words', async () => {
    const { ticketId } = await page();
    await t.send(
      'pricing/add-charge',
      {
        ticketId,
        castingId: null,
        charge: { kind: 'fee', words: 'a special', price: 10_000_000, priceWhy: 'agreed' },
      } as never,
      { as: 'TV' },
    );
    const { money } = await page();
    expect(money.rows.find((row) => row.tone === 'past')?.more).toMatch(/^past by /);
  });

  it('lists what was done, newest first, with who', async () => {
    const { activity } = await page();
    expect(activity.at(-1)).toMatchObject({ words: 'Checked in ticket 20001: 40001, 40002', by: 'Teodor Vaskelund' });
  });

  it('offers the next step', async () => {
    expect((await page()).next.map((step) => step.go)).toEqual(['sign', 'print']);
  });

  it('does not know a ticket that is not there', async () => {
    const error = await t.refuse('tickets/get-ticket', { number: 99 }, { as: 'TV' });
    expect(error).toMatchObject({ kind: 'not-found', message: 'Ticket 99 is not here. Check the number, or go back.' });
  });

  it('is not for a machinist, who sees the casting without customer address, telephone or price', async () => {
    expect((await t.refuse('tickets/get-ticket', { number: 20_001 }, { as: 'SO' })).kind).toBe('not-allowed');
    const casting = await t.send('castings/get-casting', { tag: 40_001 }, { as: 'SO' });
    expect(casting).toMatchObject({ customer: 'Mudlark Lane', word: 'received', identityInDoubt: false });
    expect(JSON.stringify(casting)).not.toMatch(/555-|amount|price/i);
  });
});
