/** Fits, finish and tests through the door that screens use. */
import { describe, expect, it } from 'vitest';
import { startMeasuring } from '#tests/kit/measuring.ts';

type Measuring = Awaited<ReturnType<typeof startMeasuring>>;
const read = (it: Measuring, rows: readonly Readonly<Record<string, unknown>>[]) =>
  it.send(
    'readings/add-readings',
    { casting: it.casting, rows: rows.map((row) => ({ stage: 'after', ...row })) } as never,
    {
      as: 'DK',
    },
  );
const cell = async (it: Measuring, table: string, quantity: string, column = 0) =>
  (await it.table(table)).rows.find((row) => row.quantity === quantity)?.cells[column];

const kindId = (it: Measuring, code: string): number =>
  (it.sqlite.prepare('SELECT id FROM operation_kind WHERE code = ?').get(code) as { id: number }).id;

describe('readings/get-table, finish', () => {
  it('judges by the gasket the ticket says, and says for which', async () => {
    const head = await startMeasuring('LO-4', { gasket: 'mls' });
    await read(head, [{ quantity: 'finish-ra', typed: '45 uin' }]);
    expect(await cell(head, 'finish', 'finish-ra')).toMatchObject({ word: 'ask gasket maker' });
    const row = (await head.table('finish')).rows.find((it) => it.quantity === 'finish-ra');
    expect(row?.limits[0]).toMatchObject({ text: 'at most 60', source: expect.stringMatching(/^MLS: shop default/) });
  });

  it('lets a lead accept what the gasket maker said, and keeps the verdict beside it', async () => {
    const head = await startMeasuring('LO-4', { gasket: 'mls' });
    await read(head, [{ quantity: 'finish-ra', typed: '45 uin' }]);
    await head.send(
      'readings/decide-reading',
      { casting: head.casting, quantity: 'finish-ra', stage: 'after', accept: true, words: 'maker’s sheet: up to 50' },
      { as: 'DK' },
    );
    expect(await cell(head, 'finish', 'finish-ra')).toMatchObject({
      word: 'ask gasket maker',
      decision: { accepted: true, words: 'maker’s sheet: up to 50' },
    });
  });

  it('keeps a figure of a card as compared, whatever was sent', async () => {
    const head = await startMeasuring('LO-4', { gasket: 'composition' });
    await read(head, [{ quantity: 'finish-card', typed: '60 uin' }]);
    expect(await cell(head, 'finish', 'finish-card')).toMatchObject({ reading: { mark: 'compared' } });
    expect(await cell(head, 'finish', 'finish-ra')).toMatchObject({ state: 'computed', word: 'pass' });
  });
});

describe('readings/get-table, fits', () => {
  it('says the heat for an insert with the cautions beside it', async () => {
    const head = await startMeasuring('CF-4');
    const spot = await head.spot('1E');
    await read(head, [
      { quantity: 'insert-metal', typed: 'grey iron' },
      { quantity: 'room-temperature', typed: '20', unit: 'degC' },
      { quantity: 'insert-chilled', typed: '-78', unit: 'degC' },
      { quantity: 'counterbore-id', typed: '41.275 mm', spot, stage: 'before' },
      { quantity: 'insert-od', typed: '41.402 mm', spot, stage: 'before' },
    ]);
    const sheet = await head.table('insert-heat');
    expect(sheet.rows.find((row) => row.quantity === 'insert-heat-most')?.cells[0]).toMatchObject({
      text: '168',
      word: 'pass',
    });
    expect(sheet.notes.join(' ')).toMatch(/HOT.*200 °C.*Dry ice.*suffocate.*Local codes/);
    const column = (await head.table('insert-fits')).columns.findIndex((it) => it.label === '1E');
    expect(await cell(head, 'insert-fits', 'insert-interference', column)).toMatchObject({
      text: '0.127',
      word: 'pass',
    });
  });
});

describe('readings/list-tables', () => {
  it('begins with the tables of this job’s operations, then those with readings', async () => {
    const head = await startMeasuring('LO-4');
    await head.send(
      'pricing/add-operations',
      {
        ticketId: head.ticket,
        castingId: head.casting,
        operations: [{ operationKindId: kindId(head, 'pressure-test') }],
      },
      { as: 'TV' },
    );
    await read(head, [{ quantity: 'finish-ra', typed: '45 uin' }]);
    const codes = (await head.send('readings/list-tables', { casting: head.casting }, { as: 'DK' })).map(
      (it) => it.code,
    );
    expect(codes[0]).toBe('leak-test');
    expect(codes.slice(1, 3)).toEqual(['surface', 'finish']);
    expect(codes.indexOf('heights')).toBeGreaterThan(2);
  });

  it('offers no magnet check on aluminium, and lifting on everything', async () => {
    const codes = async (type: string) => {
      const { send, casting } = await startMeasuring(type);
      return (await send('readings/list-tables', { casting }, { as: 'DK' })).map((it) => it.code);
    };
    const [aluminium, iron] = [await codes('CF-4'), await codes('LO-4')];
    expect(aluminium).toEqual(expect.arrayContaining(['crack-dye', 'leak-test', 'cam-bores', 'lifting', 'finish']));
    expect(aluminium).not.toContain('crack-magnet');
    expect(iron).toContain('crack-magnet');
    expect(iron).not.toContain('cam-bores');
  });
});
