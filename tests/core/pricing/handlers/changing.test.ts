import { describe, expect, it } from 'vitest';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

async function desk() {
  const shop = await startTestHost();
  const ticket = await openTicket(shop, {
    customer: 'Fisk-Tarrow',
    castings: [{ type: 'LO-4', material: 'iron_grey' }],
  });
  const castingId = ticket.castings[0]?.id as number;
  const { ticketId } = ticket;
  const add = async (code: string, more: object = {}) => {
    const operations = [{ operationKindId: ticket.kind(code), ...more } as never];
    const { lines } = await shop.send('pricing/add-operations', { ticketId, castingId, operations });
    return lines[0]?.lineId as number;
  };
  const sheet = () => shop.send('pricing/get-sheet', { ticketId });
  const start = (line: number) => {
    const [row] = shop.db.sql<{ id: number }>('SELECT id FROM operation WHERE work_line_id = ?', line);
    shop.sqlite
      .prepare(
        'INSERT INTO operation_run (operation_id, ticket_id, staff_id, started_at, created_at) VALUES (?, ?, 1, ?, ?)',
      )
      .run(row?.id, ticketId, '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z');
  };
  return { shop, ticket, ticketId, castingId, add, sheet, start };
}

describe('pricing/change-quantity', () => {
  it('prices anew at the frozen price and keeps the operation in step', async () => {
    const { shop, add } = await desk();
    const lineId = await add('seat-cut');
    const changed = await shop.send('pricing/change-quantity', {
      lineId,
      seenVersion: 1,
      quantity: 4,
      countNote: 'only the exhausts',
    });
    expect(changed).toEqual({ version: 2, amount: 3600, working: '4 seats × 9.00' });
    const [row] = shop.db.sql<{ units: number; planned_s: number }>('SELECT units, planned_s FROM operation');
    expect(row).toEqual({ units: 4, planned_s: 600 + 4 * 180 });
  });

  it('lets a stale screen overwrite nothing (I42)', async () => {
    const { shop, add } = await desk();
    const lineId = await add('seat-cut');
    await shop.send('pricing/change-quantity', { lineId, seenVersion: 1, quantity: 4 });
    expect(await shop.refuse('pricing/change-quantity', { lineId, seenVersion: 1, quantity: 5 })).toMatchObject({
      kind: 'conflict',
    });
  });

  it('refuses a package: its castings are its count', async () => {
    const { shop, ticket, ticketId, castingId } = await desk();
    const { lineId } = await shop.send('pricing/add-package-line', {
      ticketId,
      packageId: ticket.pack('valve-job'),
      castings: [castingId],
    });
    expect(await shop.refuse('pricing/change-quantity', { lineId, seenVersion: 1, quantity: 2 })).toMatchObject({
      code: 'pricing/package-count',
    });
  });
});

describe('a price that was asked', () => {
  it('never changes afterwards; the line is withdrawn and written anew (I30)', async () => {
    const { shop, ticketId, add, sheet } = await desk();
    const lineId = await add('seat-cut');
    await shop.send('pricing/send-estimate', { ticketId });
    for (const change of [
      () => shop.refuse('pricing/change-quantity', { lineId, seenVersion: 1, quantity: 4 }),
      () => shop.refuse('pricing/override-price', { lineId, seenVersion: 1, price: 1, why: 'x' }),
    ]) {
      expect(await change()).toMatchObject({
        code: 'pricing/line-asked',
        message: 'The customer was given this price. Withdraw the line and add a new one.',
      });
    }
    await shop.send('pricing/withdraw-line', { lineId, seenVersion: 1, why: 'only the exhausts' });
    await add('seat-cut', { quantity: 4 });
    const { bill, estimates, lines } = await sheet();
    expect(bill.figures.labour).toBe(3600);
    expect(estimates[0]?.outdated).toBe(true);
    expect(lines.map((l) => l.withdrawn?.why ?? null)).toEqual(['only the exhausts', null]);
  });

  it('stays what it was when the owner sets new prices and factors (I31)', async () => {
    const { shop, ticket, ticketId, add, sheet } = await desk();
    await add('seat-cut');
    const before = await sheet();
    await shop.send('rates/set-price', {
      for: { operationKindId: ticket.kind('seat-cut'), castingKind: 'head' },
      price: 200_000,
      from: '2026-03-09',
    });
    await shop.send('rates/add-factor', {
      code: 'rusty',
      factor: 20_000,
      whenFact: 'material',
      whenValue: 'iron',
      from: '2026-01-01',
      operations: [ticket.kind('seat-cut')],
    });
    expect((await sheet()).lines).toEqual(before.lines);
    expect((await shop.send('pricing/get-sheet', { ticketId })).bill).toEqual(before.bill);
  });
});

