/** From typed readings to the bench and the customer's paper: what cutting heads and a block changes elsewhere in the engine. */
import { describe, expect, it } from 'vitest';
import type { CastingId } from '#core/kernel/ids.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

type Row = readonly [quantity: string, typed: string, stage?: 'before' | 'after', place?: string];
type Piece = Readonly<{ type: string; position: 'left' | 'right' | 'single'; pair?: number }>;

/** Castings of the practice shop's V eight on one ticket, with their tables and readings by name. */
async function startCut(...pieces: readonly Piece[]) {
  const host = await startTestHost();
  const { castings } = await host.send(
    'tickets/check-in-ticket',
    {
      customer: { add: { name: 'Ossian Wherrytun' } },
      ticket: {},
      castings: pieces.map((piece) => ({ ...piece, material: 'iron_grey', materialHow: 'magnet' })),
      signed: { how: 'on_paper', by: 'Ossian Wherrytun' },
    } as never,
    { as: 'TV' },
  );
  const at = (index: number) => castings[index] as { castingId: CastingId; tagNo: number };
  const table = (index: number, code: string) =>
    host.send('readings/get-table', { casting: at(index).castingId, table: code }, { as: 'DK' });
  return {
    ...host,
    at,
    table,
    async cell(index: number, code: string, quantity: string, stage: 'before' | 'after' = 'after') {
      const row = (await table(index, code)).rows.find((it) => it.quantity === quantity && it.stage === stage);
      return row?.cells[0];
    },
    async read(index: number, code: string, ...rows: readonly Row[]) {
      const { columns } = await table(index, code);
      const typed = rows.map(([quantity, text, stage = 'after', place]) => ({
        quantity,
        typed: text,
        stage,
        unit: 'in' as const,
        spot: place === undefined ? null : (columns.find((it) => it.label === place)?.spot ?? null),
      }));
      await host.send('readings/add-readings', { casting: at(index).castingId, rows: typed }, { as: 'DK' });
    },
  };
}

const PAIR: Piece[] = [
  { type: 'NV-8', position: 'left', pair: 1 },
  { type: 'NV-8', position: 'right', pair: 1 },
];

describe('what a cut changes, through the whole program', () => {
  it('a pair cut unlike: ratio, manifold and the other head stand on the bench (exact mathematics)', async () => {
    const shop = await startCut(...PAIR);
    await shop.read(0, 'surface', ['thickness', '3.9600', 'before'], ['thickness', '3.9500']);
    await shop.read(1, 'surface', ['thickness', '3.9750', 'before'], ['thickness', '3.9500']);

    expect(await shop.cell(1, 'effects', 'compression-ratio', 'before')).toMatchObject({ text: '9.48' });
    expect(await shop.cell(1, 'effects', 'intake-face-cut')).toMatchObject({ text: '0.0308' });
    const pair = await shop.cell(1, 'effects', 'pair-difference');

    expect(pair).toMatchObject({ text: '0.0150', verdict: { name: 'fail' } });
    expect(pair?.marks.join()).toBe(
      `the other head ${shop.at(0).tagNo} lost .0100 in, this one .0250 in: cut both alike`,
    );
  });

  it('the build sheet prints the consequences with their small print', async () => {
    const shop = await startCut(...PAIR);
    await shop.read(0, 'surface', ['thickness', '3.9600', 'before'], ['thickness', '3.9350']);

    const wish = { paper: 'build-sheet', castingId: shop.at(0).castingId } as never;
    const { data } = await shop.send('sheets/get-paper', { wish }, { as: 'BL' });
    const printed = JSON.stringify(data).toLowerCase();

    for (const words of ['head sits lower by', 'compression ratio', 'off each intake face', 'surfacing only']) {
      expect(printed).toContain(words);
    }
  });

  it('a V block: eight corners in two banks, one height to finish at, each bank its own cut (exact arithmetic)', async () => {
    const shop = await startCut({ type: 'NV-8B', position: 'single' });
    const corners = (await shop.table(0, 'decks')).columns;

    expect(corners.map((it) => it.group)).toEqual([...Array(4).fill('LEFT BANK'), ...Array(4).fill('RIGHT BANK')]);
    await shop.read(
      0,
      'decks',
      ...corners.map((it, index): Row => ['deck-height', index < 4 ? '9.2200' : '9.2230', 'before', it.label]),
    );
    await shop.read(
      0,
      'deck-effects',
      ['clearance-wanted', '0.0100', 'before'],
      ['block-clean-up', '0.0040', 'before'],
    );

    expect(await shop.cell(0, 'deck-effects', 'deck-clearance', 'before')).toMatchObject({ text: '0.0200' });
    expect(await shop.cell(0, 'deck-effects', 'deck-finished', 'before')).toMatchObject({
      text: '9.2100',
      state: 'planned',
    });
    const cut = await shop.cell(0, 'deck-effects', 'block-cut', 'before');

    expect(cut?.marks.join()).toContain('left bank .0100 in, right bank .0130 in');
    expect(await shop.cell(0, 'deck-effects', 'bank-difference', 'before')).toMatchObject({
      verdict: { name: 'pass' },
    });
  });
});
