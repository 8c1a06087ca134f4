import { describe, expect, it } from 'vitest';
import { writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';
import type { ReadingId } from '#core/kernel/ids.ts';
import { type Measuring, startMeasuring } from '#tests/kit/measuring.ts';

/** After rows that no command of this feature writes. */
const projectAnew = (shop: Measuring) =>
  shop.host.project(writeDb(shop.sqlite, { now: moment('2026-03-09T14:00:00.000Z'), by: null }), [shop.ticket]);

describe('readings/supersede-reading', () => {
  it('puts the new value in place and keeps the old one', async () => {
    const shop = await startMeasuring();
    const { readings } = (await shop.height('1E', '1.512')) as unknown as { readings: ReadingId[] };
    const [first] = readings;

    await shop.send(
      'readings/supersede-reading',
      { reading: first as ReadingId, typed: '1.521', reason: 'burr' },
      { as: 'DK' },
    );
    const cell = (await shop.table()).rows[0]?.cells[0];

    expect(cell).toMatchObject({ text: '1.521', reading: { reason: 'burr' } });
    expect(cell?.earlier.map((it) => it.typed)).toEqual(['1.512']);
  });

  it('lets only one of two people correct the same row', async () => {
    const shop = await startMeasuring();
    const { readings } = (await shop.height('1E', '1.512')) as unknown as { readings: ReadingId[] };
    const reading = readings[0] as ReadingId;

    await shop.send('readings/supersede-reading', { reading, typed: '1.521' }, { as: 'DK' });
    const refused = await shop.refuse('readings/supersede-reading', { reading, typed: '1.530' }, { as: 'BL' });

    expect(refused).toMatchObject({ kind: 'conflict', code: 'readings/changed-meanwhile' });
  });

  it('is closed once the casting is signed off, and open again when a lead reopened it', async () => {
    const shop = await startMeasuring();
    const { readings } = (await shop.height('1E', '1.512')) as unknown as { readings: ReadingId[] };
    const reading = readings[0] as ReadingId;
    shop.sqlite
      .prepare(
        `INSERT INTO sign_off (casting_id, ticket_id, place, staff_id, table_json, created_at, created_by)
         VALUES (?, ?, 'first', 7, '{}', '2026-03-09T14:00:00.000Z', 7)`,
      )
      .run(shop.casting, shop.ticket);
    projectAnew(shop);

    const refused = await shop.refuse('readings/supersede-reading', { reading, typed: '1.521' }, { as: 'DK' });
    const late = await shop.height('1I', '1.503', { takenAt: '2026-03-09T13:50:00.000Z' });
    shop.sqlite
      .prepare(
        `INSERT INTO sign_off_reopened (sign_off_id, ticket_id, reason, created_at, created_by)
         VALUES (1, ?, 'wrong valve', '2026-03-09T14:10:00.000Z', 7)`,
      )
      .run(shop.ticket);
    projectAnew(shop);

    expect(refused).toMatchObject({ kind: 'rule-broken', code: 'readings/signed-off' });
    expect(late).toBeDefined();
    expect((await shop.table()).rows[0]?.cells[1]?.marks).toContain('arrived after');
    await shop.send('readings/supersede-reading', { reading, typed: '1.521' }, { as: 'DK' });
    expect((await shop.table()).locked).toBe(false);
  });
});

describe('readings/take-back-reading', () => {
  it('makes the cell read as not measured, and keeps the row', async () => {
    const shop = await startMeasuring();
    const { readings } = (await shop.height('1E', '1.512')) as unknown as { readings: ReadingId[] };

    await shop.send('readings/take-back-reading', { reading: readings[0] as ReadingId }, { as: 'DK' });
    const sheet = await shop.table();

    expect(sheet.rows[0]?.cells[0]).toMatchObject({ state: 'not measured', text: '' });
    expect(sheet.columns[0]?.word).toBe('not measured');
    expect(shop.db.sql('SELECT id FROM reading')).toHaveLength(2);
  });

  it('refuses a reading that is not there', async () => {
    const shop = await startMeasuring();

    const refused = await shop.refuse('readings/take-back-reading', { reading: 4711 as ReadingId }, { as: 'DK' });

    expect(refused.kind).toBe('not-found');
  });
});

describe('readings/choose-reading', () => {
  it('lets one of two people’s figures stand and keeps both', async () => {
    const shop = await startMeasuring();
    const { readings } = (await shop.height('1E', '1.512')) as unknown as { readings: ReadingId[] };
    await shop.height('1E', '1.530');
    const before = await shop.table();

    await shop.send('readings/choose-reading', { reading: readings[0] as ReadingId }, { as: 'BL' });
    const after = await shop.table();

    expect(before.rows[0]?.cells[0]?.state).toBe('two readings');
    expect(after.rows[0]?.cells[0]).toMatchObject({ state: 'read', text: '1.512' });
    expect(after.rows[0]?.cells[0]?.earlier.map((it) => it.typed)).toEqual(['taken back', '1.530']);
  });

  it('has nothing to choose where one reading stands', async () => {
    const shop = await startMeasuring();
    const { readings } = (await shop.height('1E', '1.512')) as unknown as { readings: ReadingId[] };

    const refused = await shop.refuse('readings/choose-reading', { reading: readings[0] as ReadingId }, { as: 'BL' });

    expect(refused.code).toBe('readings/nothing-to-choose');
  });

  it('asks nothing where both figures lie within their gauges’ doubt and are judged alike', async () => {
    const shop = await startMeasuring();
    const tool = (await shop.send('tools/list-tools', {}, { as: 'DK' })).find((it) => it.name === 'G09')?.id;
    await shop.height('1E', '1.518', { tool });
    await shop.height('1E', '1.520', { tool });

    expect((await shop.table()).rows[0]?.cells[0]).toMatchObject({ state: 'read', text: '1.520' });
  });
});
