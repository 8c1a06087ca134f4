import { beforeEach, describe, expect, it } from 'vitest';
import { type Opened, openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let shop: TestHost;
let ticket: Opened;

const billOn = async (day: string, amount: number): Promise<number> => {
  shop.setClock(`${day}T14:00:00.000Z`);
  const { ticketId } = ticket;
  await shop.send('pricing/add-charge', {
    ticketId,
    charge: { kind: 'fee', words: 'earlier work', price: amount * 100, taxClass: 'labour_repair' },
  });
  return (await shop.send('invoices/issue-invoice', { ticketId, seenTotal: amount })).invoiceId;
};

/** Due days as on the practice shop's ticket S11; regression baseline, invented. Terms net 30. */
beforeEach(async () => {
  shop = await startTestHost();
  ticket = await openTicket(shop, { customer: 'Crankle Street', castings: [] });
  await billOn('2027-01-13', 9675);
  await billOn('2027-03-14', 19_840);
  await billOn('2027-03-15', 74_215);
  await billOn('2027-04-14', 31_000);
  await billOn('2027-05-11', 48_620);
  shop.setClock('2027-05-14T14:00:00.000Z');
});

describe('accounts/list-ageing', () => {
  it('ages by due day: exactly 30 late belongs to 1-30', async () => {
    const ageing = await shop.send('accounts/list-ageing', {});
    expect(ageing).toMatchObject({ asOf: '2027-05-14', countedFrom: 'due day', owed: 183_350, notApplied: 0 });
    expect(ageing.rows).toMatchObject([{ customer: 'Crankle Street', owed: 183_350, limit: 250_000 }]);
    expect(ageing.sum).toEqual({ current: 79_620, '1-30': 74_215, '31-60': 19_840, '61-90': 0, 'over 90': 9675 });
  });

  it('shows money not applied in its own column, never netted', async () => {
    await shop.send('payments/take-payment', { customerId: ticket.customerId, kind: 'card', amount: 5000 });
    const { rows } = await shop.send('accounts/list-ageing', {});
    expect(rows).toMatchObject([{ owed: 183_350, notApplied: 5000 }]);
  });

  it('counts from the day of the invoice where the shop says so', async () => {
    const { version } = await shop.send('shop/get-settings', {});
    shop.sqlite.prepare("UPDATE shop_setting SET age_from = 'issued' WHERE version = ?").run(version);
    const ageing = await shop.send('accounts/list-ageing', {});
    expect(ageing.countedFrom).toBe('day of the invoice');
    expect(ageing.sum).toMatchObject({ current: 0, '1-30': 79_620, '31-60': 74_215, '61-90': 19_840, 'over 90': 9675 });
  });
});

describe('invoices/list-invoices', () => {
  it('lists the latest first, or only what is open', async () => {
    await shop.send('payments/take-payment', {
      customerId: ticket.customerId,
      kind: 'card',
      amount: 9675,
      apply: 'oldest',
    });
    const all = await shop.send('invoices/list-invoices', { customerId: ticket.customerId });
    expect(all.rows.map((r) => [r.total, r.word, r.daysLate])).toEqual([
      [48_620, 'invoiced', -27],
      [31_000, 'invoiced', 0],
      [74_215, 'overdue', 30],
      [19_840, 'overdue', 31],
      [9675, 'paid', 91],
    ]);
    expect((await shop.send('invoices/list-invoices', { openOnly: true })).rows).toHaveLength(4);
  });
});

describe('accounts/get-statement', () => {
  it('runs from the opening balance to the closing one', async () => {
    await shop.send('payments/take-payment', {
      customerId: ticket.customerId,
      kind: 'card',
      amount: 74_215,
      apply: 'oldest',
    });
    const statement = await shop.send('accounts/get-statement', { customerId: ticket.customerId, from: '2027-04-01' });
    expect(statement.opening).toBe(9675 + 19_840 + 74_215);
    expect(statement.rows.map((r) => [r.kind, r.amount, r.balance])).toEqual([
      ['invoice', 31_000, 134_730],
      ['invoice', 48_620, 183_350],
      ['payment', -74_215, 109_135],
    ]);
    expect(statement.closing).toBe(109_135);
    const aged = Object.values(statement.aged).reduce((sum, amount) => sum + amount, 0);
    expect(aged - statement.notApplied).toBe(statement.closing);
  });

  it('is empty for a customer without business', async () => {
    const other = await openTicket(shop, { customer: 'Back Basin', castings: [] });
    const statement = await shop.send('accounts/get-statement', { customerId: other.customerId });
    expect(statement).toMatchObject({ opening: 0, rows: [], closing: 0 });
  });
});
