import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD, letGo } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const made = () =>
  checkIn(t, {
    castings: [
      {
        ...IRON_HEAD,
        weight: 24_000,
        items: [{ words: 'caps', counted: 5, container: 0 }],
        containers: [{ contents: 'caps', count: 5 }],
      },
    ],
    containers: [{ contents: 'gasket set', count: 2 }],
    wishes: [{ operation: 'hot-tank' }],
  });

describe('racks/get-release', () => {
  it('lists what to count out and what keeps it here', async () => {
    const { ticketId } = await made();
    const page = await t.send('racks/get-release', { ticketId }, { as: 'TV' });
    expect(page).toMatchObject({
      number: 20_001,
      piecesIn: 3,
      identityInDoubt: false,
      phone: expect.any(String),
      money: { clear: false, words: 'not invoiced yet' },
    });
    expect(page.rows.map((row) => [row.label, row.piecesIn, row.stops.length])).toEqual([
      ['40001', 1, 1],
      ['40001-A', 5, 1],
      ['20001-A', 2, 1],
    ]);
    expect(page.persons.length).toBeGreaterThan(0);
  });

  it('shows earlier hand-overs', async () => {
    const one = await made();
    await letGo(t, one);
    const page = await t.send('racks/get-release', { ticketId: one.ticketId }, { as: 'TV' });
    expect(page.rows.every((row) => row.out && row.stops.length === 0)).toBe(true);
    expect(page.releases).toMatchObject([
      { takenBy: 'Wendolin Aubry', pieces: 3, unpaidWhy: 'nothing was done', labels: ['40001', '40001-A', '20001-A'] },
    ]);
  });
});

describe('racks/get-ready-label', () => {
  it('says pieces, weight, who may collect and what is to pay', async () => {
    const { ticketId } = await made();
    const label = await t.send('racks/get-ready-label', { ticketId }, { as: 'TV' });
    expect(label).toMatchObject({
      pieces: 3,
      words: '3 pieces, 24 kg, one person, lift with care',
      storageFrom: null,
    });
    expect(label.labels.map((one) => [one.label, one.piece])).toEqual([
      ['40001', '1 of 3'],
      ['40001-A', '2 of 3'],
      ['20001-A', '3 of 3'],
    ]);
    expect(label.toPay).toBeGreaterThan(0);
    expect(label.mayCollect.length).toBeGreaterThan(0);
  });

  it('counts no storage before it is ready, told or not', async () => {
    const { ticketId, customerId } = await checkIn(t);
    const before = await t.send('racks/get-ready-label', { ticketId }, { as: 'TV' });
    expect(before.storageFrom).toBeNull();
    await t.send(
      'tickets/log-contact',
      { ticketId, customerId, means: 'call', about: 'ready', words: 'told' },
      { as: 'TV' },
    );
    const after = await t.send('racks/get-ready-label', { ticketId }, { as: 'TV' });
    // Not ready yet: nothing counts.
    expect(after.storageFrom).toBeNull();
  });
});
