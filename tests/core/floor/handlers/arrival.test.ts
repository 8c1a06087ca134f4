import { describe, expect, it } from 'vitest';
import { arrivalOf } from '#core/floor/handlers/arrival.ts';
import { readBenchHead } from '#core/floor/store/bench.ts';
import { startTestHost } from '#tests/kit/test-host.ts';
import { checkIn, IRON_HEAD } from '../builders.ts';

describe('arrivalOf', () => {
  it('tells what must be off before a wash, until it is off', async () => {
    const host = await startTestHost();
    const items = [
      { words: 'oil jets', counted: 6, removeBeforeWash: true },
      { words: 'knock sensor', missing: true, removeBeforeWash: true },
      { words: 'plug', counted: 1 },
    ];
    const job = await checkIn(host, { castings: [{ ...IRON_HEAD, items } as never], operations: [] });
    const read = () => arrivalOf(host.db, readBenchHead(host.db, job.castings[0]?.tagNo ?? 0));
    expect(read().removeFirst).toEqual(['oil jets']);
    await host.send('floor/remove-item', { itemId: read().items[0]?.id ?? 0 }, { as: 'JP' });
    expect(read().removeFirst).toEqual([]);
    expect(read().cameWith).toBe('6 oil jets, 1 plug');
  });

  it('writes one note for each thing worth knowing, none for what is empty', async () => {
    const host = await startTestHost();
    const casting = { ...IRON_HEAD, cameAssembled: true, earlierStamps: '40677' };
    const job = await checkIn(host, {
      castings: [casting as never],
      operations: [],
      ticket: { useWords: 'marine', historyWords: 'overheated once' },
    } as never);
    expect(arrivalOf(host.db, readBenchHead(host.db, job.castings[0]?.tagNo ?? 0)).notes).toEqual([
      'Came assembled: count the inside when it is taken apart.',
      'Use: marine',
      'History: overheated once',
      'Earlier stamps: 40677',
    ]);
  });
});
