import { describe, expect, it } from 'vitest';
import { sessionOf } from '#core/host/session.ts';
import type { StaffId } from '#core/kernel/ids.ts';
import expected from '#demo-data/expected.json' with { type: 'json' };
import { startMeasuring } from '#tests/kit/measuring.ts';

const S01 = (expected.stories as unknown as { S01: { shims: { valves: { valve: string; measured: string }[] } } }).S01
  .shims.valves;

describe('readings/add-readings', () => {
  it('keeps what was typed and judges it: the heights of S01 (regression baseline, invented data)', async () => {
    const shop = await startMeasuring();
    const rows = await Promise.all(
      S01.map(async ({ valve, measured }) => ({
        quantity: 'installed-height',
        spot: await shop.spot(valve),
        stage: 'before' as const,
        typed: measured,
      })),
    );

    await shop.send('readings/add-readings', { casting: shop.casting, rows }, { as: 'DK' });
    const sheet = await shop.table();

    expect(sheet.summary).toBe('8 pass');
    expect(sheet.pickingText).toBe('3 × 0.015, 3 × 0.030');
    expect(sheet.spread).toBe('0.009 in');
    expect(sheet.rows[0]?.cells.map((cell) => cell.text)).toEqual(S01.map((it) => it.measured));
    expect(sheet.rows[0]?.cells[0]?.reading).toMatchObject({ typed: '1.518', unit: 'in', by: 'DK' });
  });

  it('reads the last three digits near the target, and keeps the whole figure', async () => {
    const shop = await startMeasuring();

    await shop.height('1E', '512');

    expect((await shop.table()).rows[0]?.cells[0]?.reading).toMatchObject({ typed: '1.512', mark: 'last_digits' });
  });

  it('takes millimetres on an inch head, shown in their own unit', async () => {
    const shop = await startMeasuring();

    await shop.height('1E', '38.1mm');
    const sheet = await shop.table();

    expect(sheet.rows[0]?.cells[0]).toMatchObject({ text: '38.1 mm', unit: 'mm' });
    expect(sheet.columns[0]?.word).toBe('pass');
  });

  it('asks about a bare 30 with both readings, and keeps nothing', async () => {
    const shop = await startMeasuring();
    const spot = await shop.spot('1E');
    const row = { quantity: 'margin', spot, stage: 'after' as const, typed: '30' };

    const refused = await shop.refuse('readings/add-readings', { casting: shop.casting, rows: [row] }, { as: 'DK' });

    expect(refused).toMatchObject({ kind: 'invalid-input', code: 'readings/ask' });
    expect(refused.fields).toHaveProperty(['rows.0.typed']);
    expect(refused.facts?.choices).toMatchObject([{ typed: '0.030 in' }, { typed: '0.30 mm' }]);
    expect(shop.db.sql('SELECT id FROM reading')).toEqual([]);
  });

  it('asks about an unlikely figure once, and keeps it when the person is sure', async () => {
    const shop = await startMeasuring();
    const row = { quantity: 'installed-height', spot: await shop.spot('1E'), stage: 'before' as const, typed: '15.12' };

    const refused = await shop.refuse('readings/add-readings', { casting: shop.casting, rows: [row] }, { as: 'DK' });
    await shop.send('readings/add-readings', { casting: shop.casting, rows: [{ ...row, sure: true }] }, { as: 'DK' });

    expect(refused.code).toBe('readings/unlikely');
    expect(refused.message).toBe('15.12 in is ten times the target, 1.50 in. Did you mean 1.512 in?');
    expect((await shop.table()).columns[0]?.word).toBe('too tall');
  });

  it('keeps all rows or none', async () => {
    const shop = await startMeasuring();
    const spot = await shop.spot('1E');
    const rows = [
      { quantity: 'installed-height', spot, stage: 'before' as const, typed: '1.512' },
      { quantity: 'margin', spot, stage: 'after' as const, typed: 'about a finger' },
    ];

    const refused = await shop.refuse('readings/add-readings', { casting: shop.casting, rows }, { as: 'DK' });

    expect(refused).toMatchObject({ code: 'measure/not-a-figure', fields: { 'rows.1.typed': expect.any(String) } });
    expect(shop.db.sql('SELECT id FROM reading')).toEqual([]);
  });

  it.each([
    ['a computed quantity', { quantity: 'seat-load', typed: '59.4' }, 'readings/computed'],
    ['a quantity nobody knows', { quantity: 'colour', typed: '5' }, 'readings/no-such-cell'],
    ['a quantity without its point', { quantity: 'guide-id', typed: '0.3438' }, 'readings/no-such-cell'],
    ['a gauge that is not there', { quantity: 'margin', typed: '0.050', tool: 999 }, 'readings/no-such-tool'],
    ['a gauge for something else', { quantity: 'margin', typed: '0.050', tool: 11 }, 'readings/wrong-tool'],
    ['shims the shop has not', { quantity: 'shims-fitted', typed: '0.020' }, 'readings/no-such-shim'],
    ['another unit', { quantity: 'margin', typed: '5 psi' }, 'measure/wrong-unit'],
    ['ten thousand digits', { quantity: 'margin', typed: '1'.repeat(10_000) }, 'host/bad-input'],
  ])('refuses %s with a sentence', async (_, words, code) => {
    const shop = await startMeasuring();
    const row = { spot: await shop.spot('1E'), stage: 'after' as const, ...words };

    const refused = await shop.refuse('readings/add-readings', { casting: shop.casting, rows: [row] } as never, {
      as: 'DK',
    });

    expect(refused.code).toBe(code);
    expect(refused.message).toMatch(/\.$/);
  });

  it('keeps a word of a list, and refuses one that is not in it', async () => {
    const shop = await startMeasuring();
    const crack = (typed: string) => ({
      casting: shop.casting,
      rows: [{ quantity: 'crack-result', stage: 'after' as const, typed }],
    });

    await shop.send('readings/add-readings', crack('none found'), { as: 'DK' });
    const refused = await shop.refuse('readings/add-readings', crack('fine'), { as: 'DK' });

    expect(refused.code).toBe('readings/no-such-choice');
    expect(shop.db.sql('SELECT typed, kind FROM reading')).toEqual([{ typed: 'none found', kind: 'choice' }]);
  });

  it('never lets a row be changed or deleted', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.512');

    expect(() => shop.sqlite.exec("UPDATE reading SET typed = '1.500'")).toThrow();
    expect(() => shop.sqlite.exec('DELETE FROM reading')).toThrow();
  });

  it('leaves who, what and when in activity', async () => {
    const shop = await startMeasuring();

    await shop.height('1E', '1.512');
    const [line] = shop.db.sql<{ body: string }>('SELECT body FROM activity_text ORDER BY activity_id DESC LIMIT 1');

    expect(JSON.parse(line?.body ?? '{}').words).toBe('Read height read 1E 1.512');
  });

  it('is not for the books', async () => {
    const shop = await startMeasuring();
    const books = sessionOf({ ...shop.as('MN'), staff: shop.as('MN').staff as StaffId, roles: ['books'] });

    const refused = await shop.refuse(
      'readings/add-readings',
      { casting: shop.casting, rows: [{ quantity: 'thickness', stage: 'before', typed: '2.9500' }] },
      { as: books },
    );

    expect(refused.kind).toBe('not-allowed');
  });
});

