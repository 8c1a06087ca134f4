import { beforeEach, describe, expect, it } from 'vitest';
import { type Opened, openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let shop: TestHost;
let ticket: Opened;

/** An invoice of one charge, issued today. @returns its id */
async function bill(amount: number, on: Opened = ticket): Promise<{ invoiceId: number; number: number }> {
  await shop.send('pricing/add-charge', {
    ticketId: on.ticketId,
    charge: { kind: 'fee', words: 'work', price: amount * 100 },
  });
  return shop.send('invoices/issue-invoice', { ticketId: on.ticketId, seenTotal: amount });
}
const take = (more: object) =>
  shop.send('payments/take-payment', { customerId: ticket.customerId, kind: 'card', ...more } as never);

beforeEach(async () => {
  shop = await startTestHost();
  ticket = await openTicket(shop, { customer: 'Crankle Street', castings: [] });
});

describe('payments/take-payment', () => {
  it('pays the oldest first and keeps the rest', async () => {
    const first = await bill(10_000);
    shop.setClock('2026-03-20T14:00:00.000Z');
    const second = await bill(5000);
    const paid = await take({ amount: 12_000, apply: 'oldest' });
    expect(paid.applied).toEqual([
      { invoiceId: first.invoiceId, invoiceNumber: first.number, amount: 10_000 },
      { invoiceId: second.invoiceId, invoiceNumber: second.number, amount: 2000 },
    ]);
    expect(paid).toMatchObject({ left: 0, receipt: expect.stringMatching(/^R\d+$/) });
    expect(await take({ amount: 5000, apply: 'oldest' })).toMatchObject({ left: 2000 });
  });

  it('pays the invoices named, and never more than is open on one (I28)', async () => {
    const { invoiceId, number } = await bill(10_000);
    const named = (amount: number, of: number) => ({ amount: of, apply: [{ invoiceId, amount }] });
    const refuse = (input: object) =>
      shop.refuse('payments/take-payment', { customerId: ticket.customerId, kind: 'card', ...input } as never);
    expect(await refuse(named(10_001, 20_000))).toMatchObject({
      code: 'payments/over-balance',
      fields: { 'apply.0.amount': `Only 100.00 is open on invoice ${number}.` },
    });
    expect(
      await refuse({
        amount: 10_000,
        apply: [
          { invoiceId, amount: 6000 },
          { invoiceId, amount: 4001 },
        ],
      }),
    ).toMatchObject({ code: 'payments/too-much' });
    expect(
      await refuse({
        amount: 20_000,
        apply: [
          { invoiceId, amount: 6000 },
          { invoiceId, amount: 4001 },
        ],
      }),
    ).toMatchObject({ code: 'payments/over-balance' });
    expect(await refuse(named(6000, 5000))).toMatchObject({
      code: 'payments/too-much',
      message: 'Only 50.00 of this payment is left.',
    });
    await take(named(10_000, 10_000));
    expect(await refuse(named(1, 1))).toMatchObject({ code: 'payments/nothing-open' });
    expect(shop.db.sql('SELECT COUNT(*) AS n FROM payment')).toEqual([{ n: 1 }]);
  });

  it('takes no deposit for somebody else’s ticket, no amount of 0 and no day to come', async () => {
    const other = await openTicket(shop, { customer: 'Back Basin', castings: [] });
    const refuse = (input: object) =>
      shop.refuse('payments/take-payment', {
        customerId: ticket.customerId,
        kind: 'cash',
        amount: 5,
        ...input,
      } as never);
    expect(await refuse({ forTicketId: other.ticketId })).toMatchObject({ code: 'payments/other-ticket' });
    expect(await refuse({ amount: 0 })).toMatchObject({ kind: 'invalid-input' });
    expect(await refuse({ receivedOn: '2026-03-10' })).toMatchObject({ code: 'payments/in-the-future' });
  });

  it('counts receipts without a gap, and a receipt never changes (I1, I2)', async () => {
    const numbers = [];
    for (const amount of [1, 2, 3]) numbers.push((await take({ amount })).receiptNumber);
    const [first = 0] = numbers;
    expect(numbers).toEqual([first, first + 1, first + 2]);
    expect(() => shop.sqlite.prepare('UPDATE payment SET amount_cents = 9').run()).toThrow(/never changed/);
    const skip = shop.sqlite.prepare(
      `INSERT INTO payment (receipt_number, customer_id, kind, amount_cents, received_on, created_at)
       SELECT receipt_number + 7, customer_id, kind, 1, received_on, created_at FROM payment LIMIT 1`,
    );
    expect(() => skip.run()).toThrow(/without a gap/);
  });

  it('answers a payment that was sent twice once (I39)', async () => {
    const input = { customerId: ticket.customerId, kind: 'cash', amount: 500 } as const;
    const one = await shop.ask('payments/take-payment', input, { key: 'tablet-1-0001' });
    const two = await shop.ask('payments/take-payment', input, { key: 'tablet-1-0001' });
    expect(two).toEqual(one);
    expect(shop.db.sql('SELECT COUNT(*) AS n FROM payment')).toEqual([{ n: 1 }]);
  });
});

describe('payments/allocate-payment', () => {
  it('puts held money on an invoice as far as both go', async () => {
    const { paymentId } = await take({ amount: 6350 });
    const { invoiceId, number } = await bill(10_000);
    const put = (amount: number) => ({ paymentId, invoiceId, amount });
    expect(await shop.refuse('payments/allocate-payment', put(6351))).toMatchObject({
      message: 'Only 63.50 of this payment is left.',
    });
    expect(await shop.send('payments/allocate-payment', put(6000))).toEqual({ left: 350, balance: 4000 });
    const more = await take({ amount: 9000 });
    expect(
      await shop.refuse('payments/allocate-payment', { paymentId: more.paymentId, invoiceId, amount: 4001 }),
    ).toMatchObject({
      message: `Only 40.00 is open on invoice ${number}.`,
    });
  });

  it('never nets between customers', async () => {
    const other = await openTicket(shop, { customer: 'Back Basin', castings: [] });
    const { invoiceId } = await bill(1000, other);
    const { paymentId } = await take({ amount: 1000 });
    expect(await shop.refuse('payments/allocate-payment', { paymentId, invoiceId, amount: 1000 })).toMatchObject({
      code: 'payments/other-customer',
    });
  });
});

describe('payments/refund-payment', () => {
  it('pays back what was not applied, with a receipt of its own', async () => {
    const { paymentId } = await take({ amount: 10_000, forTicketId: ticket.ticketId });
    const { invoiceId } = await bill(4000);
    const back = (amount: number) => ({ paymentId, amount, kind: 'card' as const, words: 'casting was scrap' });
    expect(await shop.refuse('payments/refund-payment', back(6001))).toMatchObject({
      message: 'Only 60.00 of this payment is left.',
    });
    const refund = await shop.send('payments/refund-payment', back(6000));
    const { payments } = await shop.send('payments/list-payments', { ticketId: ticket.ticketId });
    expect(payments.map((p) => [p.amount, p.left, p.reverses])).toEqual([
      [10_000, 0, null],
      [-6000, 0, payments[0]?.receipt],
    ]);
    expect(await shop.refuse('payments/refund-payment', { ...back(1), paymentId: refund.paymentId })).toMatchObject({
      code: 'payments/is-refund',
    });
    expect(await shop.send('invoices/get-invoice', { invoiceId })).toMatchObject({ balance: 0, word: 'paid' });
  });

  it('is for books and owner', async () => {
    const { paymentId } = await take({ amount: 100 });
    const input = { paymentId, amount: 100, kind: 'cash', words: 'x' } as const;
    expect(await shop.refuse('payments/refund-payment', input, { as: 'TV' })).toMatchObject({ kind: 'not-allowed' });
  });
});

describe('payments/get-receipt', () => {
  it('says what it was applied to and what stays open', async () => {
    const { invoiceId, number } = await bill(10_000);
    const { paymentId, receipt } = await take({
      amount: 4000,
      apply: [{ invoiceId, amount: 4000 }],
      words: 'slip 0093',
    });
    expect(await shop.send('payments/get-receipt', { paymentId })).toMatchObject({
      receipt,
      customer: 'Crankle Street Garage',
      words: 'slip 0093',
      by: 'Odile Brackwen',
      applied: [{ invoiceNumber: number, amount: 4000 }],
      balances: [{ invoiceNumber: number, balance: 6000 }],
    });
  });
});
