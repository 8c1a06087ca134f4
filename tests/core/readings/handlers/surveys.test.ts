import { describe, expect, it } from 'vitest';
import { readDb } from '#core/db/query.ts';
import { day } from '#core/kernel/days.ts';
import { readSheets } from '#core/readings/store/needed.ts';
import { WORKED_GRID } from '#tests/kit/flatness-cases.ts';
import { type Measuring, startMeasuring } from '#tests/kit/measuring.ts';

const dial = (point: string, typed: string) => ({
  quantity: 'deck-dial',
  point,
  stage: 'before' as const,
  typed,
  unit: 'in' as const,
});
const worked = WORKED_GRID.flatMap((row, r) =>
  row.map((z, c) => dial(`c${c + 1}r${r + 1}`, z > 0 ? `+${z}` : String(z))),
);

const keep = (shop: Measuring, rows: readonly unknown[]) =>
  shop.send('readings/add-readings', { casting: shop.casting, rows } as never, { as: 'DK' });
const ask = (shop: Measuring, face: string | null = null) =>
  shop.send('readings/get-deck-survey', { casting: shop.casting, face }, { as: 'DK' });

describe('readings/get-deck-survey', () => {
  it('surveys the worked head from steps typed on the dial: 0.0056 in, hollow, too much (exact mathematics)', async () => {
    const shop = await startMeasuring('NV-8');
    await keep(shop, worked);

    const survey = await ask(shop);

    expect(survey.step.words).toBe('tenths of a thou');
    expect(survey.before).toMatchObject({
      readWords: '15 of 15 points',
      flatness: { text: '0.0056', word: 'too much' },
      pattern: { word: 'hollow' },
    });
    expect(survey.before.points.find((it) => it.code === 'c3r2')).toMatchObject({
      steps: '−52',
      touches: 'lower',
      cell: { text: '−0.0052', marks: ['point set by the program'] },
    });
    expect(survey.after.readWords).toBe('0 of 15 points');
  });

  it('computes the deck flatness of the surfacing table, until somebody types it', async () => {
    const shop = await startMeasuring('NV-8');
    await keep(shop, worked);
    const flatness = async () => {
      const sheet = await shop.table('surface');
      return sheet.rows.find((row) => row.quantity === 'deck-flatness' && row.stage === 'before')?.cells[0];
    };

    expect(await flatness()).toMatchObject({ state: 'computed', text: '0.0056', word: 'too much' });
    await keep(shop, [{ quantity: 'deck-flatness', stage: 'before', typed: '0.0030 in' }]);
    expect(await flatness()).toMatchObject({ state: 'read', text: '0.0030', word: 'pass' });
  });

  it('corrects a point like any reading, and the flatness follows', async () => {
    const shop = await startMeasuring('NV-8');
    await keep(shop, worked);
    const reading = (await ask(shop)).before.points.find((it) => it.code === 'c3r2')?.cell.reading?.id;

    await shop.send('readings/supersede-reading', { reading, typed: '-42', unit: 'in' } as never, { as: 'DK' });

    const { before } = await ask(shop);
    expect(before.points.find((it) => it.code === 'c3r2')?.steps).toBe('−42');
    expect(before.flatness.value).toBeLessThan(56 * 2540);
  });

  it('lays the chosen grid out, and keeps its size', async () => {
    const shop = await startMeasuring('NV-8');
    const sized = [
      ['deck-columns', '11'],
      ['deck-rows', '7'],
      ['deck-length', '18 in'],
      ['deck-width', '6 in'],
    ].map(([quantity, typed]) => ({ quantity, stage: 'before', typed }));
    await keep(shop, sized);

    const { grid, before } = await ask(shop);

    expect(grid).toEqual({ columns: 11, rows: 7, length: 457_200_000, width: 152_400_000 });
    expect(before.points).toHaveLength(77);
  });

  it('keeps straightedge lines with where they gap', async () => {
    const shop = await startMeasuring('NV-8');
    const line = (point: string, typed: string) => [
      { quantity: 'deck-gap', point, stage: 'before', typed },
      { quantity: 'deck-gap-place', point, stage: 'before', typed: 'middle' },
    ];
    await keep(
      shop,
      ['along-1', 'along-2', 'along-3', 'diagonal-1', 'diagonal-2'].flatMap((it) => line(it, '.003 in')),
    );

    const { before } = await ask(shop);

    expect(before).toMatchObject({ basis: 'straightedge', flatness: { text: '0.0030' }, pattern: { word: 'hollow' } });
    expect(before.lines[0]).toMatchObject({
      words: 'Along, intake side',
      cell: { state: 'read' },
      place: { text: 'middle' },
    });
  });

  it('keeps no row for the points of a grid or the lines of a straightedge: they live in code', async () => {
    const shop = await startMeasuring('NV-8');

    const points = shop.sqlite
      .prepare(
        "SELECT count(*) FROM quantity_point p JOIN quantity q ON q.id = p.quantity_id WHERE q.code LIKE 'deck-%' AND q.code <> 'deck-to-cam'",
      )
      .pluck()
      .get();

    expect(points).toBe(0);
    expect((await ask(shop)).before.points).toHaveLength(15);
  });

  it('freezes the table of a surveyed face when the casting is signed off, though nothing was typed into it', async () => {
    const shop = await startMeasuring('NV-8');
    await keep(shop, worked);

    const sheets = readSheets(readDb(shop.sqlite), shop.casting, day('2026-03-09'));

    const flatness = sheets.flatMap((sheet) => sheet.rows).find((row) => row.quantity === 'deck-flatness');
    expect(flatness?.cells[0]?.text).toBe('0.0056');
  });

  it('has no such face, and no such point', async () => {
    const shop = await startMeasuring('NV-8');

    const face = await shop.refuse(
      'readings/get-deck-survey',
      { casting: shop.casting, face: 'left-deck' },
      { as: 'DK' },
    );
    const point = await shop.refuse(
      'readings/add-readings',
      { casting: shop.casting, rows: [dial('c99r1', '5')] } as never,
      {
        as: 'DK',
      },
    );

    expect([face.code, point.code]).toEqual(['readings/no-such-face', 'readings/no-such-cell']);
  });
});

describe('readings/get-preview', () => {
  it('shows what steps become before they are kept', async () => {
    const shop = await startMeasuring('NV-8');
    const trial = { casting: shop.casting, table: 'surface', ...dial('c1r1', '-28') };

    const preview = await shop.send('readings/get-preview', trial as never, { as: 'DK' });

    expect(preview).toMatchObject({ becomes: '= −0.0028 in', cell: { state: 'read', value: -28 * 2540 } });
  });
});
