/** The sign-off page shows only what is open. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { benchOf, checkIn, finish, IRON_HEAD, tick } from '../../floor/builders.ts';

describe('castings/get-sign-off', () => {
  it('says what is open, who may sign next, and for whom not', async () => {
    const host = await startTestHost();
    const items = [{ words: 'gallery plugs', expected: 2, counted: 2 }];
    const job = await checkIn(host, { castings: [{ ...IRON_HEAD, items } as never] });
    const castingId = job.castings[0]?.castingId ?? 0;
    const page = (as: string) => host.send('castings/get-sign-off', { castingId }, { as });
    expect(await page('BL')).toMatchObject({
      tag: job.castings[0]?.tagNo,
      placeWords: 'LEFT, head',
      needed: 1,
      nextPlace: 'first',
      notDone: [{ words: 'strip head' }, { words: 'hot tank' }],
      maySign: false,
      samePersonAllowed: false,
    });
    await tick(host, job, 'tag-and-photos');
    for (const code of ['disassemble-head', 'hot-tank']) await finish(host, job, code);
    const itemId = (await benchOf(host, job)).arrival.items[0]?.id ?? 0;
    await host.send('intake/count-pieces', { itemId, stage: 'assembly', count: 1 }, { as: 'JP' });
    expect(await page('BL')).toMatchObject({
      counts: ['2 gallery plugs out, 1 back. Find the rest before signing.'],
      maySign: false,
      whyNot: null,
    });
    await host.send('intake/count-pieces', { itemId, stage: 'assembly', count: 2 }, { as: 'JP' });
    expect(await page('BL')).toMatchObject({ counts: [], stops: [], maySign: true });
    expect(await page('JP')).toMatchObject({ maySign: false, whyNot: 'You worked on this one. Another person signs.' });
  });
});
