import { beforeEach, describe, expect, it } from 'vitest';
import { IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});

describe('tickets/quick-ticket', () => {
  it('takes name, words and price without a tag', async () => {
    const made = await t.send(
      'tickets/quick-ticket',
      { customer: { add: { name: 'Ossian Wherrytun' } }, words: 'one stud out', price: 280_000 },
      { as: 'TV' },
    );
    expect(made).toMatchObject({ number: 20001, castings: [], depositAsked: 0 });
    const page = await t.send('tickets/get-ticket', { number: 20001 }, { as: 'TV' });
    expect(page).toMatchObject({ quick: true, lines: [{ words: 'one stud out', amount: 2800 }] });
    expect(page.notReady).not.toContain('No casting is on the ticket.');
  });

  it('gives a tag to what stays', async () => {
    const made = await t.send(
      'tickets/quick-ticket',
      {
        customer: { add: { name: 'Ossian Wherrytun' } },
        words: 'skim a flywheel',
        price: 600_000,
        casting: IRON_HEAD,
        promise: { day: '2026-03-10' },
      },
      { as: 'TV' },
    );
    expect(made.castings[0]?.tagNo).toBe(40_001);
    expect(made.promise?.words).toBe('Tue 10 Mar 16:30');
  });

  it('needs words and a price', async () => {
    const error = await t.refuse(
      'tickets/quick-ticket',
      { customer: { add: { name: 'A' } }, words: ' ', price: -1 },
      { as: 'TV' },
    );
    expect(error.fields).toEqual({ words: 'Write what is done.', price: 'A price is not below 0.' });
  });
});
