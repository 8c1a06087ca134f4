/** Rows of the first page. */
import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { checkIn, IRON_HEAD } from '../../floor/builders.ts';

describe('promisedRow', () => {
  it('prints three tags and counts the others, names whom to ask for', async () => {
    const host = await startTestHost();
    await checkIn(host, {
      castings: [1, 2, 3, 4, 5].map(() => ({ ...IRON_HEAD, position: 'not_known' as const })),
      operations: [],
      ...({ promise: { day: '2026-03-09', minute: 1020 }, rush: 2500 } as object),
    } as never);
    const { promisedToday } = await host.send('home/get-counter', {}, { as: 'TV' });
    const [row] = promisedToday.rows;
    expect([row?.tags.length, row?.moreTags, row?.person]).toEqual([3, 2, 'Petra Lindqvist']);
    expect(row?.chips.map((chip) => chip.words)).toEqual(['RUSH']);
    expect(row?.tags[0]?.metal.word).toBe('IRON');
  });
});
