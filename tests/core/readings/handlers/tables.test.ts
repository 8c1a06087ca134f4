import { describe, expect, it } from 'vitest';
import { startMeasuring } from '#tests/kit/measuring.ts';

describe('readings/get-table', () => {
  it('gives the head, the limits with their source, the gauges and how the row is typed', async () => {
    const shop = await startMeasuring();

    const sheet = await shop.table();

    expect(sheet.casting).toMatchObject({ kind: 'head', typeCode: 'LO-4' });
    expect(sheet.rows.find((row) => row.quantity === 'height-with-shim')?.limits[0]).toMatchObject({
      text: '1.490 – 1.510',
      targetText: '1.500',
      source: 'casting type sheet [demo]',
      checked: false,
    });
    expect(sheet.rows[0]).toMatchObject({ entry: { rule: 'last_digits', digits: 3, decimals: 3 }, unit: 'in' });
    expect(sheet.tools.find((tool) => tool.name === 'G09')).toMatchObject({ kind: 'spring-height micrometer' });
  });

  it('keeps the guard band for a ticket that wants certified figures', async () => {
    const shop = await startMeasuring('LO-4', { certified: true });

    expect((await shop.table()).guard).toBe(true);
  });

  it('has no table of that name', async () => {
    const shop = await startMeasuring();

    const refused = await shop.refuse('readings/get-table', { casting: shop.casting, table: 'none' }, { as: 'DK' });

    expect(refused.code).toBe('readings/no-such-table');
  });
});

describe('readings/list-tables', () => {
  it('lists the tables a head can have, with how they stand', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.518');

    const tables = await shop.send('readings/list-tables', { casting: shop.casting }, { as: 'DK' });

    expect(tables[0]).toEqual({
      code: 'heights',
      words: 'Installed height',
      summary: '1 pass, 7 not measured',
      operation: 'installed-height',
    });
    expect(tables.map((it) => it.code)).toContain('surface');
    expect(tables.map((it) => it.code)).not.toContain('bores');
  });
});

describe('readings/get-preview', () => {
  const at = async (shop: Awaited<ReturnType<typeof startMeasuring>>, typed: string) =>
    shop.send(
      'readings/get-preview',
      {
        casting: shop.casting,
        table: 'heights',
        quantity: 'installed-height',
        spot: await shop.spot('1E'),
        stage: 'before',
        typed,
      },
      { as: 'DK' },
    );

  it('says what the figure becomes and would do, and keeps nothing', async () => {
    const shop = await startMeasuring();

    const preview = await at(shop, '518');

    expect(preview).toMatchObject({
      becomes: '= 1.518 in',
      doubt: null,
      sentence: '0.015 under it makes 1.503 in, load 59.4 lbf',
      column: { word: 'pass' },
    });
    expect(shop.db.sql('SELECT id FROM reading')).toEqual([]);
  });

  it('asks, doubts and refuses as keeping would', async () => {
    const shop = await startMeasuring();

    expect((await at(shop, '15')).read.kind).toBe('ask');
    expect((await at(shop, '15.18')).doubt?.meant).toMatchObject({ typed: '1.518' });
    expect((await at(shop, 'x')).read.kind).toBe('refused');
    expect((await at(shop, '')).read.kind).toBe('empty');
  });
});

describe('readings/get-shim-choice', () => {
  it('gives every stack, best first, with height, error and load', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.531');

    const choice = await shop.send(
      'readings/get-shim-choice',
      { casting: shop.casting, spot: await shop.spot('1E') },
      { as: 'DK' },
    );

    expect(choice.best?.typed).toBe('0.030');
    expect(choice.candidates[0]).toEqual({
      text: '0.030',
      heightText: '1.501',
      errorText: '+0.001',
      loadText: '59.8 lbf',
      within: true,
    });
    expect(choice.candidates.length).toBeGreaterThanOrEqual(5);
  });
});

describe('readings/decide-reading', () => {
  const cell = async (shop: Awaited<ReturnType<typeof startMeasuring>>) => ({
    casting: shop.casting,
    quantity: 'height-with-shim',
    spot: await shop.spot('1E'),
    stage: 'after' as const,
    accept: true,
    words: 'customer wants it so',
  });

  it('prints a lead’s yes beside a figure that fails, and leaves the verdict', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.480');

    await shop.send('readings/decide-reading', await cell(shop), { as: 'BL' });
    const sheet = await shop.table();

    expect(sheet.rows[2]?.cells[0]).toMatchObject({ word: 'too short', decision: { accepted: true, by: 'BL' } });
    expect(sheet.toDo).toEqual([]);
  });

  it('is void when the value changes', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.480');
    await shop.send('readings/decide-reading', await cell(shop), { as: 'BL' });
    const reading = (await shop.table()).rows[0]?.cells[0]?.reading?.id;

    await shop.send('readings/supersede-reading', { reading: reading as never, typed: '1.470' }, { as: 'DK' });

    expect((await shop.table()).rows[2]?.cells[0]?.decision).toBeNull();
  });

  it('is a lead’s, and only for what fails or is too close', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.500');

    const passing = await shop.refuse('readings/decide-reading', await cell(shop), { as: 'BL' });
    const machinist = await shop.refuse('readings/decide-reading', await cell(shop), { as: 'JP' });

    expect(passing.code).toBe('readings/nothing-to-decide');
    expect(machinist.kind).toBe('not-allowed');
  });
});

describe('readings/show-row', () => {
  it('switches a row on for this casting only', async () => {
    const shop = await startMeasuring();
    const row = { casting: shop.casting, table: 'heights', quantity: 'old-shim', stage: 'before' as const };

    await shop.send('readings/show-row', { ...row, shown: true }, { as: 'DK' });
    const shown = (await shop.table()).rows.find((it) => it.quantity === 'old-shim')?.shown;
    const refused = await shop.refuse('readings/show-row', { ...row, quantity: 'bore', shown: true }, { as: 'DK' });

    expect(shown).toBe(true);
    expect(refused.code).toBe('readings/no-such-row');
  });
});
