import { describe, expect, it } from 'vitest';
import { finishWork, type Opened, openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

const iron = { type: 'LO-4', material: 'iron_grey' };
type Desk = Readonly<{
  shop: TestHost;
  ticket: Opened;
  ticketId: number;
  add: (casting: number, code: string, more?: object) => Promise<number>;
}>;

async function desk(
  customer = 'Fisk-Tarrow',
  castings: Parameters<typeof openTicket>[1]['castings'] = [iron],
): Promise<Desk> {
  const shop = await startTestHost();
  const ticket = await openTicket(shop, { customer, castings });
  const add = async (index: number, code: string, more: object = {}) => {
    const castingId = ticket.castings[index]?.id as number;
    const operations = [{ operationKindId: ticket.kind(code), ...more } as never];
    const { lines } = await shop.send('pricing/add-operations', { ticketId: ticket.ticketId, castingId, operations });
    return lines[0]?.lineId as number;
  };
  return { shop, ticket, ticketId: ticket.ticketId, add };
}

const issue = async (shop: TestHost, which: { ticketId: number; castings?: number[]; lines?: number[] }, as = 'TV') => {
  const { bill } = await shop.send('invoices/get-preview', which);
  return shop.send('invoices/issue-invoice', { ...which, seenTotal: bill.figures.total }, { as });
};

describe('invoices/get-preview', () => {
  it('shows the invoice without taking a number, and what is not done yet', async () => {
    const { shop, ticketId, add } = await desk();
    await add(0, 'seat-cut');
    const preview = await shop.send('invoices/get-preview', { ticketId });
    expect(preview).toMatchObject({ toPay: 7488, dueOn: '2026-03-09', last: true, problems: [], earlierInvoices: [] });
    expect(preview.notes).toEqual([expect.stringMatching(/^Not done yet: /)]);
    expect(shop.db.sql('SELECT id FROM invoice')).toEqual([]);
  });

  it('says what is in the way', async () => {
    const { shop, ticketId } = await desk('Mudlark Lane');
    const { problems } = await shop.send('invoices/get-preview', { ticketId });
    expect(problems.map((p) => p.code)).toEqual(['invoices/nothing-to-bill', 'invoices/no-order-number']);
  });
});

describe('invoices/issue-invoice', () => {
  it('counts without a gap and never changes what it issued (I1, I2)', async () => {
    const { shop, ticketId, add } = await desk();
    await add(0, 'seat-cut');
    const first = await issue(shop, { ticketId });
    await add(0, 'valve-grind');
    const second = await issue(shop, { ticketId });
    expect(second.number).toBe(first.number + 1);
    expect(() => shop.sqlite.prepare('UPDATE invoice SET total_cents = 1').run()).toThrow(/never changed/);
    expect(() => shop.sqlite.prepare('UPDATE invoice_line SET amount_cents = 1').run()).toThrow(/never changed/);
    expect(() => shop.sqlite.prepare('DELETE FROM invoice').run()).toThrow(/never deleted/);
    const skip = shop.sqlite.prepare(
      `INSERT INTO invoice (number, ticket_id, customer_id, issued_on, due_on, frozen_json, before_tax_cents, tax_cents, total_cents, created_at)
       SELECT number + 5, ticket_id, customer_id, issued_on, due_on, '{}', 0, 0, 0, created_at FROM invoice LIMIT 1`,
    );
    expect(() => skip.run()).toThrow(/without a gap/);
  });

  it('takes no number when it is refused', async () => {
    const { shop, ticketId, add } = await desk();
    await add(0, 'seat-cut');
    const moved = await shop.refuse('invoices/issue-invoice', { ticketId, seenTotal: 1 });
    expect(moved).toMatchObject({ kind: 'conflict', code: 'invoices/total-moved' });
    const { number } = await issue(shop, { ticketId });
    await add(0, 'valve-grind');
    expect((await issue(shop, { ticketId })).number).toBe(number + 1);
  });

  it('is the sum of its lines and taxes, as printed (I3)', async () => {
    const { shop, ticketId, add, ticket } = await desk('Ferry Line');
    shop.sqlite.prepare("UPDATE ticket SET order_number = 'FL-1' WHERE id = ?").run(ticketId);
    await add(0, 'seat-cut');
    await shop.send('parts/add-part', { ticketId, part: { stockItemId: ticket.stock('seal-in'), quantity: 16 } });
    const { invoiceId, total } = await issue(shop, { ticketId });
    const [sums] = shop.db.sql<{ lines: number; taxes: number }>(
      'SELECT (SELECT SUM(amount_cents) FROM invoice_line) AS lines, (SELECT SUM(amount_cents) FROM invoice_tax) AS taxes',
    );
    expect((sums?.lines ?? 0) + (sums?.taxes ?? 0)).toBe(total);
    const invoice = await shop.send('invoices/get-invoice', { invoiceId });
    expect(invoice.bill.figures.total).toBe(total);
    // Labour 7 % off, parts 5 % off, tax on what is left of the parts
    expect(invoice.bill.figures).toMatchObject({
      labour: 7200,
      labourDiscount: -504,
      supplies: 288,
      parts: 2960,
      partsDiscount: -148,
      tax: 197,
    });
    expect(invoice.lines.map((l) => l.working)).toContain('16 × 1.85');
  });

  it('bills a line once (I4)', async () => {
    const { shop, ticketId, add } = await desk();
    const line = await add(0, 'seat-cut');
    const { number } = await issue(shop, { ticketId });
    expect(await shop.refuse('invoices/get-preview', { ticketId, lines: [line] })).toMatchObject({
      code: 'invoices/line-billed',
      message: `This line is already on invoice ${number}.`,
    });
    expect(await shop.refuse('invoices/issue-invoice', { ticketId, seenTotal: 0 })).toMatchObject({
      code: 'invoices/nothing-to-bill',
    });
  });

  it('waits for the order number of an account that needs one (I32)', async () => {
    const { shop, ticketId, add } = await desk('Mudlark Lane');
    await add(0, 'seat-cut');
    const { bill } = await shop.send('invoices/get-preview', { ticketId });
    const refused = await shop.refuse('invoices/issue-invoice', { ticketId, seenTotal: bill.figures.total });
    expect(refused).toMatchObject({
      code: 'invoices/no-order-number',
      message: 'This account needs an order number before invoicing.',
    });
  });

  it('waits for a yes to hours over the estimate', async () => {
    const { shop, ticketId, ticket, add } = await desk();
    const lineId = await add(0, 'weld-repair', { quantity: 3600 });
    // A yes to the estimate is no yes to more hours.
    const { estimateId } = await shop.send('pricing/send-estimate', { ticketId });
    const said = { personId: ticket.person('Annelore Fisk-Tarrow'), means: 'counter', words: 'yes' } as const;
    await shop.send('approvals/record-answer', { question: { estimateId }, answer: 'yes', ...said });
    await shop.send('pricing/set-hours', { lineId, seenVersion: 1, actual: 5400 });
    const { problems, bill } = await shop.send('invoices/get-preview', { ticketId });
    expect(problems).toMatchObject([
      { code: 'invoices/hours-not-agreed', words: expect.stringContaining('165.00 worked, 110.00 agreed') },
    ]);
    expect(bill.figures.labour).toBe(16_500);
    await shop.send('approvals/record-answer', { question: { overrunLineId: lineId }, answer: 'yes', ...said });
    const { invoiceId } = await issue(shop, { ticketId });
    const { lines } = await shop.send('invoices/get-invoice', { invoiceId });
    expect(lines[0]).toMatchObject({ amount: 16_500, working: '1.5 h × 110.00' });
  });

  it('bills worked hours below the estimate as worked', async () => {
    const { shop, ticketId, add } = await desk();
    const lineId = await add(0, 'weld-repair', { quantity: 3600 });
    await shop.send('pricing/set-hours', { lineId, seenVersion: 1, actual: 1800 });
    expect((await shop.send('invoices/get-preview', { ticketId })).bill.figures.labour).toBe(5500);
  });

  it('bills castings apart; before tax the parts are the whole', async () => {
    const castings = [iron, iron];
    const whole = await desk('Sluice Gate', castings);
    const apart = await desk('Sluice Gate', castings);
    for (const { shop, ticket, ticketId, add } of [whole, apart]) {
      for (const index of [0, 1]) {
        for (const code of ['hot-tank', 'seat-cut', 'valve-grind', 'surface-head', 'mag-particle-check'])
          await add(index, code);
        const castingId = ticket.castings[index]?.id as number;
        for (let n = 0; n < 2; n += 1)
          await shop.send('pricing/add-charge', {
            ticketId,
            castingId,
            charge: { kind: 'hourly', words: 'extra', quantity: 7200, price: 950_000 },
          });
        await shop.send('parts/add-part', {
          ticketId,
          castingId,
          part: { stockItemId: ticket.stock('seal-in'), quantity: 7 },
        });
        finishWork(shop, castingId);
      }
    }
    const one = await whole.shop.send('invoices/get-preview', { ticketId: whole.ticketId });
    const first = await issue(apart.shop, {
      ticketId: apart.ticketId,
      castings: [apart.ticket.castings[0]?.id as number],
    });
    const preview = await apart.shop.send('invoices/get-preview', { ticketId: apart.ticketId });
    expect(preview).toMatchObject({ last: true, earlierInvoices: [first.number] });
    const second = await issue(apart.shop, { ticketId: apart.ticketId });
    const beforeTax = await Promise.all(
      [first, second].map(
        async ({ invoiceId }) => (await apart.shop.send('invoices/get-invoice', { invoiceId })).beforeTax,
      ),
    );
    expect((beforeTax[0] ?? 0) + (beforeTax[1] ?? 0)).toBe(one.bill.figures.beforeTax);
    // The cap of 40.00 is per ticket: 40.00 less what the first took.
    const supplies = preview.bill.derived.find((d) => d.role === 'supplies');
    expect(supplies?.working).toMatch(/at most 40.00 a ticket, less .* on earlier invoices/);
  });

  it('puts the deposit on it, oldest first, and keeps the rest held', async () => {
    const { shop, ticket, ticketId, add } = await desk();
    const deposit = (amount: number, receivedOn: string) =>
      shop.send('payments/take-payment', {
        customerId: ticket.customerId,
        kind: 'card',
        amount,
        forTicketId: ticketId,
        receivedOn,
      });
    const late = await deposit(6000, '2026-03-08');
    const early = await deposit(4000, '2026-03-01');
    await add(0, 'seat-cut');
    const preview = await shop.send('invoices/get-preview', { ticketId });
    expect(preview.deposits.map((d) => [d.receipt, d.applies])).toEqual([
      [early.receipt, 4000],
      [late.receipt, 3488],
    ]);
    const issued = await issue(shop, { ticketId });
    expect(issued).toMatchObject({ applied: 7488, balance: 0 });
    const { payments } = await shop.send('payments/list-payments', { ticketId });
    expect(payments.map((p) => p.left)).toEqual([0, 2512]);
    expect((await shop.send('invoices/get-invoice', { invoiceId: issued.invoiceId })).payments).toHaveLength(2);
  });

  it('prints the customer as they were called that day, whatever they are called later', async () => {
    const { shop, ticketId, add } = await desk('Drainage Comm.');
    shop.sqlite.prepare("UPDATE ticket SET order_number = 'X' WHERE id = ?").run(ticketId);
    await add(0, 'seat-cut');
    const { invoiceId, dueOn } = await issue(shop, { ticketId });
    expect(dueOn).toBe('2026-04-30');
    shop.sqlite.prepare("UPDATE customer SET legal_name = 'Renamed' WHERE short_name = 'Drainage Comm.'").run();
    const { printName } = await shop.send('invoices/get-invoice', { invoiceId });
    expect(printName).toContain('The Amalgamated Lower Ouvel');
  });

  it('prints the certificate of an exempt customer and asks no tax', async () => {
    const { shop, ticket, ticketId } = await desk('School Buses');
    shop.sqlite.prepare("UPDATE ticket SET order_number = 'X' WHERE id = ?").run(ticketId);
    await shop.send('parts/add-part', { ticketId, part: { stockItemId: ticket.stock('seal-in'), quantity: 8 } });
    const { bill } = await shop.send('invoices/get-preview', { ticketId });
    expect(bill.taxes).toMatchObject([{ amount: 0, exempt: 'GX-00417' }]);
    expect(bill.figures.tax).toBe(0);
  });

  it('charges a customer whose certificate has lapsed', async () => {
    const { shop, ticket, ticketId } = await desk("Growers' Co-op");
    shop.setClock('2027-01-04T14:00:00.000Z');
    await shop.send('parts/add-part', { ticketId, part: { stockItemId: ticket.stock('seal-in'), quantity: 8 } });
    expect((await shop.send('invoices/get-preview', { ticketId })).bill.figures.tax).toBe(104);
  });
});
