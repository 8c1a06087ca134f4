import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, customerNamed } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const page = (number = 20_001) => t.send('tickets/get-ticket', { number }, { as: 'TV' });

describe('tickets/open-enquiry', () => {
  it('takes a number and no goods', async () => {
    const made = await t.send(
      'tickets/open-enquiry',
      { customer: { add: { name: 'Ossian' } }, wantedWords: 'valve job, how much?' },
      { as: 'TV' },
    );
    expect(made.number).toBe(20_001);
    expect(await page()).toMatchObject({
      word: 'enquiry',
      arrivedWords: 'not here yet',
      next: [{ go: 'check-in' }, { go: 'print' }],
    });
  });
});

describe('tickets/change-ticket', () => {
  it('lets two people work on one ticket: untouched fields merge and are named (I42)', async () => {
    const { ticketId } = await checkIn(t, { ticket: { notes: 'first' } });
    const { version } = await page();
    const change = (as: string, changes: object) =>
      t.ask('tickets/change-ticket', { ticketId, seenVersion: version, changes }, { as });
    expect(
      await change('TV', {
        notes: { seen: 'first', to: 'from the counter' },
        gasket: { seen: 'not_asked', to: 'mls' },
      }),
    ).toMatchObject({ ok: true });
    expect(await change('OB', { useWords: { seen: null, to: 'boat' } })).toMatchObject({
      ok: true,
      output: {
        version: version + 2,
        takenOver: [
          { field: 'gasket', value: 'mls' },
          { field: 'notes', words: 'the notes', by: 'Teodor Vaskelund' },
        ],
      },
    });
    expect(await page()).toMatchObject({ fields: { notes: 'from the counter', useWords: 'boat', gasket: 'mls' } });
  });

  it('shows both texts of a field both touched, and writes nothing of the second', async () => {
    const { ticketId } = await checkIn(t, { ticket: { notes: 'first' } });
    const { version } = await page();
    const change = (as: string, changes: object) =>
      t.ask('tickets/change-ticket', { ticketId, seenVersion: version, changes }, { as });
    await change('TV', { notes: { seen: 'first', to: 'from the counter' } });
    const clash = await change('DK', {
      notes: { seen: 'first', to: 'from the bench' },
      useWords: { seen: null, to: 'boat' },
    });
    expect(clash).toMatchObject({
      ok: false,
      error: {
        kind: 'conflict',
        message: 'Teodor Vaskelund changed the notes while you had it open. Your text is kept; look and save again.',
        facts: {
          conflicts: [{ field: 'notes', now: 'from the counter', yours: 'from the bench', by: 'Teodor Vaskelund' }],
        },
      },
    });
    expect((await page()).fields).toMatchObject({ notes: 'from the counter', useWords: null });
  });

  it('is no conflict when both wrote the same', async () => {
    const { ticketId } = await checkIn(t);
    const { version } = await page();
    const same = { ticketId, seenVersion: version, changes: { orderNumber: { seen: 'FL-1', to: 'FL-2' } } };
    await t.send('tickets/change-ticket', same, { as: 'TV' });
    await t.send('tickets/change-ticket', same, { as: 'OB' });
    expect((await page()).fields.orderNumber).toBe('FL-2');
  });

  it('brings the people of another customer with it, until an invoice fixes it', async () => {
    const { ticketId } = await checkIn(t);
    const customerId = await customerNamed(t, 'mudlark');
    const seen = (await page()).fields.customerId;
    const changes = { customerId: { seen, to: customerId } };
    await t.send('tickets/change-ticket', { ticketId, seenVersion: 1, changes }, { as: 'TV' });
    expect((await page()).customer).toMatchObject({
      name: 'Mudlark Lane Garage Ltd',
      person: { name: 'Ysolde Kerrow' },
    });
    const stranger = { contactPersonId: { seen: (await page()).fields.contactPersonId, to: 1 } };
    const error = await t.refuse(
      'tickets/change-ticket',
      { ticketId, seenVersion: 2, changes: stranger },
      { as: 'TV' },
    );
    expect(error.fields?.['changes.contactPersonId']).toContain('does not speak for this customer');
  });

  it('asks about a lift without its unit', async () => {
    const { ticketId } = await checkIn(t);
    const error = await t.refuse(
      'tickets/change-ticket',
      { ticketId, seenVersion: 1, changes: { valveLift: { seen: null, to: '480' } } },
      { as: 'TV' },
    );
    expect(error.fields?.['changes.valveLift']).toContain('0.480 in?');
  });

  it('finds the ticket by its new order number', async () => {
    const { ticketId } = await checkIn(t);
    await t.send(
      'tickets/change-ticket',
      { ticketId, seenVersion: 1, changes: { orderNumber: { seen: 'FL-1', to: 'ZZ-9931' } } },
      { as: 'TV' },
    );
    const found = await t.send('search/find-anything', { text: 'zz-9931' }, { as: 'TV' });
    expect(found.tickets[0]).toMatchObject({ number: 20_001, foundBy: 'order number' });
    expect((await t.send('search/find-anything', { text: 'fl-1' }, { as: 'TV' })).tickets).toEqual([]);
  });
});

