/** Found something, holds, near misses. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { acting, benchOf, checkIn, IRON_HEAD, operationOf, tick } from '../builders.ts';

/** One black pixel as PNG. */
const PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

describe('floor/report-finding', () => {
  it('keeps finding, picture and hold in one command, and the casting stands', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    await tick(host, job, 'tag-and-photos');
    const page = await benchOf(host, job);
    const kind = host.sqlite
      .prepare(
        'SELECT id, shop_words FROM finding_kind WHERE id IN (SELECT finding_kind_id FROM finding_offer) ORDER BY id',
      )
      .get() as { id: number; shop_words: string };
    const made = await host.send(
      'floor/report-finding',
      {
        castingId: page.castingId,
        operationId: operationOf(page, 'disassemble-head').id,
        findingKindId: kind.id,
        place: 'between 2 and 3',
        photos: [{ file: { base64: PIXEL, mime: 'image/png' }, caption: 'crack' }],
        hold: { reason: 'customer_answer' },
      },
      { as: 'JP' },
    );
    expect(made.words).toBe(`Found on ${page.tag}: ${kind.shop_words}. On hold: waiting customer's answer.`);
    expect(made.offers.length).toBeGreaterThan(0);
    const after = await benchOf(host, job);
    expect(after.word).toBe('on hold');
    expect(after.findings).toMatchObject([
      { words: `${kind.shop_words}, between 2 and 3`, by: { initials: 'JP' }, question: null },
    ]);
    expect(after.photos).toMatchObject([{ stage: 'finding', caption: 'crack' }]);
    // The counter looks again on the next open day: 9 March 2026 is a Monday.
    expect(after.holds).toMatchObject([
      { reason: 'customer_answer', ownerRole: 'counter', followUpOn: '2026-03-10', days: 0 },
    ]);
    expect(operationOf(after, 'disassemble-head')).toMatchObject({
      mayStart: false,
      right: "waiting customer's answer",
    });
    const kept = host.sqlite.prepare('SELECT body FROM activity_text ORDER BY activity_id DESC LIMIT 1').get() as {
      body: string;
    };
    expect(kept.body).not.toContain(PIXEL.slice(0, 40));
  });

  it('wants to know what was found', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const refused = await host.refuse(
      'floor/report-finding',
      { castingId: job.castings[0]?.castingId ?? 0 },
      { as: 'JP' },
    );
    expect(refused).toMatchObject({
      kind: 'invalid-input',
      fields: { words: expect.stringMatching(/^Say what you found/) },
    });
  });

  it('refuses a picture that is none, and keeps nothing', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const refused = await host.refuse(
      'floor/report-finding',
      {
        castingId: job.castings[0]?.castingId ?? 0,
        words: 'crack',
        photos: [{ file: { base64: Buffer.from('no picture').toString('base64'), mime: 'image/png' } }],
      },
      { as: 'JP' },
    );
    expect(refused.kind).toBe('invalid-input');
    expect(host.sqlite.prepare('SELECT count(*) AS n FROM finding').get()).toEqual({ n: 0 });
  });

  it('asks the lead about the other one of a pair at a crack or scrap decision', async () => {
    const host = await startTestHost();
    const pair = { ...IRON_HEAD, pair: 1 };
    const job = await checkIn(host, { castings: [pair, { ...pair, position: 'right' }] });
    const [first, second] = job.castings;
    const made = await host.send(
      'floor/report-finding',
      { castingId: first?.castingId ?? 0, words: 'crack into water', hold: { reason: 'crack_or_scrap' } },
      { as: 'DK' },
    );
    expect(made.otherOne).toEqual([
      {
        castingId: second?.castingId,
        tag: second?.tagNo,
        question: `${second?.tagNo} is the other one of the pair: hold it too, or go on?`,
      },
    ]);
    const other = await benchOf(host, job, 1);
    expect(other.warnings).toContain(
      `${first?.tagNo} OF THE PAIR: CRACK OR SCRAP DECISION - ASK THE LEAD BEFORE GOING ON`,
    );
    expect(other.holds).toEqual([]);
    // A lead looks the same day.
    expect((await benchOf(host, job)).holds).toMatchObject([
      { ownerRole: 'lead', followUpOn: '2026-03-09', due: true },
    ]);
  });
});

