import { describe, expect, it } from 'vitest';
import { priceE4 } from '#core/kernel/units.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

const kindId = async (shop: Awaited<ReturnType<typeof startTestHost>>, code: string) => {
  const { kinds } = await shop.send('operations/list-kinds', {});
  const found = kinds.find((kind) => kind.code === code);
  if (!found) throw new Error(code);
  return found.id;
};
const packageAndType = async (shop: Awaited<ReturnType<typeof startTestHost>>, pack: string, type: string) => {
  const { packages } = await shop.send('operations/list-packages', {});
  const { types } = await shop.send('operations/list-casting-types', {});
  const packageId = packages.find((p) => p.code === pack)?.id;
  const castingTypeId = types.find((t) => t.code === type)?.id;
  if (!packageId || !castingTypeId) throw new Error(`${pack} ${type}`);
  return { packageId, castingTypeId };
};

describe('rates/list-rates', () => {
  it('shows the price of the day, the next one and what is not sold', async () => {
    const shop = await startTestHost();
    const operationKindId = await kindId(shop, 'seat-cut');
    await shop.send('rates/set-price', {
      for: { operationKindId, castingKind: 'head' },
      price: 95_000,
      from: '2026-06-01',
    });
    const now = await shop.send('rates/list-rates', {});
    const seat = now.operations.find((o) => o.code === 'seat-cut' && o.castingKind === 'head');
    expect(seat).toMatchObject({ price: 90_000, from: '2026-01-01', next: { price: 95_000, from: '2026-06-01' } });
    const later = await shop.send('rates/list-rates', { day: '2026-06-01' });
    expect(later.operations.find((o) => o.code === 'seat-cut' && o.castingKind === 'head')?.price).toBe(95_000);
    const rebore = now.packages.find((p) => p.code === 'rebore' && p.castingType.includes('LN-4B'));
    expect(rebore?.price ?? null).toBeNull();
    expect(now.taxes).toMatchObject([{ bp: 700, inForce: true }]);
    expect(now.factors.find((f) => f.code === 'aluminium')).toMatchObject({
      factor: 11_500,
      whenWords: 'on aluminium castings',
    });
  });
});

describe('rates/set-price', () => {
  it('is for the owner only', async () => {
    const shop = await startTestHost();
    const operationKindId = await kindId(shop, 'seat-cut');
    const input = { for: { operationKindId, castingKind: 'head' }, price: 1, from: '2026-06-01' } as const;
    expect(await shop.refuse('rates/set-price', input, { as: 'TV' })).toMatchObject({ kind: 'not-allowed' });
  });

  it('refuses a second price from the same day, a price below 0 and a kind of casting it is not done on', async () => {
    const shop = await startTestHost();
    const operationKindId = await kindId(shop, 'seat-cut');
    const price = (more: object) =>
      ({ for: { operationKindId, castingKind: 'head' }, price: 5, from: '2026-06-01', ...more }) as never;
    await shop.send('rates/set-price', price({}));
    expect(await shop.refuse('rates/set-price', price({}))).toMatchObject({ code: 'rates/price-there' });
    expect(await shop.refuse('rates/set-price', price({ price: -1 }))).toMatchObject({ kind: 'invalid-input' });
    expect(
      await shop.refuse('rates/set-price', price({ for: { operationKindId, castingKind: 'flywheel' } })),
    ).toMatchObject({
      code: 'rates/not-done-there',
    });
  });

  it('keeps a list of its own for a customer', async () => {
    const shop = await startTestHost();
    const operationKindId = await kindId(shop, 'seat-cut');
    await shop.send('rates/set-price', {
      for: { operationKindId, castingKind: 'head' },
      price: 80_000,
      from: '2026-01-01',
      list: 'rebuilders',
    });
    const { lists, operations } = await shop.send('rates/list-rates', { list: 'rebuilders' });
    expect(lists).toEqual(['standard', 'rebuilders']);
    expect(operations.find((o) => o.code === 'seat-cut' && o.castingKind === 'head')).toMatchObject({
      price: 80_000,
      list: 'rebuilders',
    });
    expect(operations.find((o) => o.code === 'valve-grind' && o.castingKind === 'head')).toMatchObject({
      price: 65_000,
      list: 'standard',
    });
  });
});

describe('rates/add-factor and rates/end-factor', () => {
  it('adds a factor once and ends it on a day', async () => {
    const shop = await startTestHost();
    const operations = [await kindId(shop, 'valve-grind')];
    const factor = {
      code: 'dirty',
      factor: 12_000,
      whenFact: 'material',
      whenValue: 'iron',
      from: '2026-02-01',
      operations,
    } as const;
    const { id } = await shop.send('rates/add-factor', factor);
    expect(await shop.refuse('rates/add-factor', factor)).toMatchObject({ code: 'rates/factor-there' });
    await shop.send('rates/end-factor', { factor: id, seenVersion: 1, until: '2026-03-01' });
    const { factors } = await shop.send('rates/list-rates', {});
    expect(factors.find((f) => f.id === id)).toMatchObject({ inForce: false, until: '2026-03-01', version: 2 });
    expect(await shop.refuse('rates/end-factor', { factor: id, seenVersion: 1, until: '2026-04-01' })).toMatchObject({
      kind: 'conflict',
    });
  });

  it('refuses a factor that touches nothing', async () => {
    const shop = await startTestHost();
    const factor = {
      code: 'x',
      factor: 12_000,
      whenFact: 'material',
      whenValue: 'iron',
      from: '2026-02-01',
      operations: [] as number[],
    } as const;
    expect(await shop.refuse('rates/add-factor', factor)).toMatchObject({ code: 'rates/factor-touches-nothing' });
  });
});

describe('rates/set-tax-rate and rates/end-tax-rate', () => {
  it('begins a new rate on a day and ends a tax', async () => {
    const shop = await startTestHost();
    const [old] = (await shop.send('rates/list-rates', {})).taxes;
    if (!old) throw new Error('no tax');
    const { id } = await shop.send('rates/set-tax-rate', {
      code: old.code,
      words: old.words,
      bp: 750,
      from: '2026-03-01',
      classes: ['part'],
    });
    const { taxes } = await shop.send('rates/list-rates', {});
    expect(taxes.map((t) => [t.bp, t.inForce])).toEqual([
      [700, false],
      [750, true],
    ]);
    await shop.send('rates/end-tax-rate', { taxRate: id, seenVersion: 1, until: '2026-03-08' });
    expect((await shop.send('rates/list-rates', {})).taxes.filter((t) => t.inForce).map((t) => t.bp)).toEqual([700]);
  });

  it('refuses to tax deposits, which it could not follow', async () => {
    const shop = await startTestHost();
    const tax = { code: 'd', words: 'd', bp: 700, from: '2026-03-01', classes: ['deposit'] } as const;
    expect(await shop.refuse('rates/set-tax-rate', { ...tax, classes: [...tax.classes] })).toMatchObject({
      code: 'rates/deposit-not-taxed',
    });
  });
});

describe('rates/get-package-sum', () => {
  it('adds up what the items cost one by one', async () => {
    const shop = await startTestHost();
    const sum = await shop.send('rates/get-package-sum', await packageAndType(shop, 'valve-job', 'LO-4'));
    // 40 + 45 + 8 x 1.50 + 8 x 9.00 + 8 x 6.50 + 8 x 3.00 + 60 + 20
    expect(sum.sum).toBe(32500);
    expect(sum.price).toBe(priceE4(2_950_000));
    expect(sum.items).toHaveLength(8);
  });
});
