import { beforeEach, describe, expect, it } from 'vitest';
import { ALUMINIUM_HEAD, checkIn, customerNamed, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const count = (table: string) => t.db.sql<{ n: number }>(`SELECT COUNT(*) AS n FROM ${table}`)[0]?.n;
const refuse = async (changes: Parameters<typeof checkIn>[1]) => {
  const customerId = await customerNamed(t, 'ferry');
  return t.refuse('tickets/check-in-ticket', { customer: { customerId }, castings: [IRON_HEAD], ...changes } as never, {
    as: 'TV',
  });
};

describe('tickets/check-in-ticket', () => {
  it('makes customer, ticket, castings, pieces, marks, work and promise in one command', async () => {
    const made = await checkIn(t, {
      customer: {
        add: {
          name: 'Ossian Wherrytun',
          persons: [{ name: 'Ossian Wherrytun', mayApprove: true, contacts: [{ kind: 'phone', value: '(555) 0177' }] }],
        },
      },
      ticket: { engineWords: 'classic four', gasket: 'mls', valveLift: '12,5 mm', oldParts: 'return' },
      castings: [
        {
          ...IRON_HEAD,
          materialHow: 'magnet',
          castingNumber: 'L?44',
          items: [
            { words: 'valves', expected: 8, counted: 8, container: 0, mixRule: 'keep_order' },
            { words: 'dowels', expected: 2, counted: 1 },
          ],
          containers: [{ kind: 'tray', contents: 'valves in order', count: 8 }],
          marks: [{ condition: 'crack-chamber', x: 4100, y: 5200, severity: 2 }],
        },
      ],
      containers: [{ contents: 'gasket set', count: 1 }],
      wishes: [{ package: 'valve-job' }, { operation: 'mag-particle-check' }],
      ceiling: { amount: 60_000, taxIn: false, saidBy: 'Ossian Wherrytun', words: 'up to six hundred' },
      promise: { day: '2026-03-12' },
      signed: { how: 'on_paper', by: 'Ossian Wherrytun' },
    });
    expect(made).toMatchObject({
      number: 20001,
      castings: [{ tagNo: 40001, title: 'Head', identityHold: null, containers: [{ label: '40001-A' }] }],
      containers: [{ label: '20001-A' }],
      promise: { words: 'Thu 12 Mar 16:30' },
      depositAsked: 10_000,
    });
    expect(made.papers.map((paper) => paper.words)).toEqual([
      'Claim ticket',
      'Traveller 40001',
      'Tag 40001',
      'Tag 40001-A',
      'Tag 20001-A',
    ]);
    const page = await t.send('tickets/get-ticket', { number: 20001 }, { as: 'TV' });
    expect(page).toMatchObject({
      word: 'approved',
      conditionsLocked: true,
      money: { now: { beforeTax: 34_000 + 1360 + 650 } },
    });
    expect(page.fields.valveLiftValue).toBe(12_500_000);
    expect(page.castings[0]).toMatchObject({
      countedWords: '2 of 2 lines counted',
      metal: { word: 'IRON', confirmedAt: '2026-03-09T14:00:00.000Z' },
    });
    expect(page.castings[0]?.items.map((item) => [item.countWords, item.containerLabel])).toEqual([
      ['8 of 8', '40001-A'],
      ['1 of 2, 1 short', null],
    ]);
  });

  it('writes all or nothing', async () => {
    const error = await refuse({
      customer: { add: { name: 'Nobody Keptall' } },
      castings: [IRON_HEAD, { ...IRON_HEAD, type: 'NO-SUCH' }],
    });
    expect(error).toMatchObject({ code: 'castings/no-such-type', fields: { 'castings.1.type': expect.any(String) } });
    expect([count('ticket'), count('casting'), count('arrival_item')]).toEqual([0, 0, 0]);
    expect((await t.send('customers/find-customer', { text: 'keptall' }, { as: 'TV' })).customers).toEqual([]);
  });

  it('does not take a metal for granted (I11)', async () => {
    const { material: _, ...bare } = IRON_HEAD;
    const error = await refuse({ castings: [bare] as never });
    expect(error.fields).toEqual({ 'castings.0.material': 'Say what metal it is. If unsure, use a magnet.' });
  });

  it('refuses a tag that was used, naming the ticket (I12)', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, tagNo: 40_123 }] });
    const error = await refuse({ castings: [{ ...IRON_HEAD, tagNo: 40_123 }] });
    expect(error.fields).toEqual({
      'castings.0.tagNo': 'Tag 40123 is already used on ticket 20001. Take another tag.',
    });
  });

  it('takes the next number past tags typed by hand, and never moves it for one', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, tagNo: 40_001 }] });
    const next = await checkIn(t);
    expect(next.castings[0]?.tagNo).toBe(40_002);
  });

  it('refuses a promise on a closed day and offers the next open one (I34)', async () => {
    const error = await refuse({ promise: { day: '2026-03-15' } });
    expect(error).toMatchObject({
      fields: { 'promise.day': 'The shop is closed that day. Pick another; the next open day is 2026-03-16.' },
      offers: [{ words: '2026-03-16' }],
    });
    expect((await refuse({ promise: { day: '2026-03-06' } })).fields).toEqual({
      'promise.day': 'That day is past. Pick today or a later day.',
    });
  });

  it('promises for closing time on a day that closes early', async () => {
    const made = await checkIn(t, { promise: { day: '2026-03-14' } });
    expect(made.promise?.words).toBe('Sat 14 Mar 12:00');
  });

  it('asks about a lift without its unit and stores nothing', async () => {
    const error = await refuse({ ticket: { valveLift: '30' } });
    expect(error.fields?.['ticket.valveLift']).toBe('30 can be read more than one way: 0.030 in? 0.30 mm?');
    expect(error.offers?.map((offer) => offer.words)).toEqual(['0.030 in', '0.30 mm']);
    expect(count('ticket')).toBe(0);
  });

  it('keeps a lift with a comma and its unit as it was typed', async () => {
    await checkIn(t, { ticket: { valveLift: '0,775 mm' } });
    expect(t.db.sql('SELECT valve_lift_typed AS typed, valve_lift_nm AS nm FROM ticket')).toEqual([
      { typed: '0,775 mm', nm: 775_000 },
    ]);
  });

  it('keeps strange text letter for letter', async () => {
    const words = '🔧 Ł\'; DROP TABLE ticket; -- \u202eright to left\n{"a":1} <b>';
    await checkIn(t, {
      customer: { add: { name: '🦊🔧 & Søn' } },
      ticket: { notes: words, historyWords: 'x'.repeat(2000) },
    });
    const page = await t.send('tickets/get-ticket', { number: 20001 }, { as: 'TV' });
    expect([page.fields.notes, page.customer.name]).toEqual([words, '🦊🔧 & Søn']);
  });

  it('takes notes of 10 000 characters and says so when there are more', async () => {
    await checkIn(t, { ticket: { notes: 'ü'.repeat(10_000) } });
    const error = await refuse({ ticket: { notes: 'ü'.repeat(10_001) } });
    expect(error.fields).toEqual({ 'ticket.notes': 'Keep the notes to 10000 characters.' });
  });

  it('counts only what can be seen of a casting that came assembled', async () => {
    await checkIn(t, {
      castings: [
        {
          ...IRON_HEAD,
          cameAssembled: true,
          items: [
            { words: 'valves', expected: 8, counted: 8, inside: true },
            { words: 'plugs', expected: 4, counted: 4 },
          ],
        },
      ],
    });
    expect(t.db.sql('SELECT words, counted FROM arrival_item ORDER BY id')).toEqual([
      { words: 'valves', counted: null },
      { words: 'plugs', counted: 4 },
    ]);
  });

  it('brings the list of the type, not counted, when none was typed', async () => {
    await checkIn(t, { castings: [ALUMINIUM_HEAD] });
    const rows = t.db.sql<{ counted: number | null }>('SELECT counted FROM arrival_item');
    expect(rows.length).toBeGreaterThan(3);
    expect(rows.every((row) => row.counted === null)).toBe(true);
  });

  it('turns an enquiry into a ticket with the number it was quoted under', async () => {
    const customerId = await customerNamed(t, 'ferry');
    const enquiry = await t.send(
      'tickets/open-enquiry',
      { customer: { customerId }, engineWords: 'ferry diesel' },
      { as: 'TV' },
    );
    const made = await checkIn(t, { enquiryId: enquiry.ticketId });
    expect(made.number).toBe(enquiry.number);
    const again = await refuse({ enquiryId: enquiry.ticketId });
    expect(again.code).toBe('check-in/arrived');
  });

  it('says what to do when nothing came', async () => {
    expect((await refuse({ castings: [] })).fields).toEqual({
      castings: 'Add a casting, or open an enquiry when nothing came yet.',
    });
  });

  it('answers a command sent twice with one key once', async () => {
    const customerId = await customerNamed(t, 'ferry');
    const input = { customer: { customerId }, castings: [IRON_HEAD] };
    const first = await t.send('tickets/check-in-ticket', input, { as: 'TV', key: 'check-in-1' });
    const second = await t.send('tickets/check-in-ticket', input, { as: 'TV', key: 'check-in-1' });
    expect(second).toEqual(first);
    expect(count('ticket')).toBe(1);
  });

  it('is not for a machinist', async () => {
    const customerId = await customerNamed(t, 'ferry');
    const error = await t.refuse('tickets/check-in-ticket', { customer: { customerId } }, { as: 'SO' });
    expect(error.kind).toBe('not-allowed');
  });
});