describe('tickets/decline-ticket', () => {
  it('ends a ticket before its work; goods still leave by release', async () => {
    const { ticketId } = await checkIn(t);
    await t.send('tickets/decline-ticket', { ticketId, seenVersion: 1, why: 'too dear' }, { as: 'TV' });
    expect(await page()).toMatchObject({ word: 'declined', chips: [{ chip: 'goods still here' }] });
    const error = await t.refuse(
      'castings/add-casting',
      { ticketId, castings: [{ type: 'LO-4', material: 'iron_grey' }] },
      { as: 'TV' },
    );
    expect(error.code).toBe('tickets/declined');
  });

  it('does not end a ticket whose work has begun', async () => {
    const { ticketId } = await checkIn(t, { wishes: [{ operation: 'hot-tank' }] });
    const row = t.db.sql<{ id: number }>('SELECT id FROM operation')[0];
    t.sqlite
      .prepare(
        "INSERT INTO operation_run (operation_id, ticket_id, staff_id, started_at, created_at) VALUES (?, ?, 1, '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z')",
      )
      .run(row?.id, ticketId);
    const reply = await t.ask('tickets/decline-ticket', { ticketId, seenVersion: 1, why: 'too dear' }, { as: 'TV' });
    expect(reply).toMatchObject({ ok: false, error: { code: 'tickets/work-begun' } });
  });
});

describe('tickets/log-contact', () => {
  it('keeps a call for ever, reached or not', async () => {
    const { ticketId, customerId } = await checkIn(t);
    await t.send(
      'tickets/log-contact',
      {
        ticketId,
        customerId,
        means: 'call',
        numberOrAddress: '555-0119',
        about: 'answer',
        words: 'nobody answered',
        reached: false,
      },
      { as: 'TV' },
    );
    expect((await page()).contacts).toMatchObject([
      { words: 'nobody answered', reached: false, by: 'Teodor Vaskelund', atWords: 'Mon 9 Mar 10:00' },
    ]);
    expect(() => t.sqlite.prepare("UPDATE contact_log SET words = 'x'").run()).toThrow(/never changed/);
  });

  it('does not log a call of one customer on the ticket of another', async () => {
    const { ticketId } = await checkIn(t);
    const error = await t.refuse(
      'tickets/log-contact',
      { ticketId, customerId: await customerNamed(t, 'mudlark'), means: 'call', about: 'ready', words: 'x' },
      { as: 'TV' },
    );
    expect(error.code).toBe('tickets/other-customer');
  });
});

describe('promises/set-promise', () => {
  it('keeps every promise beside the first, with its reason (I34)', async () => {
    const { ticketId } = await checkIn(t, { promise: { day: '2026-03-12' } });
    const first = (await page()).promise?.promiseId ?? null;
    const moved = await t.send(
      'promises/set-promise',
      {
        ticketId,
        promise: { day: '2026-03-16', minute: 960 },
        reason: 'found_more',
        why: 'crack, weld out',
        seenPromiseId: first,
      },
      { as: 'TV' },
    );
    expect(moved.words).toBe('Mon 16 Mar 16:00');
    expect(await page()).toMatchObject({
      promiseWords: 'moved once: crack, weld out',
      firstPromise: { words: 'Thu 12 Mar 16:30' },
      promise: { words: 'Mon 16 Mar 16:00', ownTime: true },
    });
    expect(() => t.sqlite.prepare("UPDATE promise SET on_day = '2026-03-20'").run()).toThrow(/never changed/);
  });

  it('does not move a promise without a reason, nor onto a closed day', async () => {
    const { ticketId } = await checkIn(t, { promise: { day: '2026-03-12' } });
    const refuse = (changes: object) =>
      t.refuse(
        'promises/set-promise',
        { ticketId, promise: { day: '2026-03-16' }, reason: 'other', ...changes } as never,
        { as: 'TV' },
      );
    expect((await refuse({ reason: 'first' })).fields?.reason).toContain('Say why it changes.');
    expect((await refuse({})).fields?.why).toBe('Write why the promise changes.');
    expect((await refuse({ promise: { day: '2026-03-15' }, reason: 'parts' })).fields?.['promise.day']).toContain(
      'The shop is closed that day.',
    );
    expect((await refuse({ promise: { day: '2026-02-30' } })).fields?.['promise.day']).toContain('year-month-day');
  });

  it('does not pass over a promise somebody else gave meanwhile', async () => {
    const { ticketId } = await checkIn(t, { promise: { day: '2026-03-12' } });
    const seen = (await page()).promise?.promiseId ?? null;
    await t.send(
      'promises/set-promise',
      { ticketId, promise: { day: '2026-03-13' }, reason: 'customer', seenPromiseId: seen },
      { as: 'OB' },
    );
    const error = await t.refuse(
      'promises/set-promise',
      { ticketId, promise: { day: '2026-03-16' }, reason: 'parts', seenPromiseId: seen },
      { as: 'TV' },
    );
    expect(error).toMatchObject({
      kind: 'conflict',
      message:
        'Odile Brackwen changed the promise to Fri 13 Mar 16:30 while you had it open. Your day is kept; look and save again.',
    });
  });
});
