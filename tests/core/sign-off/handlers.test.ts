/** Signing, reopening, scrap and going home unworked on a whole host. */
import { describe, expect, it } from 'vitest';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';
import { acting, benchOf, checkIn, finish, IRON_HEAD, type Job, operationOf, tick } from '../floor/builders.ts';

const pinOf = (as: string) => {
  const pins: Readonly<Record<string, string>> = { OB: '740101', JP: '740104', BL: '740107' };
  return { as, pin: pins[as] ?? '' };
};
const idOf = (job: Job, index = 0) => job.castings[index]?.castingId ?? 0;

/** Stripped and washed by JP. */
async function washed(host: TestHost, more: Parameters<typeof checkIn>[1] = {}): Promise<Job> {
  const job = await checkIn(host, more);
  await tick(host, job, 'tag-and-photos');
  for (const code of ['disassemble-head', 'hot-tank']) await finish(host, job, code);
  return job;
}
const seen = async (host: TestHost, job: Job) => (await benchOf(host, job)).version;
const sign = async (host: TestHost, job: Job, as: string, place: 'first' | 'second' = 'first') =>
  [{ castingId: idOf(job), seenVersion: await seen(host, job), place }, pinOf(as)] as const;

describe('castings/sign-off-casting', () => {
  it('signs, freezes the table, and the casting reads signed off', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const signed = await host.send('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
    expect(signed).toMatchObject({ word: 'signed off', place: 'first', more: false });
    const page = await benchOf(host, job);
    expect(page).toMatchObject({ word: 'signed off', signOffWords: 'signed off by BL' });
    expect(operationOf(page, 'hot-tank').word).toBe('signed');
    const row = host.sqlite.prepare('SELECT table_json, same_person_ok_by FROM sign_off').get() as {
      table_json: string;
    };
    expect(JSON.parse(row.table_json)).toMatchObject({ sheets: [], readings: [], waivers: [] });
    expect(row).toMatchObject({ same_person_ok_by: null });
  });

  it('asks the PIN again and lets only those sign who may', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const [input] = await sign(host, job, 'BL');
    const device = host.sqlite
      .prepare("INSERT INTO device (name, kind, token_hash, created_at) VALUES ('bench 1', 'tablet', 'x', ?)")
      .run('2026-03-09T14:00:00.000Z').lastInsertRowid;
    const atTablet = { ...host.as('BL'), device: Number(device) as never };
    const refused = async (pin?: string) =>
      (await host.refuse('castings/sign-off-casting', input, { as: atTablet, ...(pin && { pin }) })).code;
    expect([await refused(), await refused('111222')]).toEqual(['staff/pin-again', 'staff/pin-wrong']);
    expect((await host.refuse('castings/sign-off-casting', input, { as: 'TV' })).kind).toBe('not-allowed');
  });

  it('refuses the hand that did the work (I20), unless the owner lets the same person sign', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const refused = await host.refuse('castings/sign-off-casting', ...(await sign(host, job, 'JP')));
    expect(refused).toMatchObject({
      code: 'sign-off/same-person',
      message: 'You worked on this one. Another person signs.',
    });
    host.sqlite.prepare('UPDATE shop_setting SET same_person_signs = 1').run();
    await host.send('castings/sign-off-casting', ...(await sign(host, job, 'JP')));
    const owner = host.sqlite.prepare("SELECT id FROM staff WHERE initials = 'OB'").get() as { id: number };
    expect(host.sqlite.prepare('SELECT same_person_ok_by FROM sign_off').get()).toEqual({
      same_person_ok_by: owner.id,
    });
    const page = await host.send('castings/get-sign-off', { castingId: idOf(job) }, { as: 'BL' });
    expect(page.signatures).toMatchObject([{ by: { initials: 'JP' }, samePersonOkBy: { initials: 'OB' } }]);
  });

  it('refuses while an operation is open or a reading is missing (I18, I19)', async () => {
    const host = await startTestHost();
    const job = await washed(host, { operations: ['disassemble-head', 'hot-tank', 'mag-particle-check'] });
    const open = await host.refuse('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
    expect(open).toMatchObject({ code: 'sign-off/not-ready', message: expect.stringMatching(/^Not done: /) });
    await finish(host, job, 'mag-particle-check');
    const missing = await host.refuse('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
    expect(missing.message).toBe('Not measured: crack result. Measure or mark it not applicable.');
    const check = operationOf(await benchOf(host, job), 'mag-particle-check').id;
    await host.send(
      'readings/add-readings',
      {
        casting: idOf(job) as never,
        operation: check,
        rows: [{ quantity: 'crack-result', stage: 'after', typed: 'none found' }],
      },
      { as: 'JP' },
    );
    expect((await benchOf(host, job)).word).toBe('work done');
    await host.send('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
  });

  it('wants the places in their order, each once', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const early = await host.refuse('castings/sign-off-casting', ...(await sign(host, job, 'BL', 'second')));
    expect(early.code).toBe('sign-off/place');
    await host.send('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
    const again = await host.refuse('castings/sign-off-casting', ...(await sign(host, job, 'OB')));
    expect(again.code).toBe('sign-off/signed');
  });

  it('refuses a casting that somebody changed meanwhile', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const [input, options] = await sign(host, job, 'BL');
    const stale = { ...input, seenVersion: input.seenVersion + 1 };
    expect((await host.refuse('castings/sign-off-casting', stale, options)).kind).toBe('conflict');
  });
});

