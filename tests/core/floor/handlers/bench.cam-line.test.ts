/** The cam line computed from its journals decides with the deck, and crack and leak tests open with their own tables. */
import { describe, expect, it } from 'vitest';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';
import { ALUMINIUM_HEAD, benchOf, checkIn, IRON_HEAD, operationOf } from '../builders.ts';

async function overheadCam(host: TestHost) {
  const job = await checkIn(host, {
    castings: [ALUMINIUM_HEAD],
    operations: ['cam-bore-check', 'straighten', 'surface-head', 'pressure-test'],
  });
  const casting = (job.castings[0]?.castingId ?? 0) as never;
  const table = (code: string) => host.send('readings/get-table', { casting, table: code }, { as: 'JP' });
  const read = (rows: readonly Readonly<Record<string, unknown>>[]) =>
    host.send(
      'readings/add-readings',
      { casting, rows: rows.map((row) => ({ stage: 'after', sure: true, ...row })) } as never,
      { as: 'JP' },
    );
  /** The same figures, front to rear, for each camshaft. */
  const line = (sheet: Sheet, figures: readonly string[]) =>
    read(
      sheet.columns.map((column) => ({
        quantity: 'cam-line-at',
        spot: column.spot,
        typed: `${figures[column.benchOrder - 1]} mm`,
      })),
    );
  return { job, table, read, line };
}

describe('floor/get-bench with a cam line read journal by journal', () => {
  it('a deck that is bowed over a straight cam line is not bent (common practice, no source)', async () => {
    const host = await startTestHost();
    const { job, table, read, line } = await overheadCam(host);
    const bowed = async () => (await benchOf(host, job)).warnings.filter((it) => it.includes('bowed'));
    await read([{ quantity: 'deck-flatness', stage: 'before', typed: '0.50 mm' }]);
    expect(await bowed()).toEqual([expect.stringContaining('Measure cam line')]);
    await line(await table('cam-bores'), ['0.000', '0.004', '0.000', '0.004']);
    expect(await bowed()).toEqual([expect.stringContaining('do not bend it')]);
  });

  it('both bowed alike: straighten before surfacing (common practice, no source)', async () => {
    const host = await startTestHost();
    const { job, table, read, line } = await overheadCam(host);
    await read([{ quantity: 'deck-flatness', stage: 'before', typed: '0.50 mm' }]);
    await line(await table('cam-bores'), ['0.000', '0.120', '0.120', '0.000']);
    const { warnings } = await benchOf(host, job);
    expect(warnings).toContain('Deck and cam line are both bowed: straighten before surfacing.');
    const sheet = await table('surface');
    expect(sheet.rows.find((row) => row.key === 'cam-line||before')?.cells[0]?.text).toBe('');
    expect((await table('cam-line')).rows.find((row) => row.key === 'cam-line||after')?.cells[0]).toMatchObject({
      text: '0.120',
      word: 'too much',
      state: 'computed',
    });
  });

  it('the cam line check opens with the journals of the head, and with the one line where it has none', async () => {
    const host = await startTestHost();
    const { job } = await overheadCam(host);
    const page = await benchOf(host, job);
    expect(operationOf(page, 'cam-bore-check').after).toMatchObject({ table: 'cam-bores', of: 1, done: 0 });
    host.sqlite.prepare("UPDATE spot SET kind = 'lifter' WHERE kind = 'cam_journal'").run();
    expect(operationOf(await benchOf(host, job), 'cam-bore-check').after.table).toBe('cam-line');
    expect((await benchOf(host, job)).tables.map((it) => it.code)).not.toContain('cam-bores');
  });
});

describe('floor/get-bench with a pressure test', () => {
  it('opens with its table, and still asks for the result on the operation', async () => {
    const host = await startTestHost();
    const { job } = await overheadCam(host);
    const row = operationOf(await benchOf(host, job), 'pressure-test');
    expect(row.after.table).toBe('leak-test');
    expect(row.results.map((it) => it.quantity)).toEqual(['crack-result']);
  });

  it('a magnet check opens with its table on iron', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { castings: [IRON_HEAD], operations: ['mag-particle-check'] });
    const row = operationOf(await benchOf(host, job), 'mag-particle-check');
    expect(row.after.table).toBe('crack-magnet');
    expect(row.results.map((it) => it.quantity)).toEqual(['crack-result', 'crack-map']);
  });
});
