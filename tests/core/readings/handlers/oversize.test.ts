import { describe, expect, it } from 'vitest';
import type { SpotId } from '#core/kernel/ids.ts';
import { type Measuring, startMeasuring } from '#tests/kit/measuring.ts';
import reference from '#tests/reference/worn-block.json' with { type: 'json' };

/** A V8 block with the worn bores read and the pistons of two sizes measured. */
async function startWorn({ pistons = ['.020', '.030'] as readonly string[] } = {}) {
  const shop = await startMeasuring('NV-8B');
  const columns = (await shop.table('bores')).columns;
  const spotOf = (label: string) => columns.find((it) => it.label === label)?.spot as SpotId;
  const bores = reference.cases.flatMap((it) =>
    it.readings.map((typed, index) => ({
      quantity: 'bore',
      spot: spotOf(it.cylinder),
      point: reference.points[index] ?? null,
      stage: 'before' as const,
      typed,
      unit: 'in' as const,
    })),
  );
  const sizes = Object.entries(reference.oversize.pistons).flatMap(([over, typed]) =>
    pistons.includes(over)
      ? [{ quantity: 'piston-offered', point: `+${over}in`, stage: 'before' as const, typed, unit: 'in' as const }]
      : [],
  );
  await shop.send('readings/add-readings', { casting: shop.casting, rows: [...bores, ...sizes] }, { as: 'DK' });
  for (const [quantity, target] of [
    ['bore', '3.9500'],
    ['piston-clearance', '0.0025'],
  ] as const) {
    const limit = { quantity, stage: 'after' as const, target, unit: 'in' as const, sourceWords: 'engine sheet' };
    await shop.send('limits/add-job-limit', { casting: shop.casting, ...limit }, { as: 'DK' });
  }
  const choose = (more = {}) =>
    shop.send('readings/get-oversize-choice', { casting: shop.casting, ...more }, { as: 'DK' });
  return { ...shop, spotOf, choose };
}

const wantedOf = async (shop: Pick<Measuring, 'table'>) => {
  const row = (await shop.table('bores')).rows.find((it) => it.quantity === 'bore-wanted');
  return (row?.cells ?? []).map((it) => it.text);
};

describe('readings/get-oversize-choice', () => {
  it('answers from the readings and limits of the casting: .020 by both rules (exact mathematics)', async () => {
    const shop = await startWorn();
    const choice = await shop.choose();

    expect(choice.rules.map((it) => [it.need?.text, it.best])).toEqual([
      ['3.9577', '+.020in'],
      ['3.9649', '+.020in'],
    ]);
    expect(choice.candidates.find((it) => it.code === '+.020in')).toMatchObject({
      finished: { text: '3.9700', other: '100.838 mm' },
      boring: { text: '3.9660' },
    });
    expect(choice.largest?.words).toBe('cylinder 3, thrust, top');
  });

  it('refuses a cylinder of another casting, and a head', async () => {
    const shop = await startMeasuring();
    const refused = await shop.refuse('readings/get-oversize-choice', { casting: shop.casting }, { as: 'DK' });

    expect(refused.code).toBe('readings/no-such-cylinder');
  });
});

describe('readings/use-oversize', () => {
  it('writes the finished size for every cylinder, as it would be typed', async () => {
    const shop = await startWorn();
    const done = await shop.send(
      'readings/use-oversize',
      { casting: shop.casting, oversize: '+.020in', rule: 'centred' },
      { as: 'DK' },
    );

    expect(done.readings).toHaveLength(8);
    expect(done.words).toBe('3.9700 in (100.838 mm), .020 in over: all 8');
    expect(await wantedOf(shop)).toEqual(Array(8).fill('3.9700'));
    expect((await shop.choose()).chosen).toMatchObject([{ code: '+.020in', where: 'all 8' }]);
  });

  it('another choice takes the place of the first, and the same again changes nothing', async () => {
    const shop = await startWorn();
    const use = { casting: shop.casting, rule: 'original' as const };
    await shop.send('readings/use-oversize', { ...use, oversize: '+.020in' }, { as: 'DK' });
    await shop.send('readings/use-oversize', { ...use, oversize: '+.030in' }, { as: 'DK' });
    const again = await shop.refuse('readings/use-oversize', { ...use, oversize: '+.030in' }, { as: 'DK' });

    expect(await wantedOf(shop)).toEqual(Array(8).fill('3.9800'));
    expect(again.code).toBe('readings/oversize-there');
  });

  it('refuses a size that does not clean up, and writes nothing', async () => {
    const shop = await startWorn({ pistons: ['.010'] });
    const refused = await shop.refuse(
      'readings/use-oversize',
      { casting: shop.casting, oversize: '+.010in', rule: 'centred' },
      { as: 'DK' },
    );

    expect(refused.code).toBe('readings/oversize-refused');
    expect(await wantedOf(shop)).toEqual(Array(8).fill(''));
  });

  it('asks before it takes pistons that nobody measured', async () => {
    const shop = await startWorn({ pistons: [] });
    const use = { casting: shop.casting, oversize: '+.020in', rule: 'centred' as const };
    const asked = await shop.refuse('readings/use-oversize', use, { as: 'DK' });
    await shop.send('readings/use-oversize', { ...use, sure: true }, { as: 'DK' });

    expect(asked.code).toBe('readings/pistons-not-measured');
    expect((await shop.choose()).chosen[0]?.note).toContain('pistons not measured');
  });

  it('writes one sleeved cylinder only, at the size of the others', async () => {
    const shop = await startWorn({ pistons: [] });
    const three = shop.spotOf('3');
    const standard = {
      quantity: 'piston-offered',
      point: 'std',
      stage: 'before' as const,
      typed: '3.9475',
      unit: 'in' as const,
    };
    await shop.send('readings/add-readings', { casting: shop.casting, rows: [standard] }, { as: 'DK' });
    const done = await shop.send(
      'readings/use-oversize',
      { casting: shop.casting, oversize: 'std', rule: 'centred', only: [three], sleeves: [three] },
      { as: 'DK' },
    );

    expect(done.words).toBe('3.9500 in (100.330 mm), standard size: sleeve in 3');
    expect((await wantedOf(shop)).filter((it) => it !== '')).toEqual(['3.9500']);
  });

  it('a size that inches do not hold is kept in millimetres', async () => {
    const shop = await startWorn({ pistons: [] });
    const piston = {
      quantity: 'piston-offered',
      point: '+0.50mm',
      stage: 'before' as const,
      typed: '100.760',
      unit: 'mm' as const,
    };
    await shop.send('readings/add-readings', { casting: shop.casting, rows: [piston] }, { as: 'DK' });
    await shop.send(
      'readings/use-oversize',
      { casting: shop.casting, oversize: '+0.50mm', rule: 'centred' },
      { as: 'DK' },
    );

    const row = (await shop.table('bores')).rows.find((it) => it.quantity === 'bore-wanted');
    expect(row?.cells[0]).toMatchObject({ text: '100.8235', unit: 'mm' });
  });
});
