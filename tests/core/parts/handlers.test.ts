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
  const add = async (part: object) =>
    shop.send('parts/add-part', { ticketId, castingId, part: part as never }, { as: 'MN' });
  const list = async () => (await shop.send('parts/list-parts', { ticketId }, { as: 'SO' })).parts;
  const ceiling = (amount: number) =>
    shop.send('approvals/set-ceiling', {
      ticketId,
      amount,
      taxIn: false,
      personId: ticket.person('Annelore Fisk-Tarrow'),
      means: 'counter',
      words: 'up to that',
    });
  return { shop, ticket, ticketId, castingId, add, list, ceiling };
}

describe('parts/add-part', () => {
  it('takes the list price from stock, by the piece', async () => {
    const { ticket, add, list } = await desk();
    expect(await add({ stockItemId: ticket.stock('seal-in'), quantity: 8 })).toMatchObject({
      amount: 1480,
      working: '8 × 1.85',
    });
    expect((await list())[0]).toMatchObject({ words: 'stem seal, inch', quantity: 8, word: 'needed', source: 'stock' });
  });

  it('takes cost and markup per piece, rounded to 1/10 000 before it is multiplied', async () => {
    const { add } = await desk();
    const part = { words: 'special gasket', quantity: 3, source: 'shop', sell: 'markup', cost: 123_456, markup: 3333 };
    // 12.3456 x 1.3333 = 16.4604 each
    expect(await add(part)).toMatchObject({ amount: 4938, working: '3 × 16.4604' });
  });

  it('charges nothing for what the customer brings', async () => {
    const { shop, ticketId, add, list } = await desk();
    expect(await add({ words: 'gasket set', quantity: 1, source: 'customer' })).toMatchObject({
      lineId: null,
      amount: 0,
    });
    expect((await list())[0]?.word).toBe('customer bringing');
    expect((await shop.send('pricing/get-sheet', { ticketId })).bill.figures.total).toBe(0);
  });

  it('asks for a price and for words', async () => {
    const { shop, ticketId } = await desk();
    const refuse = (part: object) => shop.refuse('parts/add-part', { ticketId, part: part as never });
    expect(await refuse({ words: 'x', quantity: 1, sell: 'list' })).toMatchObject({
      code: 'parts/no-price',
      fields: { 'part.price': expect.any(String) },
    });
    expect(await refuse({ quantity: 1, sell: 'typed', price: 5 })).toMatchObject({ code: 'parts/no-words' });
    expect(await refuse({ words: 'x', quantity: 0 })).toMatchObject({ kind: 'invalid-input' });
  });
});

describe('parts/order-part', () => {
  it('waits for the customer’s yes (I5)', async () => {
    const { shop, ticket, add, list, ceiling } = await desk();
    const { partId } = await add({ stockItemId: ticket.stock('valve-lo4'), quantity: 8, source: 'shop' });
    const order = { part: partId, seenVersion: 1, supplierWords: 'the usual', expectedOn: '2026-03-12' } as const;
    expect(await shop.refuse('parts/order-part', order)).toMatchObject({ code: 'approvals/not-covered' });
    await ceiling(10000);
    expect(await shop.refuse('parts/order-part', order)).toMatchObject({
      message: 'Not approved yet: 156.00 would pass the 100.00 agreed. Ask the customer.',
    });
    await ceiling(20000);
    await shop.send('parts/order-part', order);
    expect((await list())[0]).toMatchObject({ word: 'ordered', expectedOn: '2026-03-12', supplierWords: 'the usual' });
    expect(await shop.refuse('parts/order-part', { part: partId, seenVersion: 2 })).toMatchObject({
      code: 'parts/too-late',
    });
  });
});

describe('parts/receive-part, fit-part, return-part', () => {
  it('counts what came, and fits only what is here', async () => {
    const { shop, ticket, add, list, ceiling } = await desk();
    await ceiling(50000);
    const { partId: part } = await add({ stockItemId: ticket.stock('valve-lo4'), quantity: 8, source: 'shop' });
    await shop.send('parts/order-part', { part, seenVersion: 1 });
    await shop.send('parts/mark-back-ordered', { part, seenVersion: 2, expectedOn: '2026-03-20' });
    expect((await list())[0]?.word).toBe('back-ordered');
    expect(await shop.refuse('parts/fit-part', { part, seenVersion: 3 })).toMatchObject({ code: 'parts/not-here' });
    expect(await shop.refuse('parts/receive-part', { part, seenVersion: 3, count: 9 })).toMatchObject({
      code: 'parts/too-many',
    });
    expect(await shop.send('parts/receive-part', { part, seenVersion: 3, count: 6 })).toMatchObject({ missing: 2 });
    expect((await list())[0]).toMatchObject({ word: 'back-ordered', hereCount: 6 });
    expect(await shop.send('parts/receive-part', { part, seenVersion: 4, count: 8 })).toMatchObject({ missing: 0 });
    await shop.send('parts/check-against-job', { part, seenVersion: 5 }, { as: 'MN' });
    expect((await list())[0]).toMatchObject({ word: 'here', checked: { by: 'Mirela Nandrow' } });
    await shop.send('parts/fit-part', { part, seenVersion: 6 }, { as: 'SO' });
    expect(await shop.refuse('parts/return-part', { part, seenVersion: 7 })).toMatchObject({ code: 'parts/fitted' });
  });

  it('takes a part from stock straight to fitted, once it is covered', async () => {
    const { shop, ticket, add, list, ceiling } = await desk();
    const { partId: part } = await add({ stockItemId: ticket.stock('shim-in'), quantity: 6 });
    expect(await shop.refuse('parts/fit-part', { part, seenVersion: 1 })).toMatchObject({
      code: 'approvals/not-covered',
    });
    await ceiling(10000);
    await shop.send('parts/fit-part', { part, seenVersion: 1 });
    expect((await list())[0]).toMatchObject({ word: 'fitted', hereCount: 6 });
  });

  it('lets a stale screen overwrite nothing', async () => {
    const { shop, ticket, add } = await desk();
    const { partId: part } = await add({ stockItemId: ticket.stock('shim-in'), quantity: 6 });
    await shop.send('parts/check-against-job', { part, seenVersion: 1 });
    expect(await shop.refuse('parts/return-part', { part, seenVersion: 1 })).toMatchObject({ kind: 'conflict' });
  });
});

describe('parts/list-stock', () => {
  it('shows what the counter sells with its list price', async () => {
    const { shop } = await desk();
    const { items } = await shop.send('parts/list-stock', {});
    expect(items.find((i) => i.code === 'seal-mm')).toMatchObject({ listPrice: 18_500, words: 'stem seal, metric' });
  });
});
