/** Papers of money, from an ordinary sale over the counter. */
import { describe, expect, it } from 'vitest';
import type { InvoicePaper, ReceiptPaper } from '#core/sheets/contract/papers.ts';
import { checkInPair } from '#tests/kit/checked-in.ts';
import { textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

const paperOf = async <T>(shop: TestHost, wish: object): Promise<T> =>
  (await shop.send('sheets/get-paper', { wish: wish as never }, { as: 'TV' })).data as unknown as T;

async function sell(shop: TestHost) {
  const customer = shop.db.sql<{ id: number }>("SELECT id FROM customer WHERE name LIKE 'Zdzis%'")[0]?.id ?? 0;
  const { ticketId } = await shop.send(
    'tickets/quick-ticket',
    { customer: { customerId: customer }, words: 'surface a flywheel', price: 450_000, quantity: 1 },
    { as: 'TV' },
  );
  const { bill } = await shop.send('invoices/get-preview', { ticketId }, { as: 'TV' });
  const invoice = await shop.send('invoices/issue-invoice', { ticketId, seenTotal: bill.figures.total }, { as: 'TV' });
  return { customer, ticketId, invoice, total: bill.figures.total };
}

describe('sheets/get-paper', () => {
  it('gathers an invoice as it was issued, and what was paid on it since', async () => {
    const shop = await startTestHost();
    const { customer, invoice } = await sell(shop);
    await shop.send(
      'payments/take-payment',
      { customerId: customer, kind: 'card', amount: 2_000, apply: 'oldest', words: 'slip 0071' },
      { as: 'TV' },
    );

    const paper = await paperOf<InvoicePaper>(shop, { paper: 'invoice', invoiceId: invoice.invoiceId });

    expect(paper.number).toBe(String(invoice.number));
    expect(paper.to.name).toBe('Zdzisława Żółwińska-Brzęk');
    expect(paper.groups.flatMap(({ lines }) => lines.map(({ words }) => words))).toContain('Surface a flywheel');
    expect(paper.totals.find(({ words }) => words.startsWith('Paid, card'))?.amount).toBe('−20.00');
    const cents = (amount: string) => Math.round(Number(amount.replace(/,/g, '')) * 100);
    expect(cents(paper.toPay)).toBe(invoice.total - 2_000);
  });

  it('keeps the name of the invoice when the customer is called otherwise later', async () => {
    const shop = await startTestHost();
    const { customer, invoice } = await sell(shop);
    shop.sqlite.prepare('UPDATE customer SET name = ?, legal_name = NULL WHERE id = ?').run('Somebody Else', customer);

    const paper = await paperOf<InvoicePaper>(shop, { paper: 'invoice', invoiceId: invoice.invoiceId });

    expect(paper.to.name).toBe('Zdzisława Żółwińska-Brzęk');
  });

  it('gathers a receipt for a deposit that is held', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const taken = await shop.send(
      'payments/take-payment',
      { customerId: made.customerId, kind: 'cash', amount: 10_000, forTicketId: made.ticketId, apply: 'held' },
      { as: 'TV' },
    );

    const paper = await paperOf<ReceiptPaper>(shop, { paper: 'receipt', paymentId: taken.paymentId });
    const claim = await paperOf<{ deposit: string }>(shop, { paper: 'claim-ticket', ticketId: made.ticketId });

    expect(paper).toMatchObject({ number: taken.receipt, amount: '100.00', how: 'cash' });
    expect(paper.lines).toEqual([{ words: `Deposit held for ticket ${made.number}`, amount: '100.00' }]);
    expect(claim.deposit).toBe(`100.00 held, cash, receipt ${taken.receipt}`);
  });
});

describe.skipIf(lacks('pdftotext'))('documents/print-paper', () => {
  it('prints the same cents on the invoice as were issued', async () => {
    const shop = await startTestHost();
    const { invoice, ticketId } = await sell(shop);

    const printed = await shop.send(
      'documents/print-paper',
      { wish: { paper: 'invoice', invoiceId: invoice.invoiceId } },
      { as: 'TV' },
    );
    const text = textOf(await shop.host.services.files.read(printed.sha256));

    const total = `${Math.floor(invoice.total / 100)}.${String(invoice.total % 100).padStart(2, '0')}`;
    expect(text).toContain(`Total ${total}`);
    expect(text).toContain(`To pay USD ${total}`);
    expect(text).toContain('issued once. Corrections by credit note');
    const { documents } = await shop.send('documents/list-documents', { ticketId }, { as: 'TV' });
    expect(documents.map(({ fileName }) => fileName)).toEqual([`invoice-${invoice.number}.pdf`]);
  });
});
