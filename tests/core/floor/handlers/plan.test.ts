/** What changes the plan of the bench. */
import { describe, expect, it } from 'vitest';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';
import { ALUMINIUM_HEAD, acting, benchOf, checkIn, finish, type Job, operationOf, tick } from '../builders.ts';

const HEAD_WORK = ['disassemble-head', 'hot-tank', 'mag-particle-check', 'guide-size', 'seat-cut'];
const PIN = { as: 'BL', pin: '740107' } as const;

/** Stripped, washed and crack checked. */
async function checked(host: TestHost, operations = HEAD_WORK): Promise<Job> {
  const job = await checkIn(host, { operations });
  await tick(host, job, 'tag-and-photos');
  for (const code of ['disassemble-head', 'hot-tank', 'mag-particle-check']) await finish(host, job, code);
  return job;
}

describe('floor/mark-not-needed', () => {
  it('takes an operation off the work and its own charge off the bill', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    const page = await benchOf(host, job);
    const said = await host.send(
      'floor/mark-not-needed',
      { ...acting(page, 'hot-tank'), why: 'came clean' },
      { as: 'JP' },
    );
    expect(said.words).toMatch(/is marked as not needed\. Its charge is taken off\.$/);
    expect(operationOf(await benchOf(host, job), 'hot-tank')).toMatchObject({
      word: 'not needed',
      mark: 'off',
      notNeeded: { why: 'came clean' },
    });
    const lines = host.sqlite.prepare('SELECT withdrawn_why FROM work_line WHERE withdrawn_at IS NOT NULL').all();
    expect(lines).toEqual([{ withdrawn_why: 'Not needed: came clean' }]);
  });

  it('refuses what was begun, and what done work relies on', async () => {
    const host = await startTestHost();
    const job = await checked(host);
    const page = await benchOf(host, job);
    const done = await host.refuse('floor/mark-not-needed', { ...acting(page, 'hot-tank'), why: 'x' }, { as: 'JP' });
    expect(done.code).toBe('floor/already-done');
    await host.send('floor/start-operation', { operations: [acting(page, 'guide-size')] }, { as: 'DK' });
    const begun = await host.refuse('floor/mark-not-needed', { ...acting(page, 'guide-size'), why: 'x' }, { as: 'JP' });
    expect(begun.code).toBe('floor/begun');
  });
});

describe('floor/redo-operation', () => {
  it('makes a second instance beside the first, charged to nobody, and the work after it is looked at again', async () => {
    const host = await startTestHost();
    const job = await checked(host);
    const page = await benchOf(host, job);
    const made = await host.send(
      'floor/redo-operation',
      { ...acting(page, 'hot-tank'), cause: 'setup', words: 'nozzle blocked' },
      { as: 'JP' },
    );
    const after = await benchOf(host, job);
    expect(after.operations.filter((o) => o.kindCode === 'hot-tank').map((o) => [o.id, o.word])).toEqual([
      [acting(page, 'hot-tank').operationId, 'redone'],
      [made.operationId, 'ready to start'],
    ]);
    expect(operationOf(after, 'hot-tank')).toMatchObject({ covered: true, redoOf: { cause: 'setup' } });
    host.setClock('2026-03-09T15:00:00.000Z');
    await finish(host, job, 'hot-tank');
    const { soft } = operationOf(await benchOf(host, job), 'mag-particle-check');
    expect(soft.map((reason) => [reason.rule?.no, reason.short])).toEqual([[4, 'hot tank done again after']]);
    const twice = await host.refuse(
      'floor/redo-operation',
      { ...acting(page, 'hot-tank'), cause: 'setup' },
      { as: 'JP' },
    );
    expect(twice.code).toBe('floor/not-done');
  });
});

