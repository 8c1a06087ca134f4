import { describe, expect, it } from 'vitest';
import { startMeasuring } from '#tests/kit/measuring.ts';

const job = (casting: number, words: Readonly<Record<string, unknown>>) =>
  ({
    casting,
    quantity: 'seat-load',
    stage: 'after',
    unit: 'lbf',
    sourceWords: 'cam card, Hill Road Garage',
    ...words,
  }) as never;

describe('limits/add-job-limit', () => {
  it('judges at once, shown as not checked with its source', async () => {
    const shop = await startMeasuring();
    await shop.height('1E', '1.500');

    await shop.send('limits/add-job-limit', job(shop.casting, { low: '65', high: '75' }), { as: 'DK' });
    const row = (await shop.table()).rows.find((it) => it.quantity === 'seat-load');

    expect(row?.limits[0]).toMatchObject({ text: '65 – 75', source: 'cam card, Hill Road Garage', checked: false });
    expect(row?.cells[0]?.word).toBe('too weak');
  });

  it('gives way to the data of the type where the customer wrote it, and says so', async () => {
    const shop = await startMeasuring();

    await shop.send(
      'limits/add-job-limit',
      job(shop.casting, {
        quantity: 'height-with-shim',
        unit: 'in',
        target: '1.520',
        low: '1.510',
        high: '1.530',
        customerWrote: true,
      }),
      { as: 'TV' },
    );
    const sheet = await shop.table();

    expect(sheet.rows[2]?.limits[0]?.text).toBe('1.490 – 1.510');
    expect(sheet.rows[2]?.limits[0]?.notes[0]).toBe(
      'customer’s figure 1.510 – 1.530 set aside: casting type data used',
    );
    expect(sheet.notes[0]).toContain('with shims: customer’s figure');
  });

  it('warns where the second unit of the source does not agree (TM 9-2815-255-24 misprints 0.006 in as 0.015 mm)', async () => {
    const shop = await startMeasuring();

    const { warnings } = await shop.send(
      'limits/add-job-limit',
      job(shop.casting, { quantity: 'guide-clearance', unit: 'in', high: '0.006', secondUnitText: '0.015 mm' }),
      { as: 'DK' },
    );

    expect(warnings).toEqual(['0.006 in and 0.015 mm do not agree. 0.006 in is kept: look again.']);
  });

  it.each([
    [{ low: '75', high: '65' }, 'limits/bad-figure'],
    [{}, 'limits/bad-figure'],
    [{ low: '65', unit: 'in' }, 'limits/wrong-unit'],
    [{ low: '65', quantity: 'colour' }, 'limits/no-such-quantity'],
  ])('refuses %o', async (words, code) => {
    const shop = await startMeasuring();

    const refused = await shop.refuse('limits/add-job-limit', job(shop.casting, words), { as: 'DK' });

    expect(refused).toMatchObject({ kind: 'invalid-input', code });
  });
});

describe('limits/add-limit', () => {
  it('names whom it is for', async () => {
    const shop = await startMeasuring();

    const refused = await shop.refuse(
      'limits/add-limit',
      {
        quantity: 'margin',
        stage: 'after',
        unit: 'in',
        low: '0.05',
        sourceWords: 'sheet',
        for: 'casting_type',
      } as never,
      { as: 'BL' },
    );

    expect(refused).toMatchObject({ code: 'limits/for-whom', fields: { castingType: 'Choose the casting type.' } });
  });

  it('replaces an older one from its first day, not before', async () => {
    const shop = await startMeasuring();
    const add = (low: string, from: string) =>
      shop.send(
        'limits/add-limit',
        { quantity: 'seat-load', stage: 'after', unit: 'lbf', low, sourceWords: 'shop', for: 'shop', from } as never,
        { as: 'BL' },
      );
    await add('50', '2026-02-01');
    await add('70', '2026-04-01');

    expect((await shop.table()).rows.find((it) => it.quantity === 'seat-load')?.limits[0]?.text).toBe('at least 50');
  });

  it('is not the counter’s', async () => {
    const shop = await startMeasuring();

    const refused = await shop.refuse(
      'limits/add-limit',
      { quantity: 'margin', stage: 'after', unit: 'in', low: '0.05', sourceWords: 'x', for: 'shop' } as never,
      { as: 'TV' },
    );

    expect(refused.kind).toBe('not-allowed');
  });
});

describe('limits/check-limit', () => {
  it('takes a second person', async () => {
    const shop = await startMeasuring();
    const { limit } = await shop.send('limits/add-job-limit', job(shop.casting, { low: '65' }), { as: 'DK' });

    const same = await shop.refuse('limits/check-limit', { limit }, { as: 'DK' });
    await shop.send('limits/check-limit', { limit }, { as: 'BL' });

    expect(same.code).toBe('limits/same-person');
    expect((await shop.table()).rows.find((it) => it.quantity === 'seat-load')?.limits[0]).toMatchObject({
      checked: true,
      notes: [],
    });
  });
});

