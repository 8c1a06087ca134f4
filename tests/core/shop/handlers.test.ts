import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { cents } from '#core/kernel/units.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('shop/change-settings', () => {
  it('changes what is sent and nothing else, and keeps what stood before', async () => {
    const { send } = await startTestHost();
    const before = await send('shop/get-settings', {});

    await send('shop/change-settings', { seenVersion: before.version, changes: { minimumLabour: cents(4000) } });

    const after = await send('shop/get-settings', {});
    expect(after.settings).toEqual({ ...before.settings, minimumLabour: 4000 });
    const { rows } = await send('activity/list-activity', { limit: 1 });
    expect(rows[0]).toMatchObject({ before: { minimumLabour: 3500 }, after: { minimumLabour: 4000 } });
  });

  it('refuses a stale screen (I42)', async () => {
    const { refuse } = await startTestHost();

    expect(await refuse('shop/change-settings', { seenVersion: 1, changes: { guard: true } })).toMatchObject({
      kind: 'conflict',
    });
  });
});

describe('shop/set-next-number', () => {
  it('moves forward only, once a number was given', async () => {
    const { send, refuse, sqlite } = await startTestHost();
    await send('shop/set-next-number', { series: 'ticket', next: 20_417 });
    expect((await send('shop/get-settings', {})).numbers).toContainEqual({
      series: 'ticket',
      next: 20_417,
      used: false,
    });
    sqlite.exec(
      `INSERT INTO ticket (number, customer_id, price_day, created_at) VALUES (20417, 1, '2026-03-09', '2026-03-09T14:00:00.000Z')`,
    );

    expect(await refuse('shop/set-next-number', { series: 'ticket', next: 20_000 })).toMatchObject({
      fields: { next: expect.stringContaining('forward') },
    });
  });
});

describe('promises/set-open-hours', () => {
  it('refuses hours that end before they begin, naming the row', async () => {
    const { refuse } = await startTestHost();

    expect(
      await refuse('promises/set-open-hours', { hours: [{ weekday: 1, part: 'counter', from: 600, until: 500 }] }),
    ).toMatchObject({
      fields: { 'hours.0.until': expect.stringContaining('after opening') },
    });
  });
});

describe('promises/add-holiday', () => {
  it('closes a day once, and opens it again', async () => {
    const { send, refuse } = await startTestHost();
    const { id } = await send('promises/add-holiday', { day: day('2026-07-03'), words: 'Regatta' });

    expect(await refuse('promises/add-holiday', { day: day('2026-07-03'), words: 'Regatta' })).toMatchObject({
      code: 'shop/holiday-there',
    });
    await send('promises/end-holiday', { holiday: id });
    await send('promises/add-holiday', { day: day('2026-07-03'), words: 'Regatta after all' });
  });
});

describe('shop/add-text-version', () => {
  it('is in force from its day on; what was printed before keeps its own', async () => {
    const { send } = await startTestHost();
    await send('shop/add-text-version', { kind: 'warranty', body: 'From May on.', from: day('2026-05-01') });

    const now = (await send('shop/get-settings', {})).texts.find((t) => t.kind === 'warranty');

    expect(now?.body).toContain('12 months');
  });
});

describe('activity/list-activity', () => {
  it('is not shown to a machinist, who sees no customer', async () => {
    const { refuse } = await startTestHost();

    expect(await refuse('activity/list-activity', {}, { as: 'SO' })).toMatchObject({ code: 'host/not-allowed' });
  });
});

describe('backup/get-last-backup', () => {
  it('says when the last one was made and checked', async () => {
    const { send } = await startTestHost();
    expect(await send('backup/get-last-backup', {})).toEqual({ last: null });

    await send('backup/make-backup', {});

    expect(await send('backup/get-last-backup', {})).toEqual({
      last: { at: '2026-03-09T14:00:00.000Z', file: 'backups/test.sqlite', bytes: 1 },
    });
  });

  it('is still told after somebody looked at the list', async () => {
    const { send } = await startTestHost();
    await send('backup/make-backup', {});

    await send('backup/list-backups', {});

    expect((await send('backup/get-last-backup', {})).last?.file).toBe('backups/test.sqlite');
  });
});

describe('shop/get-settings', () => {
  it('says the number that is given next, also of a series that runs without a gap', async () => {
    const { send } = await startTestHost();
    const next = async () =>
      (await send('shop/get-settings', {})).numbers.find((one) => one.series === 'receipt')?.next;
    const first = (await next()) ?? 0;

    const taken = await send('payments/take-payment', { customerId: 1, kind: 'cash', amount: 5000 } as never);

    expect(taken.receiptNumber).toBe(first);
    expect(await next()).toBe(first + 1);
  });
});

describe('backup/list-backups', () => {
  it('is the owner only', async () => {
    const { send, refuse } = await startTestHost();

    expect(await send('backup/list-backups', {})).toEqual({ backups: [] });
    expect(await refuse('backup/list-backups', {}, { as: 'TV' })).toMatchObject({ code: 'host/not-allowed' });
  });
});