describe('floor/open-hold', () => {
  it('is on one thing only', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const castingId = job.castings[0]?.castingId ?? 0;
    const both = await host.refuse(
      'floor/open-hold',
      { reason: 'parts', castingId, ticketId: job.ticketId },
      { as: 'JP' },
    );
    expect(both.code).toBe('floor/hold-on-what');
    const none = await host.refuse('floor/open-hold', { reason: 'parts' }, { as: 'JP' });
    expect(none.code).toBe('floor/hold-on-what');
  });

  it('holds one operation and leaves the others', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    await tick(host, job, 'tag-and-photos');
    const page = await benchOf(host, job);
    await host.send(
      'floor/open-hold',
      { reason: 'machine_down', operationId: operationOf(page, 'hot-tank').id, words: 'heater' },
      { as: 'JP' },
    );
    const after = await benchOf(host, job);
    expect(operationOf(after, 'disassemble-head').mayStart).toBe(true);
    expect(operationOf(after, 'hot-tank').right).toBe('machine down');
    expect(after.holds).toMatchObject([{ onWhat: 'hot tank' }]);
  });

  it('stops all of the ticket while identity is in doubt (I22)', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { castings: [IRON_HEAD, { ...IRON_HEAD, position: 'right' }] });
    await tick(host, job, 'tag-and-photos', 1);
    await host.send(
      'floor/open-hold',
      { reason: 'identity', castingId: job.castings[0]?.castingId ?? 0 },
      { as: 'JP' },
    );
    const other = await benchOf(host, job, 1);
    expect(other.identityInDoubt).toBe(true);
    const refused = await host.refuse(
      'floor/start-operation',
      { operations: [acting(other, 'disassemble-head')] },
      { as: 'JP' },
    );
    expect(refused).toMatchObject({
      code: 'floor/identity-in-doubt',
      message: 'Which casting is this? Clear the identity question first.',
    });
  });
});

describe('floor/close-hold', () => {
  it('needs words, and is closed once', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const { holdId } = await host.send('floor/open-hold', { reason: 'parts', ticketId: job.ticketId }, { as: 'MN' });
    expect((await host.refuse('floor/close-hold', { holdId, words: ' ' }, { as: 'MN' })).kind).toBe('invalid-input');
    await host.send('floor/close-hold', { holdId, words: 'came with the morning van' }, { as: 'MN' });
    expect((await benchOf(host, job)).holds).toEqual([]);
    expect((await host.refuse('floor/close-hold', { holdId, words: 'again' }, { as: 'MN' })).code).toBe(
      'floor/hold-closed',
    );
  });

  it('leaves an account to the yes of a lead', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const { holdId } = await host.send('floor/open-hold', { reason: 'money', ticketId: job.ticketId }, { as: 'MN' });
    const closing = { holdId, words: 'they will pay on Friday' };
    expect((await host.refuse('floor/close-hold', closing, { as: 'MN' })).code).toBe('floor/account-needs-a-yes');
    await host.send('floor/close-hold', closing, { as: 'OB' });
    expect((await benchOf(host, job)).holds).toEqual([]);
  });
});

describe('floor/report-incident', () => {
  it('writes a near miss down', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const said = await host.send(
      'floor/report-incident',
      { castingId: job.castings[0]?.castingId ?? 0, kind: 'near_miss', words: 'sling slipped' },
      { as: 'JP' },
    );
    expect(said.words).toBe(`The near miss on ${job.castings[0]?.tagNo} is written down. Tell the owner.`);
  });
});
