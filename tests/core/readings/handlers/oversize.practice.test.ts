import { describe, expect, it } from 'vitest';
import type { SpotId } from '#core/kernel/ids.ts';
import expected from '#demo-data/expected.json' with { type: 'json' };
import { startMeasuring } from '#tests/kit/measuring.ts';

const { S03 } = expected.stories;
const POINTS = ['top', 'mid', 'bot'];

/** The invented block of the practice shop with its bores read; figures of its own sheet, none typed for the job. */
async function startSix(pistons: readonly (readonly [string, string])[] = []) {
  const shop = await startMeasuring('HB-6B');
  const { columns } = await shop.table('bores');
  const bores = S03.readings.flatMap((row) =>
    (['X', 'Y'] as const).flatMap((axis) =>
      row[axis].map((typed, index) => ({
        quantity: 'bore',
        spot: columns.find((it) => it.label === String(row.cylinder))?.spot as SpotId,
        point: `${POINTS[index]}-${axis.toLowerCase()}`,
        stage: 'before' as const,
        typed,
        unit: 'mm' as const,
      })),
    ),
  );
  const sizes = pistons.map(([over, typed]) => ({
    quantity: 'piston-offered',
    point: `+${over}mm`,
    stage: 'before' as const,
    typed,
    unit: 'mm' as const,
  }));
  await shop.send('readings/add-readings', { casting: shop.casting, rows: [...bores, ...sizes] }, { as: 'DK' });
  return shop;
}

describe('readings/get-oversize-choice', () => {
  it('chooses for the diesel block of the practice shop from its own sheet (regression, invented figures)', async () => {
    const shop = await startSix(S03.choices.map((it) => [it.oversize, it.piston] as const));
    const choice = await shop.send('readings/get-oversize-choice', { casting: shop.casting }, { as: 'DK' });

    expect(choice.missing).toEqual([]);
    expect(choice.largest?.size.text).toBe(S03.Dmax);
    expect(choice.rules.map((it) => [it.need?.text, it.best])).toEqual([
      [S03.needCentred, '+0.50mm'],
      [S03.needOriginalCentre, '+0.75mm'],
    ]);
    expect(
      choice.candidates.map((it) => ({
        oversize: it.over,
        piston: it.piston?.text,
        finished: it.finished?.text,
        bar: it.boring?.text,
        okCentred: it.centred.name === 'pass',
        okOriginalCentre: it.original.name === 'pass',
        withinGreatest: true,
      })),
    ).toEqual(S03.choices);
  });

  it('before the pistons came, sizes are nominal and none is recommended (regression, invented figures)', async () => {
    const shop = await startSix();
    const choice = await shop.send('readings/get-oversize-choice', { casting: shop.casting }, { as: 'DK' });

    expect(choice.rules.map((it) => it.best)).toEqual([null, null]);
    expect(choice.candidates.map((it) => [it.over, it.finished?.text, it.measured])).toEqual([
      ['0.25', '107.250', false],
      ['0.50', '107.500', false],
      ['0.75', '107.750', false],
      ['1.00', '108.000', false],
    ]);
  });

  it('the table says which bores fail (regression, invented figures)', async () => {
    const { rows } = await (await startSix()).table('bores');
    const words = (quantity: string) =>
      rows.find((it) => it.quantity === quantity && it.stage === 'before')?.cells.map((it) => it.text);

    expect(words('bore-taper')).toEqual(S03.readings.map((it) => it.taper));
    expect(words('bore-out-of-round')).toEqual(S03.readings.map((it) => it.outOfRound));
    expect(words('bore-wear')).toEqual(S03.readings.map((it) => it.wear));
  });
});
