import { beforeEach, describe, expect, it } from 'vitest';
import { type Opened, openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let shop: TestHost;
let ticket: Opened;
let invoiceId: number;
let total: number;
let lines: Awaited<ReturnType<typeof readLines>>;

const readLines = async (id: number) => (await shop.send('invoices/get-invoice', { invoiceId: id })).lines;
const lineOf = (words: string) => lines.find((line) => line.words.includes(words))?.id as number;
const credit = (wanted: object, reason = 'goodwill') =>
  shop.send('invoices/credit-invoice', { invoiceId, reason: reason as never, words: 'given back', ...wanted } as never);

/** Sixteen seals at 1.85 (29.60), a gasket set at 62.00, seats: tax 7 % on 91.60 is 6.41. */
beforeEach(async () => {
  shop = await startTestHost();
  ticket = await openTicket(shop, { customer: 'Fisk-Tarrow', castings: [{ type: 'TW-4', material: 'aluminium' }] });
  const { ticketId } = ticket;
  const castingId = ticket.castings[0]?.id as number;
  await shop.send('pricing/add-operations', {
    ticketId,
    castingId,
    operations: [{ operationKindId: ticket.kind('seat-cut') }],
  });
  await shop.send('parts/add-part', { ticketId, part: { stockItemId: ticket.stock('seal-mm'), quantity: 16 } });
  await shop.send('parts/add-part', { ticketId, part: { stockItemId: ticket.stock('gasket-tw4'), quantity: 1 } });
  const { bill } = await shop.send('invoices/get-preview', { ticketId });
  const issued = await shop.send('invoices/issue-invoice', { ticketId, seenTotal: bill.figures.total });
  ({ invoiceId, total } = issued);
  lines = await readLines(invoiceId);
});

describe('invoices/credit-invoice', () => {
  // Regression baseline: credit note of the practice shop's ticket S07: 62.00 and 4.34 tax.
  it('gives a line back with its tax and lowers what is open', async () => {
    const note = await credit({ lines: [{ invoiceLineId: lineOf('gasket') }] });
    expect(note).toMatchObject({ beforeTax: 6200, tax: 434, total: 6634, balance: total - 6634 });
    expect(note.number).toMatch(/^C\d+$/);
    const invoice = await shop.send('invoices/get-invoice', { invoiceId });
    expect(invoice).toMatchObject({ total, balance: total - 6634, word: 'part paid' });
    expect(invoice.credits).toMatchObject([{ number: note.number, reason: 'goodwill', total: 6634 }]);
    expect(invoice.lines.find((l) => l.words.includes('gasket'))?.credited).toBe(6200);
  });

  it('never gives back more than is left of a line', async () => {
    const line = { invoiceLineId: lineOf('gasket') };
    expect(
      await shop.refuse('invoices/credit-invoice', {
        invoiceId,
        reason: 'return',
        words: 'x',
        lines: [{ ...line, amount: 6201 }],
      }),
    ).toMatchObject({
      code: 'invoices/over-credited',
      fields: { 'lines.0.amount': 'Only 62.00 of this line is left to credit.' },
    });
    await credit({ lines: [{ ...line, amount: 5000 }] });
    expect(
      await shop.refuse('invoices/credit-invoice', {
        invoiceId,
        reason: 'return',
        words: 'x',
        lines: [{ ...line, amount: 1201 }],
      }),
    ).toMatchObject({
      code: 'invoices/over-credited',
    });
    expect(
      await shop.refuse('invoices/credit-invoice', { invoiceId, reason: 'return', words: 'x', lines: [line, line] }),
    ).toMatchObject({ code: 'invoices/line-twice' });
    await credit({ lines: [line] });
  });

  it('prices what is kept, so that kept and credited are the line', async () => {
    const { beforeTax } = await credit({ lines: [{ invoiceLineId: lineOf('seal'), pieces: 2 }] }, 'return');
    // 29.60 less 14 x 1.85
    expect(beforeTax).toBe(370);
  });

  it('gives everything back to the cent, in one step or in many', async () => {
    await credit({ lines: [{ invoiceLineId: lineOf('seal'), amount: 100 }] });
    await credit({ lines: [{ invoiceLineId: lineOf('gasket') }] });
    const rest = await credit({ lines: 'all' });
    expect(rest.balance).toBe(0);
    const invoice = await shop.send('invoices/get-invoice', { invoiceId });
    expect(invoice.credits.reduce((sum, note) => sum + note.total, 0)).toBe(total);
    expect(invoice.credits.reduce((sum, note) => sum + note.tax, 0)).toBe(invoice.tax);
    expect(invoice.word).toBe('credited');
    expect(
      await shop.refuse('invoices/credit-invoice', { invoiceId, reason: 'return', words: 'x', lines: 'all' }),
    ).toMatchObject({
      code: 'invoices/all-credited',
    });
  });

  it('keeps as credit what the invoice has no room for', async () => {
    await shop.send('payments/take-payment', {
      customerId: ticket.customerId,
      kind: 'card',
      amount: total,
      apply: 'oldest',
    });
    const note = await credit({ lines: [{ invoiceLineId: lineOf('gasket') }] });
    expect(note.balance).toBe(0);
    const { rows } = await shop.send('accounts/list-ageing', {});
    expect(rows).toMatchObject([{ owed: 0, notApplied: 6634 }]);
  });

  it('opens a wrongly priced line to be billed again, and no other', async () => {
    await credit({ lines: [{ invoiceLineId: lineOf('seal') }] }, 'goodwill');
    expect((await shop.send('invoices/get-preview', { ticketId: ticket.ticketId })).lines).toEqual([]);
    await credit({ lines: [{ invoiceLineId: lineOf('gasket') }] }, 'price_error');
    const again = await shop.send('invoices/get-preview', { ticketId: ticket.ticketId });
    expect(again.lines.map((l) => l.words)).toEqual(['TW-4 head gasket set']);
    expect(again.bill.figures).toMatchObject({ beforeTax: 6200, tax: 434 });
  });

  it('credits all for a wrong price and bills the same again, cent by cent', async () => {
    await credit({ lines: 'all' }, 'price_error');
    const { bill } = await shop.send('invoices/get-preview', { ticketId: ticket.ticketId });
    expect(bill.figures.total).toBe(total);
  });

  it('reverses at the rate of the invoice, whatever the rate is now', async () => {
    const [tax] = (await shop.send('rates/list-rates', {})).taxes;
    await shop.send('rates/set-tax-rate', {
      code: tax?.code ?? '',
      words: 'x',
      bp: 2000,
      from: '2026-03-10',
      classes: ['part'],
    });
    shop.setClock('2026-03-10T14:00:00.000Z');
    expect(await credit({ lines: [{ invoiceLineId: lineOf('gasket') }] })).toMatchObject({ tax: 434 });
  });

  it('is for books and owner, counts without a gap and never changes', async () => {
    const input = { invoiceId, reason: 'goodwill', words: 'x', lines: [{ invoiceLineId: lineOf('gasket') }] } as const;
    expect(
      await shop.refuse('invoices/credit-invoice', { ...input, lines: [...input.lines] }, { as: 'TV' }),
    ).toMatchObject({ kind: 'not-allowed' });
    const first = await credit({ lines: [{ invoiceLineId: lineOf('gasket'), amount: 100 }] });
    const second = await credit({ lines: [{ invoiceLineId: lineOf('gasket'), amount: 100 }] });
    expect(Number(second.number.slice(1))).toBe(Number(first.number.slice(1)) + 1);
    expect(() => shop.sqlite.prepare('UPDATE credit_note SET total_cents = 1').run()).toThrow(/never changed/);
  });
});
