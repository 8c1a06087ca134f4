/** A reading that fails is signed only with a lead's named decision about that very figure. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { benchOf, checkIn, finish, operationOf, tick } from '../../floor/builders.ts';

const PIN = { as: 'BL', pin: '740107' };

async function surfaced() {
  const host = await startTestHost();
  const job = await checkIn(host, {
    operations: ['disassemble-head', 'hot-tank', 'mag-particle-check', 'surface-head'],
  });
  await tick(host, job, 'tag-and-photos');
  for (const code of ['disassemble-head', 'hot-tank', 'mag-particle-check']) await finish(host, job, code);
  const casting = (job.castings[0]?.castingId ?? 0) as never;
  const read = (quantity: string, stage: 'before' | 'after', typed: string, operation: number | null = null) =>
    host.send(
      'readings/add-readings',
      { casting, operation: operation as never, rows: [{ quantity, stage, typed, sure: true }] },
      { as: 'JP' },
    );
  const check = operationOf(await benchOf(host, job), 'mag-particle-check').id;
  await read('crack-result', 'after', 'none found', check);
  await read('thickness', 'before', '3.9500 in');
  await finish(host, job, 'surface-head');
  // Far below any least thickness of this head: 3.9 in and a little is what a new one measures.
  await read('thickness', 'after', '3.0000 in');
  return { host, job, casting };
}

describe('decide', () => {
  it('is asked of a lead, kept with the figure, and lets the casting be signed', async () => {
    const { host, job, casting } = await surfaced();
    const page = await host.send('castings/get-sign-off', { castingId: casting }, { as: 'BL' });
    const bad = page.readings.filter((r) => r.stops);
    expect(bad.map((r) => [r.quantity, r.stage, r.verdict])).toContainEqual(['thickness', 'after', 'fail']);
    expect(page.maySign).toBe(false);
    const input = { castingId: casting, seenVersion: page.version, place: 'first' as const };
    const without = await host.refuse('castings/sign-off-casting', input, PIN);
    expect(without.message).toMatch(/^thickness reads 3\.0000 in, .*: fail\. A lead decides\.$/);
    const decisions = bad.map(({ quantityId, spotId, stage, point }) => ({
      quantityId,
      spotId,
      stage,
      point,
      words: 'customer signed for a thin head',
    }));
    const machinist = { as: 'SO', pin: '740106' };
    expect((await host.refuse('castings/sign-off-casting', { ...input, decisions }, machinist)).code).toBe(
      'sign-off/lead-decides',
    );
    await host.send('castings/sign-off-casting', { ...input, decisions }, PIN);
    const frozen = host.sqlite.prepare('SELECT table_json FROM sign_off').get() as { table_json: string };
    expect(frozen.table_json).toContain('customer signed for a thin head');
    expect((await benchOf(host, job)).word).toBe('signed off');
  });
});