describe('readings/fit-shims', () => {
  it('writes the chosen shims of every valve that passes with them', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.518');
    await shop.height('1I', '1.400');

    const { words } = await shop.send('readings/fit-shims', { casting: shop.casting }, { as: 'DK' });
    const again = await shop.refuse('readings/fit-shims', { casting: shop.casting }, { as: 'DK' });
    const sheet = await shop.table();

    expect(words).toBe('1E 0.015');
    expect(again.code).toBe('readings/nothing-to-fit');
    expect(sheet.rows[2]?.cells[0]).toMatchObject({ state: 'computed', text: '1.503', word: 'pass' });
    expect(sheet.toDo[0]?.label).toBe('1I');
  });
});

describe('readings/mark-not-applicable', () => {
  it('shows a dash, and takes the place of what was read there', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.512');
    const cell = { quantity: 'installed-height', spot: await shop.spot('1E'), stage: 'before' as const };

    await shop.send('readings/mark-not-applicable', { casting: shop.casting, cells: [cell] }, { as: 'DK' });
    const shown = (await shop.table()).rows[0]?.cells[0];

    expect(shown).toMatchObject({ state: 'not applicable', text: '–', verdict: null });
    expect(shown?.earlier.map((it) => it.typed)).toEqual(['1.512']);
  });
});