describe('castings/reopen-casting', () => {
  it('takes signatures back with a reason; they stay readable, and readings open again', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const reopen = { castingId: idOf(job), reason: 'burr on the deck' };
    expect((await host.refuse('castings/reopen-casting', reopen, pinOf('BL'))).code).toBe('sign-off/not-signed');
    await host.send('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
    expect((await host.refuse('castings/reopen-casting', reopen, pinOf('JP'))).kind).toBe('not-allowed');
    const opened = await host.send('castings/reopen-casting', reopen, pinOf('BL'));
    expect(opened.word).toBe('work done');
    expect(host.sqlite.prepare('SELECT count(*) AS n FROM sign_off').get()).toEqual({ n: 1 });
    await host.send('castings/sign-off-casting', ...(await sign(host, job, 'OB')));
    expect((await benchOf(host, job)).signOffWords).toBe('signed off by OB');
  });

  it('keeps signed work shut until then', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const first = acting(await benchOf(host, job), 'hot-tank');
    await host.send('castings/sign-off-casting', ...(await sign(host, job, 'BL')));
    const redo = await host.refuse(
      'floor/redo-operation',
      { ...first, seenVersion: first.seenVersion, cause: 'setup' },
      { as: 'JP' },
    );
    expect(redo.code).toBe('floor/signed');
  });
});

describe('castings/declare-scrap', () => {
  it("is half a decision until the customer's answer, and asks about the other one of a pair", async () => {
    const host = await startTestHost();
    const pair = { ...IRON_HEAD, pair: 1 };
    const job = await checkIn(host, { castings: [pair, { ...pair, position: 'right' }] });
    const input = { castingId: idOf(job), seenVersion: await seen(host, job), why: 'cracked through the water' };
    const said = await host.send('castings/declare-scrap', input, pinOf('BL'));
    expect(said.word).toBe('on hold');
    expect(said.otherOne.map((other) => other.tag)).toEqual([job.castings[1]?.tagNo]);
    const refused = await host.refuse(
      'floor/start-operation',
      { operations: [acting(await benchOf(host, job), 'disassemble-head')] },
      { as: 'JP' },
    );
    expect(refused.message).toBe('This casting was declared scrap.');
    host.sqlite
      .prepare(
        `INSERT INTO approval (ticket_id, about, casting_id, answer, amount_cents, said_by, means, words, said_at, created_at)
         VALUES (?, 'scrap', ?, 'yes', 0, 'Petra', 'counter', 'throw it away', ?, ?)`,
      )
      .run(job.ticketId, idOf(job), '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z');
    const page = await host.ask('floor/get-bench', { tag: job.castings[0]?.tagNo }, { as: 'JP' });
    expect(page).toMatchObject({ ok: true, output: { word: 'scrap' } });
  });
});

describe('castings/return-unworked', () => {
  it('lets a casting leave without a signature, with the reason', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    await host.send('castings/return-unworked', { castingId: idOf(job), why: 'too far gone' }, { as: 'BL' });
    const { word } = host.sqlite.prepare('SELECT word FROM ticket_now').get() as { word: string };
    expect(word).toBe('ready');
    const started = await host.refuse(
      'floor/start-operation',
      { operations: [acting(await benchOf(host, job), 'disassemble-head')] },
      { as: 'JP' },
    );
    expect(started.message).toBe('This casting goes home unworked.');
  });

  it('refuses once work was done on it', async () => {
    const host = await startTestHost();
    const job = await washed(host);
    const refused = await host.refuse('castings/return-unworked', { castingId: idOf(job), why: 'x' }, { as: 'BL' });
    expect(refused.code).toBe('sign-off/worked-on');
  });
});
