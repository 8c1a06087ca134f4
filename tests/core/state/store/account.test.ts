import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import type { CustomerId } from '#core/kernel/ids.ts';
import { cents } from '#core/kernel/units.ts';
import { readAccountUse, readOwed } from '#core/state/store/account.ts';
import { checkIn, customerNamed } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
let customer: CustomerId;
beforeEach(async () => {
  t = await startTestHost();
  customer = await customerNamed(t, 'crankle');
});

/** Invoices of an account near its limit, by what is open and how many days late on 14 May 2027 (practice shop, invented). */
async function owe(rows: readonly (readonly [total: number, dueOn: string])[]): Promise<void> {
  const { ticketId } = await checkIn(t, { customer: { customerId: customer } });
  const add = t.sqlite.prepare(
    "INSERT INTO invoice (number, ticket_id, customer_id, issued_on, due_on, frozen_json, before_tax_cents, tax_cents, total_cents, created_at) VALUES (?, ?, ?, '2027-01-01', ?, '{}', ?, 0, ?, '2027-01-01T00:00:00.000Z')",
  );
  for (const [index, [total, dueOn]] of rows.entries()) add.run(7001 + index, ticketId, customer, dueOn, total, total);
}
const TODAY = day('2027-05-14');
const OWED = [
  [79_620, '2027-05-14'],
  [74_215, '2027-04-14'],
  [19_840, '2027-04-13'],
  [9675, '2027-02-12'],
] as const;

describe('readOwed', () => {
  it('adds what is open; due today is not overdue', async () => {
    await owe(OWED);
    expect(readOwed(t.db, customer, TODAY)).toEqual({ owed: 183_350, overdue: 183_350 - 79_620 });
  });
  it('takes payments and write-offs off', async () => {
    await owe(OWED);
    const invoice = t.db.sql<{ id: number; ticket: number }>(
      'SELECT id, ticket_id AS ticket FROM invoice WHERE total_cents = 74215',
    )[0];
    t.sqlite
      .prepare(
        "INSERT INTO payment (receipt_number, customer_id, kind, amount_cents, received_on, created_at) VALUES (101, ?, 'cash', 74215, '2027-05-14', '2027-05-14T00:00:00.000Z')",
      )
      .run(customer);
    t.sqlite
      .prepare(
        "INSERT INTO allocation (payment_id, invoice_id, ticket_id, amount_cents, created_at) VALUES (1, ?, ?, 74000, '2027-05-14T00:00:00.000Z')",
      )
      .run(invoice?.id, invoice?.ticket);
    t.sqlite
      .prepare(
        "INSERT INTO write_off (invoice_id, ticket_id, amount_cents, reason, approved_by, created_at) VALUES (?, ?, 215, 'x', 1, '2027-05-14T00:00:00.000Z')",
      )
      .run(invoice?.id, invoice?.ticket);
    expect(readOwed(t.db, customer, TODAY).owed).toBe(183_350 - 74_215);
  });
});

describe('readAccountUse', () => {
  it('warns from the share of the shop and is over from more than the limit', async () => {
    await owe(OWED);
    expect(readAccountUse(t.db, customer, TODAY, [cents(18_000)])).toMatchObject({
      used: 201_350,
      limit: 250_000,
      bp: 8054,
      state: 'warn',
    });
    expect(readAccountUse(t.db, customer, TODAY, [cents(18_000), cents(52_897)])).toMatchObject({
      used: 254_247,
      bp: 10_169,
      state: 'over',
    });
  });
  it('counts authorised work that is not billed, not what nobody said yes to', async () => {
    const work = { customer: { customerId: customer }, wishes: [{ operation: 'hot-tank' }] };
    await checkIn(t, work);
    expect(readAccountUse(t.db, customer, TODAY).used).toBe(0);
    await checkIn(
      t,
      { ...work, ceiling: { amount: 100_000, taxIn: false, saidBy: 'x', words: 'go on', overrideWhy: 'known' } },
      'OB',
    );
    expect(readAccountUse(t.db, customer, TODAY).used).toBeGreaterThan(0);
  });
  it('has no state without a limit', async () => {
    const { customerId } = await t.send('customers/add-customer', { name: 'Ossian' }, { as: 'TV' });
    expect(readAccountUse(t.db, customerId, TODAY, [cents(1_000_000)])).toMatchObject({ state: 'none', bp: null });
  });
});
