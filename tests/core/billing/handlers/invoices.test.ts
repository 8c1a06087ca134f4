import { describe, expect, it } from 'vitest';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('invoices/get-invoice', () => {
  it('shows the approvals, castings and what could still be applied', async () => {
    const shop = await startTestHost();
    const ticket = await openTicket(shop, {
      customer: 'Fisk-Tarrow',
      castings: [{ type: 'LO-4', material: 'iron_grey' }],
    });
    const { ticketId } = ticket;
    const castingId = ticket.castings[0]?.id as number;
    await shop.send('pricing/add-operations', {
      ticketId,
      castingId,
      operations: [{ operationKindId: ticket.kind('seat-cut') }],
    });
    const { estimateId } = await shop.send('pricing/send-estimate', { ticketId });
    const said = {
      personId: ticket.person('Annelore Fisk-Tarrow'),
      means: 'phone',
      numberCalled: '555-0101',
      words: 'fine',
    } as const;
    await shop.send('approvals/record-answer', { question: { estimateId }, answer: 'yes', ...said });
    const { bill } = await shop.send('invoices/get-preview', { ticketId });
    const { invoiceId } = await shop.send('invoices/issue-invoice', { ticketId, seenTotal: bill.figures.total });
    await shop.send('payments/take-payment', { customerId: ticket.customerId, kind: 'cash', amount: 1000 });
    const invoice = await shop.send('invoices/get-invoice', { invoiceId });
    expect(invoice.approvals.map((a) => a.words)).toEqual([
      'Estimate 1, 74.88: Annelore Fisk-Tarrow by phone, 555-0101',
    ]);
    expect(invoice.castings).toMatchObject([{ tag: ticket.castings[0]?.tag }]);
    expect(invoice.held).toMatchObject([{ left: 1000, applies: 1000 }]);
    expect(invoice).toMatchObject({ word: 'invoiced', daysLate: 0, termsWords: expect.any(String) });
    expect(invoice.bill.derived.map((d) => [d.role, d.working])).toEqual([['supplies', '4 % of labour 72.00']]);
  });

  it('is overdue the day after it was due', async () => {
    const shop = await startTestHost();
    const ticket = await openTicket(shop, { customer: 'Fisk-Tarrow', castings: [] });
    const { ticketId } = ticket;
    await shop.send('pricing/add-charge', { ticketId, charge: { kind: 'fee', words: 'a charge', price: 100_000 } });
    const { invoiceId } = await shop.send('invoices/issue-invoice', { ticketId, seenTotal: 1000 });
    shop.setClock('2026-03-10T14:00:00.000Z');
    expect(await shop.send('invoices/get-invoice', { invoiceId })).toMatchObject({ word: 'overdue', daysLate: 1 });
  });
});

describe('accounts/get-account-use', () => {
  it('adds open invoices and authorised work that is not billed', async () => {
    const shop = await startTestHost();
    const ticket = await openTicket(shop, { customer: 'Crankle Street', castings: [] });
    const { ticketId, customerId } = ticket;
    const charge = (price: number) =>
      shop.send('pricing/add-charge', { ticketId, charge: { kind: 'fee', words: 'work', price } });
    await charge(18_000_000);
    await shop.send('invoices/issue-invoice', { ticketId, seenTotal: 180_000 });
    expect(await shop.send('accounts/get-account-use', { customerId })).toMatchObject({
      used: 180_000,
      bp: 7200,
      state: 'ok',
    });
    await charge(2_000_000);
    const said = { personId: ticket.person('Dorthe Mallinckx'), means: 'counter', words: 'yes' } as const;
    await shop.send('approvals/set-ceiling', { ticketId, amount: 400_000, ...said });
    expect(await shop.send('accounts/get-account-use', { customerId })).toMatchObject({
      open: 180_000,
      unbilledAuthorised: 20_000,
      state: 'warn',
      words: '2000.00 of 2500.00 used, 80 %',
    });
  });
});
