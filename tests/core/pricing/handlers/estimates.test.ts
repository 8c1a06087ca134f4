import { describe, expect, it } from 'vitest';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

async function desk() {
  const shop = await startTestHost();
  const ticket = await openTicket(shop, {
    customer: 'Fisk-Tarrow',
    castings: [{ type: 'LO-4', material: 'iron_grey' }],
  });
  const { ticketId } = ticket;
  const castingId = ticket.castings[0]?.id as number;
  const packageLine = { ticketId, packageId: ticket.pack('valve-job'), castings: [castingId] };
  const check = { ticketId, castingId, operations: [{ operationKindId: ticket.kind('mag-particle-check') }] };
  return { shop, ticket, ticketId, castingId, packageLine, check };
}

describe('pricing/send-estimate', () => {
  it('numbers revisions, keeps each as it was sent, and dates it by the shop’s days', async () => {
    const { shop, ticket, ticketId, packageLine, check } = await desk();
    await shop.send('pricing/add-package-line', packageLine);
    const first = await shop.send('pricing/send-estimate', { ticketId }, { as: 'TV' });
    expect(first).toMatchObject({ revision: 1, number: `${ticket.number}-E1`, total: 31330 });
    await shop.send('pricing/add-operations', check);
    const second = await shop.send('pricing/send-estimate', { ticketId, validUntil: '2026-03-20' });
    expect(second).toMatchObject({ revision: 2, number: `${ticket.number}-E2` });
    const kept = await shop.send('pricing/get-estimate', { estimateId: first.estimateId });
    expect(kept).toMatchObject({
      beforeTax: 31330,
      validUntil: '2026-04-08',
      outdated: true,
      answer: null,
      sentBy: 'Teodor Vaskelund',
    });
    expect(kept.lines.map((l) => [l.role, l.amount, l.priceWords])).toEqual([
      ['labour', 29500, '295.00'],
      ['supplies', 1180, ''],
      ['fee', 650, ''],
    ]);
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet.estimates.map((e) => [e.revision, e.outdated])).toEqual([
      [2, false],
      [1, true],
    ]);
  });

  it('refuses an empty one and a day that is over', async () => {
    const { shop, ticketId, packageLine } = await desk();
    expect(await shop.refuse('pricing/send-estimate', { ticketId })).toMatchObject({
      code: 'pricing/nothing-to-estimate',
    });
    await shop.send('pricing/add-package-line', packageLine);
    expect(await shop.refuse('pricing/send-estimate', { ticketId, validUntil: '2026-03-08' })).toMatchObject({
      code: 'pricing/valid-in-the-past',
    });
  });

  it('never changes a sent one: the file itself refuses', async () => {
    const { shop, ticketId, packageLine } = await desk();
    await shop.send('pricing/add-package-line', packageLine);
    await shop.send('pricing/send-estimate', { ticketId });
    expect(() => shop.sqlite.prepare('UPDATE estimate SET total_cents = 1').run()).toThrow(/never changed/);
    expect(() => shop.sqlite.prepare('DELETE FROM estimate_line').run()).toThrow(/never deleted/);
  });

  it('expires after its day', async () => {
    const { shop, ticketId, packageLine } = await desk();
    await shop.send('pricing/add-package-line', packageLine);
    await shop.send('pricing/send-estimate', { ticketId, validUntil: '2026-03-10' });
    shop.setClock('2026-03-11T14:00:00.000Z');
    expect((await shop.send('pricing/get-sheet', { ticketId })).estimates[0]).toMatchObject({ expired: true });
  });
});
