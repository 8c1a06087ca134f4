import { describe, expect, it } from 'vitest';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

async function catalogue() {
  const shop = await startTestHost();
  const known = await openTicket(shop, { customer: 'Mudlark Lane', castings: [] });
  return { shop, known };
}

describe('pricing/get-quote', () => {
  it('gives the figures the ticket will have, line by line', async () => {
    const { shop, known } = await catalogue();
    const ticket = await openTicket(shop, {
      customer: 'Mudlark Lane',
      castings: [{ type: 'BV-6', material: 'aluminium' }],
    });
    const castingId = ticket.castings[0]?.id as number;
    const operations = ['penetrant-check', 'surface-head'].map((code) => ({ operationKindId: known.kind(code) }));
    const part = { stockItemId: known.stock('seal-mm'), quantity: 12 };
    const quote = await shop.send('pricing/get-quote', {
      customerId: known.customerId,
      castings: [
        {
          key: 'a',
          type: 'BV-6',
          material: 'aluminium',
          packages: [{ packageId: known.pack('valve-job') }],
          operations,
          parts: [part],
        },
      ],
      ceiling: 100_000,
    });
    await shop.send('pricing/add-package-line', {
      ticketId: ticket.ticketId,
      packageId: known.pack('valve-job'),
      castings: [castingId],
    });
    await shop.send('pricing/add-operations', { ticketId: ticket.ticketId, castingId, operations });
    await shop.send('parts/add-part', { ticketId: ticket.ticketId, castingId, part });
    const sheet = await shop.send('pricing/get-sheet', { ticketId: ticket.ticketId });
    expect(quote.bill).toEqual(sheet.bill);
    expect(quote.lines.map((l) => [l.words, l.working, l.amount])).toEqual(
      sheet.lines.map((l) => [l.words, l.working, l.amount]),
    );
    expect(quote.belowCeiling).toBe(100_000 - sheet.bill.figures.beforeTax);
    expect(quote.refusals).toEqual([]);
  });

  it('keeps the rest when one wish does not fit, with what does', async () => {
    const { shop, known } = await catalogue();
    const operations = ['hot-tank', 'penetrant-check', 'weld-repair'].map((code) => ({
      operationKindId: known.kind(code),
    }));
    const quote = await shop.send('pricing/get-quote', {
      castings: [{ key: 'a', type: 'CF-4', material: 'aluminium', operations }],
    });
    expect(quote.refusals).toMatchObject([
      { castingKey: 'a', operationKindId: known.kind('hot-tank'), priceOnly: false },
    ]);
    expect(quote.refusals[0]?.fits.map((f) => f.operationKindId)).toContain(known.kind('aluminium-wash'));
    expect(quote.lines.map((l) => [l.amount, l.asksQuantity])).toEqual([
      [4600, false],
      [0, true],
    ]);
  });

  it('prices a casting that is only described', async () => {
    const { shop, known } = await catalogue();
    const described = {
      kind: 'head',
      name: 'a side-valve head',
      camLayout: 'ohv',
      counts: { cylinders: 4, intakeValves: 4, exhaustValves: 4 },
    } as const;
    const quote = await shop.send('pricing/get-quote', {
      castings: [
        {
          key: 'a',
          described,
          material: 'iron_grey',
          operations: [{ operationKindId: known.kind('valve-grind') }],
          packages: [{ packageId: known.pack('valve-job') }],
        },
      ],
    });
    expect(quote.lines[0]).toMatchObject({ amount: 5200, working: '8 valves × 6.50' });
    expect(quote.refusals).toMatchObject([{ packageId: known.pack('valve-job'), priceOnly: true }]);
  });

  it('writes nothing', async () => {
    const { shop, known } = await catalogue();
    await shop.send('pricing/get-quote', {
      castings: [
        { key: 'a', type: 'CF-4', material: 'aluminium', operations: [{ operationKindId: known.kind('seat-cut') }] },
      ],
    });
    expect(shop.db.sql('SELECT id FROM work_line')).toEqual([]);
  });
});