describe('floor/waive-rule', () => {
  it('lets a lead pass a rule with a reason, printed with it; nobody else, and not without the PIN', async () => {
    const host = await startTestHost();
    const job = await checked(host);
    const page = await benchOf(host, job);
    const seat = operationOf(page, 'seat-cut');
    const stop = seat.stops.find((s) => s.rule?.no === 13);
    const input = { ...acting(page, 'seat-cut'), ruleId: stop?.rule?.id ?? 0, reason: 'guides are new' };
    expect((await host.refuse('floor/waive-rule', input, { as: 'JP' })).kind).toBe('not-allowed');
    for (const { rule } of seat.stops) {
      await host.send('floor/waive-rule', { ...input, ruleId: rule?.id ?? 0 }, PIN);
    }
    const after = operationOf(await benchOf(host, job), 'seat-cut');
    expect(after.stops).toEqual([]);
    expect(after.waived.map((w) => [w.no, w.reason, w.by])).toEqual([
      [12, 'guides are new', 'BL'],
      [13, 'guides are new', 'BL'],
    ]);
    const again = await host.refuse('floor/waive-rule', input, PIN);
    expect(again.code).toBe('floor/rule-is-met');
  });

  it('lets nobody pass a rule without waiver, nor decline a crack check but the customer', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['disassemble-head', 'seat-cut'] });
    const page = await benchOf(host, job);
    const strip = operationOf(page, 'disassemble-head').stops[0]?.rule;
    const never = await host.refuse(
      'floor/waive-rule',
      { ...acting(page, 'disassemble-head'), ruleId: strip?.id ?? 0, reason: 'in a hurry' },
      PIN,
    );
    expect(never.code).toBe('floor/no-waiver');
    const crack = operationOf(page, 'seat-cut').stops.find((s) => s.rule?.no === 5)?.rule;
    expect(crack?.waiver).toBe('customer_signature');
    const input = { ...acting(page, 'seat-cut'), ruleId: crack?.id ?? 0, reason: 'signed at the counter' };
    expect((await host.refuse('floor/waive-rule', input, PIN)).code).toBe('floor/needs-signature');
  });

  it("takes the signed claim ticket as the customer's no to a crack check", async () => {
    const host = await startTestHost();
    const job = await checkIn(host, {
      operations: ['seat-cut'],
      ticket: { crackCheck: 'declined' },
      signed: { how: 'on_paper', by: 'Petra Lindqvist' },
    } as never);
    const page = await benchOf(host, job);
    expect(page.warnings).toContain('CRACK CHECK DECLINED BY THE CUSTOMER');
    const crack = operationOf(page, 'seat-cut').stops.find((s) => s.rule?.no === 5)?.rule;
    await host.send(
      'floor/waive-rule',
      { ...acting(page, 'seat-cut'), ruleId: crack?.id ?? 0, reason: 'declined on the claim ticket' },
      PIN,
    );
    expect(operationOf(await benchOf(host, job), 'seat-cut').stops.some((s) => s.rule?.no === 5)).toBe(false);
  });
});

describe('floor/tick-fact', () => {
  it('can be said and taken back; the last word counts', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    await tick(host, job, 'tag-and-photos');
    const fact = async () => (await benchOf(host, job)).facts.find((f) => f.fact === 'tag-and-photos');
    expect(await fact()).toMatchObject({ holds: true, said: expect.stringMatching(/^JP /) });
    const back = { castingId: job.castings[0]?.castingId ?? 0, fact: 'tag-and-photos', holds: false } as const;
    await host.send('floor/tick-fact', back, { as: 'DK' });
    expect(await fact()).toMatchObject({ holds: false });
    expect(operationOf(await benchOf(host, job), 'disassemble-head').mayStart).toBe(false);
  });
});

describe('floor/remove-item', () => {
  it('is said once', async () => {
    const host = await startTestHost();
    const items = [{ words: 'knock sensor', counted: 1, removeBeforeWash: true }];
    const job = await checkIn(host, {
      castings: [{ ...ALUMINIUM_HEAD, items }],
      operations: ['disassemble-head'],
    });
    const itemId = (await benchOf(host, job)).arrival.items[0]?.id ?? 0;
    const said = await host.send('floor/remove-item', { itemId }, { as: 'JP' });
    expect(said.words).toBe(`Knock sensor is off ${job.castings[0]?.tagNo}. Put it in its bag.`);
    expect((await host.refuse('floor/remove-item', { itemId }, { as: 'JP' })).code).toBe('floor/already-off');
  });
});
