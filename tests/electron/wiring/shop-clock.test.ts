import { describe, expect, it } from 'vitest';
import { openDatabase } from '#core/db/open-database.ts';
import { clockOf } from '#electron/wiring/shop-clock.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('clockOf', () => {
  it("is the computer's clock in a shop", () => {
    const clock = clockOf(openDatabase(':memory:'), () => Date.parse('2026-11-25T09:00:00.000Z'));

    expect(clock().toISOString()).toBe('2026-11-25T09:00:00.000Z');
  });

  it("goes on from the day the story ends in the practice shop, at the computer's pace", async () => {
    const { sqlite } = await startTestHost();
    let now = 1_000_000;
    const clock = clockOf(sqlite, () => now);
    now += 60_000;

    expect(clock().toISOString()).toBe('2027-05-14T13:42:00.000Z');
  });

  it('never goes behind what was done last', async () => {
    const host = await startTestHost();
    host.setClock('2027-05-20T10:00:00.000Z');
    await host.send('promises/add-holiday', { day: '2027-07-01', words: 'Regatta' });

    expect(clockOf(host.sqlite, () => 5)().toISOString()).toBe('2027-05-20T10:00:00.000Z');
  });
});
