import { beforeEach, describe, expect, it } from 'vitest';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
const find = (text: string, as = 'TV') => t.send('search/find-anything', { text }, { as });
const customerId = async (text: string) => {
  const { customers } = await t.send('customers/find-customer', { text }, { as: 'TV' });
  return customers[0]?.customerId ?? 0;
};

beforeEach(async () => {
  t = await startTestHost();
  await t.send(
    'tickets/check-in-ticket',
    {
      customer: { customerId: await customerId('mudlark') },
      ticket: { orderNumber: 'ML-7731', engine: 'BV-6' },
      castings: [
        { type: 'BV-6', material: 'aluminium', position: 'left', pair: 1, castingNumber: '4B?71-L' },
        {
          type: 'BV-6',
          material: 'aluminium',
          position: 'right',
          pair: 1,
          castingNumber: '4B872-R',
          shopStamp: 'K12',
          containers: [{ contents: 'caps' }],
        },
      ],
      promise: { day: '2026-03-12' },
    },
    { as: 'TV' },
  );
});

describe('search/find-anything', () => {
  it.each(['555-0115', '(555) 01 15', '5550115', '0115', '+555 0115'])(
    'finds a customer by telephone spelled %s',
    async (text) => {
      const found = await find(text);
      expect(found.customers[0]).toMatchObject({
        name: 'Mudlark Lane Garage Ltd',
        foundBy: 'phone',
        phone: '555-0115',
      });
      expect(found.tickets[0]).toMatchObject({ number: 20001, foundBy: 'customer' });
      expect(found.call).toMatchObject({ number: '555-0115' });
    },
  );

  it('finds a foreign number typed with its national nought', async () => {
    const known =
      t.db.sql<{ value: string }>("SELECT value FROM contact_point WHERE value LIKE '+44%'")[0]?.value ?? '';
    const found = await find(`0${known.replace(/\D/g, '').slice(2)}`);
    expect(found.customers[0]).toMatchObject({ foundBy: 'phone', phone: known });
  });

  it.each([
    ['zolwinska', 'Zdzisława Żółwińska-Brzęk'],
    ['Żółw', 'Zdzisława Żółwińska-Brzęk'],
    ['brondlykke', 'Brøndlykke Motorværksted'],
    ["d'aubre", "Séverine d'Aubrequin"],
    ['речников', 'Стоян Речников'],
    ['λιμεναρη', 'Ευριδίκη Λιμενάρη'],
    ['kerrow', 'Mudlark Lane Garage Ltd'],
    ['garage mudl', 'Mudlark Lane Garage Ltd'],
  ])('finds %s with or without accents', async (text, name) => {
    expect((await find(text)).customers.map((one) => one.name)).toContain(name);
  });

  it('finds a new name in the same command that adds it', async () => {
    await t.send('customers/add-customer', { name: 'Łucjan Świerkotter' }, { as: 'TV' });
    expect((await find('swierk')).customers[0]?.name).toBe('Łucjan Świerkotter');
  });

  it.each([
    ['4B871', 'a character the person reads and we could not', '4B?71-L'],
    ['4B?72', 'a character the person cannot read', '4B872-R'],
    ['872R', 'a part of the number without its signs', '4B872-R'],
    ['?B872', 'a readable stretch of four', '4B872-R'],
  ])('finds the casting number %s: %s', async (text, _why, number) => {
    const { castings } = await find(text);
    expect(castings[0]).toMatchObject({ foundBy: 'casting number', matched: number });
    const hit = castings[0]?.hits[0];
    expect(hit && number.slice(hit.from, hit.until).replace(/\W/g, '').length).toBeGreaterThanOrEqual(4);
  });

  it.each([
    ['40001', 'tag', 40001],
    ['k12', 'stamp', 40002],
    ['40002-A', 'container', 40002],
    ['BT C40001', 'tag', 40001],
  ])('finds %s as %s', async (text, foundBy, tag) => {
    expect((await find(text)).castings[0]).toMatchObject({ foundBy, tag });
  });

  it.each([
    ['20001', 'ticket'],
    ['ml-7731', 'order number'],
    ['twin-cam vee', 'engine'],
  ])('finds the ticket by %s', async (text, foundBy) => {
    expect((await find(text)).tickets[0]).toMatchObject({ number: 20001, foundBy });
  });

  it('says what to say, from the state of the ticket', async () => {
    const { tickets, words } = await find('mudlark');
    expect(words).toBe('1 customer, 1 open ticket');
    expect(tickets[0]).toMatchObject({
      line: '2 heads, BV-6 aluminium twin-cam vee six, order ML-7731',
      word: 'checked in',
      say: 'It is here; no work is agreed yet. Promised for Thu 12 Mar 16:30.',
    });
  });

  it('answers a machinist by tag, number, stamp and short name only', async () => {
    const byTag = await find('40001', 'SO');
    expect(byTag.castings[0]).toMatchObject({ tag: 40001 });
    const byPhone = await find('0115', 'SO');
    expect([byPhone.customers, byPhone.tickets, byPhone.castings, byPhone.call]).toEqual([[], [], [], null]);
    const byName = await find('mudlark', 'SO');
    expect([byName.customers, byName.tickets]).toEqual([[], []]);
    expect(byName.castings.map((one) => one.tag)).toEqual([40002, 40001]);
    expect((await find('kerrow', 'SO')).castings).toEqual([]);
    expect(JSON.stringify(byName)).not.toContain('555');
  });

  it.each([
    '"',
    '* OR *',
    "'; DROP TABLE ticket; --",
    'NEAR(',
    '?',
    '???',
    '\u0000',
    '\u202e',
    '🔧',
    '-',
    'a'.repeat(10_000),
  ])('takes %j as plain text', async (text) => {
    const found = await find(text);
    expect(found.tickets.length + found.customers.length + found.castings.length).toBeLessThan(100);
    expect(found.text.length).toBeLessThanOrEqual(200);
  });

  it('says what to do when nothing is found', async () => {
    expect((await find('9999')).words).toBe('Nothing under 9999. Check the digits, or check in castings.');
  });
});
