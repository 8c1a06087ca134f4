/** One quantity more is a few lines of data: screen, verdict, build sheet and export follow by themselves. */
import { describe, expect, it } from 'vitest';
import { bringInQuantity } from '#tests/kit/bring-in-quantity.ts';
import { startMeasuring } from '#tests/kit/measuring.ts';

/** A read quantity, and one that the program computes by a formula it has. */
async function startWithMore() {
  const head = await startMeasuring();
  bringInQuantity(head.sqlite, 'seats', { code: 'plug-thread-depth', words: 'plug thread depth', spotKind: 'valve' });
  bringInQuantity(head.sqlite, 'surface', {
    code: 'left-by-ours',
    words: 'left by our count',
    derived: 'stock-removed',
  });
  const limit = {
    unit: 'in' as const,
    side: 'any' as const,
    stage: 'after' as const,
    sourceWords: 'note on the bench',
  };
  const own = { ...limit, casting: head.casting };
  await head.send('limits/add-job-limit', { ...own, quantity: 'plug-thread-depth', high: '0.750' }, { as: 'DK' });
  await head.send('limits/add-job-limit', { ...own, quantity: 'left-by-ours', high: '0.005' }, { as: 'DK' });
  const spot = await head.spot('1E');
  const after = { stage: 'after', unit: 'in' } as const;
  await head.send(
    'readings/add-readings',
    {
      casting: head.casting,
      rows: [
        { ...after, quantity: 'plug-thread-depth', typed: '0.755', spot },
        { ...after, quantity: 'thickness', typed: '3.9600', stage: 'before' },
        { ...after, quantity: 'thickness', typed: '3.9539' },
      ],
    },
    { as: 'DK' },
  );
  return head;
}

describe('one quantity more, as data', () => {
  it('stands on the bench screen and is judged there', async () => {
    const head = await startWithMore();

    const seats = await head.table('seats');
    const read = seats.rows.find((row) => row.quantity === 'plug-thread-depth')?.cells[0];
    const computed = (await head.table('surface')).rows.find((row) => row.quantity === 'left-by-ours')?.cells[0];

    expect(read).toMatchObject({ state: 'read', text: '0.755', verdict: { name: 'fail', direction: 'over' } });
    expect(computed).toMatchObject({ state: 'computed', value: 6100 * 25.4, verdict: { name: 'fail' } });
    expect(seats.toDo.map((it) => it.words).join()).toContain('plug thread depth 0.755');
  });

  it('prints on the build sheet with its verdict', async () => {
    const head = await startWithMore();

    const wish = { paper: 'build-sheet', castingId: head.casting } as never;
    const { data } = await head.send('sheets/get-paper', { wish }, { as: 'BL' });
    const printed = JSON.stringify(data);

    expect(printed).toContain('Plug thread depth');
    expect(printed).toContain('0.755');
    expect(printed).toContain('Left by our count');
    expect(printed).toContain('0.0061');
  });

  it('goes into the exports with its limit and verdict', async () => {
    const head = await startWithMore();

    const { text } = await head.send('readings/export-readings', { casting: head.casting, as: 'json' }, { as: 'DK' });
    const { rows } = JSON.parse(text) as { rows: Record<string, unknown>[] };
    const row = (quantity: string) => rows.find((it) => it.quantity === quantity && it.value !== null);

    expect(row('plug-thread-depth')).toMatchObject({ value: '0.755', unit: 'in', high: '0.750', verdict: 'fail' });
    expect(row('left-by-ours')).toMatchObject({ measured: false, verdict: 'fail', limit_source: 'note on the bench' });
  });
});