describe('limits/choose-limit', () => {
  it('lets a lead take the customer’s figure, with a printed reason', async () => {
    const shop = await startMeasuring();
    const words = { quantity: 'height-with-shim', unit: 'in', target: '1.520', low: '1.510', high: '1.530' };
    const { limit } = await shop.send('limits/add-job-limit', job(shop.casting, { ...words, customerWrote: true }), {
      as: 'TV',
    });

    await shop.send('limits/choose-limit', { casting: shop.casting, limit, why: 'his own springs' }, { as: 'BL' });
    const shown = (await shop.table()).rows[2]?.limits[0];

    expect(shown?.text).toBe('1.510 – 1.530');
    expect(shown?.notes).toContain('the customer’s instruction chosen by BL: his own springs');
  });

  it('takes none of another casting', async () => {
    const shop = await startMeasuring();

    const refused = await shop.refuse(
      'limits/choose-limit',
      { casting: shop.casting, limit: 99_999 as never, why: 'x' },
      { as: 'BL' },
    );

    expect(refused.code).toBe('limits/not-for-this');
  });
});

describe('limits/list-resolved', () => {
  it('lists what judges the casting, intake and exhaust apart where they differ', async () => {
    const shop = await startMeasuring();

    const limits = await shop.send('limits/list-resolved', { casting: shop.casting }, { as: 'DK' });
    const margins = limits.filter((it) => it.quantity === 'margin');

    expect(margins.map((it) => it.side)).toEqual(['I', 'E']);
    expect(limits.every((it) => it.source.length > 0)).toBe(true);
  });

  it('says who typed and who checked a limit, and what a lead could take instead', async () => {
    const shop = await startMeasuring();
    const figures = { quantity: 'margin', stage: 'after', side: 'I', unit: 'in', sourceWords: 'cam card' } as const;
    const { limit } = await shop.send(
      'limits/add-job-limit',
      { ...figures, low: '0.040', casting: shop.casting },
      { as: 'DK' },
    );
    await shop.send('limits/check-limit', { limit }, { as: 'BL' });
    const listed = async () => {
      const limits = await shop.send('limits/list-resolved', { casting: shop.casting }, { as: 'DK' });
      return limits.find((it) => it.quantity === 'margin' && it.side === 'I');
    };
    const before = await listed();
    const other = before?.others.find((it) => it.id !== limit && it.forWhat === 'shop')?.id as never;

    expect([before, ...(before?.others ?? [])].find((it) => it?.id === limit)).toMatchObject({
      typedBy: 'DK',
      checkedBy: 'BL',
    });

    await shop.send('limits/choose-limit', { casting: shop.casting, limit: other, why: 'thin valves' }, { as: 'BL' });

    expect((await listed())?.id).toBe(other);
  });
});

describe('limits/list-missing', () => {
  it('names the places that never had a limit of the shop, and no other', async () => {
    const shop = await startMeasuring();
    const there = { quantity: 'margin', stage: 'after', side: 'I' } as const;
    const never = { quantity: 'margin', stage: 'before', side: 'any' } as const;

    expect(await shop.send('limits/list-missing', { limits: [there, never] }, { as: 'OB' })).toEqual([never]);
  });
});

describe('limits/list-catalogue', () => {
  it('names the limits of a type with their source, and drops the one that another replaced', async () => {
    const shop = await startMeasuring();
    const { types } = await shop.send('operations/list-casting-types', {}, { as: 'OB' });
    const castingType = types.find((one) => one.code === 'LO-4')?.id as never;
    const list = () => shop.send('limits/list-catalogue', { castingType }, { as: 'TV' });
    const before = await list();
    const limit = {
      for: 'casting_type',
      castingType,
      quantity: 'guide-clearance',
      stage: 'after',
      unit: 'in',
      sourceWords: 'shop sheet 12',
    } as const;

    const first = await shop.send('limits/add-limit', { ...limit, high: '.0040' } as never, { as: 'OB' });
    await shop.send('limits/add-limit', { ...limit, high: '.0035', replaces: first.limit } as never, { as: 'OB' });
    const added = (await list()).filter((one) => !before.some((known) => known.id === one.id));

    expect(added).toMatchObject([
      { quantity: 'guide-clearance', text: 'at most .0035', source: 'shop sheet 12', forWhat: 'casting_type' },
    ]);
  });

  it('keeps the limits of another type apart', async () => {
    const shop = await startMeasuring();
    const { types } = await shop.send('operations/list-casting-types', {}, { as: 'OB' });
    const idOf = (code: string) => types.find((one) => one.code === code)?.id as never;
    const other = await shop.send('limits/list-catalogue', { castingType: idOf('CF-4') }, { as: 'TV' });
    const own = await shop.send('limits/list-catalogue', { castingType: idOf('LO-4') }, { as: 'TV' });
    const ofType = (list: typeof own) => list.filter((one) => one.forWhat !== 'shop').map((one) => one.id);

    expect(ofType(own).length).toBeGreaterThan(0);
    expect(ofType(own).filter((id) => ofType(other).includes(id))).toEqual([]);
  });
});