describe('pricing/override-price', () => {
  it('types a price with its reason, net when it is agreed', async () => {
    const { shop, add, sheet } = await desk();
    const lineId = await add('seat-cut');
    await shop.send(
      'pricing/override-price',
      { lineId, seenVersion: 1, price: 50_000, why: 'agreed with the owner', net: true },
      { as: 'TV' },
    );
    expect((await sheet()).lines[0]).toMatchObject({
      amount: 4000,
      priceFrom: 'typed',
      priceWhy: 'agreed with the owner',
      net: true,
    });
    expect(
      await shop.refuse('pricing/override-price', { lineId, seenVersion: 2, price: 1, why: 'x' }, { as: 'JP' }),
    ).toMatchObject({ kind: 'not-allowed' });
  });
});

describe('pricing/withdraw-line', () => {
  it('refuses what is begun', async () => {
    const { shop, add, start } = await desk();
    const lineId = await add('seat-cut');
    start(lineId);
    expect(await shop.refuse('pricing/withdraw-line', { lineId, seenVersion: 1, why: 'x' })).toMatchObject({
      code: 'pricing/line-begun',
    });
  });

  it('refuses twice', async () => {
    const { shop, add } = await desk();
    const lineId = await add('seat-cut');
    await shop.send('pricing/withdraw-line', { lineId, seenVersion: 1, why: 'x' });
    expect(await shop.refuse('pricing/withdraw-line', { lineId, seenVersion: 2, why: 'x' })).toMatchObject({
      code: 'pricing/line-withdrawn',
    });
  });
});

describe('pricing/set-hours', () => {
  it('keeps estimate and worked hours apart and says when they are over', async () => {
    const { shop, add, sheet, ticketId } = await desk();
    const lineId = await add('weld-repair', { quantity: 3600 });
    await shop.send('pricing/send-estimate', { ticketId });
    const under = await shop.send('pricing/set-hours', { lineId, seenVersion: 1, actual: 1800 });
    expect(under).toMatchObject({ amount: 5500, overEstimate: false });
    const over = await shop.send('pricing/set-hours', { lineId, seenVersion: 2, actual: 5400 });
    expect(over).toMatchObject({ amount: 16500, overEstimate: true });
    expect((await sheet()).lines[0]).toMatchObject({ amount: 11000, actualSeconds: 5400 });
  });

  it('refuses a line that is sold by the piece', async () => {
    const { shop, add } = await desk();
    const lineId = await add('seat-cut');
    expect(await shop.refuse('pricing/set-hours', { lineId, seenVersion: 1, actual: 5 })).toMatchObject({
      code: 'pricing/not-by-hour',
    });
  });
});

describe('pricing/agree-rush and pricing/lose-rush', () => {
  it('adds the share of labour, and takes it away when the day was missed', async () => {
    const { shop, ticketId, add, sheet } = await desk();
    await add('seat-cut');
    expect(await shop.send('pricing/agree-rush', { ticketId, seenVersion: 1 })).toEqual({ version: 2, bp: 2500 });
    expect((await sheet()).bill.figures).toMatchObject({ labour: 7200, rush: 1800 });
    await shop.send('pricing/lose-rush', { ticketId, seenVersion: 2 });
    expect(await sheet()).toMatchObject({ bill: { figures: { rush: 0 } }, rush: { bp: 2500, lost: true } });
    expect(await shop.refuse('pricing/lose-rush', { ticketId, seenVersion: 3 })).toMatchObject({
      code: 'pricing/no-rush',
    });
  });
});
