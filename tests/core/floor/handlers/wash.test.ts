/** Wash loads. Caustic for iron and steel only: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { ALUMINIUM_HEAD, benchOf, checkIn, finish, type Job, operationOf, tick } from '../builders.ts';

const tagOf = (job: Job) => job.castings[0]?.tagNo ?? 0;

async function stripped(wash = 'hot-tank', casting?: typeof ALUMINIUM_HEAD) {
  const host = await startTestHost();
  const jobs: Job[] = [];
  for (let n = 0; n < 2; n += 1) {
    const job = await checkIn(host, {
      operations: ['disassemble-head', wash],
      ...(casting && { castings: [casting] }),
    });
    await tick(host, job, 'tag-and-photos');
    await finish(host, job, 'disassemble-head');
    jobs.push(job);
  }
  const [one, two] = jobs as [Job, Job];
  return { host, one, two };
}

describe('floor/start-wash-load', () => {
  it('starts the wash of every casting and remembers who looked at the metal', async () => {
    const { host, one, two } = await stripped();
    const tags = [tagOf(one), tagOf(two), tagOf(one)];
    const load = await host.send('floor/start-wash-load', { wash: 'hot-tank', machine: 'tank 1', tags }, { as: 'JP' });
    expect(load.words).toBe(`Hot tank started with ${tagOf(one)}, ${tagOf(two)}.`);
    expect(load.warnings).toHaveLength(2);
    expect(operationOf(await benchOf(host, two), 'hot-tank').word).toBe('started');
    const { loads } = await host.send('floor/list-wash-loads', {}, { as: 'JP' });
    expect(loads).toMatchObject([
      { wash: 'Hot tank', machine: 'tank 1', by: { initials: 'JP' }, tags: [tagOf(one), tagOf(two)] },
    ]);
  });

  it('stops the whole load at a casting that does not bear it, with no override, and keeps the near miss', async () => {
    const { host, one } = await stripped();
    const aluminium = await checkIn(host, { castings: [ALUMINIUM_HEAD], operations: ['disassemble-head'] });
    const refused = await host.refuse(
      'floor/start-wash-load',
      { wash: 'hot-tank', tags: [tagOf(one), tagOf(aluminium)] },
      { as: 'OB' },
    );
    expect(refused).toMatchObject({
      code: 'floor/metal',
      message: `${tagOf(aluminium)}: ALUMINIUM: no caustic. Use the aluminium-safe wash.`,
    });
    expect(operationOf(await benchOf(host, one), 'hot-tank').word).toBe('ready to start');
    expect(host.sqlite.prepare('SELECT kind, casting_id, words FROM incident').all()).toEqual([
      {
        kind: 'near_miss',
        casting_id: aluminium.castings[0]?.castingId,
        words: `hot tank was loaded with ${tagOf(aluminium)}: ALUMINIUM: no caustic. Use the aluminium-safe wash.`,
      },
    ]);
  });

  it('takes no tag that is not here, no wash its ticket does not have, and nothing that is no wash', async () => {
    const { host, one } = await stripped('aluminium-wash', ALUMINIUM_HEAD);
    const code = async (wash: string, tag: number) =>
      (await host.refuse('floor/start-wash-load', { wash, tags: [tag] }, { as: 'JP' })).code;
    expect(await code('aluminium-wash', 99_999)).toBe('floor/no-such-tag');
    expect(await code('thermal-clean-blast', tagOf(one))).toBe('floor/no-such-wash-on-ticket');
    expect(await code('seat-cut', tagOf(one))).toBe('floor/no-such-wash');
  });
});

describe('floor/end-wash-load', () => {
  it('closes the wash of each, asks for the read-back, and is out once', async () => {
    const { host, one, two } = await stripped();
    const { washLoadId } = await host.send(
      'floor/start-wash-load',
      { wash: 'hot-tank', tags: [tagOf(one), tagOf(two)] },
      { as: 'JP' },
    );
    host.setClock('2026-03-09T14:40:00.000Z');
    await finish(host, two, 'hot-tank');
    const out = await host.send('floor/end-wash-load', { washLoadId }, { as: 'JP' });
    expect(out).toEqual({
      words: `The load is out: ${tagOf(one)}.`,
      warnings: [`${tagOf(one)}: read the number and the side back from the casting.`],
    });
    expect(operationOf(await benchOf(host, one), 'hot-tank')).toMatchObject({ word: 'done', minutes: 40 });
    expect((await host.send('floor/list-wash-loads', {}, { as: 'JP' })).loads).toEqual([]);
    expect((await host.refuse('floor/end-wash-load', { washLoadId }, { as: 'JP' })).code).toBe('floor/load-out');
  });
});
