/** Prices, factors and taxes of the practice shop. */
import { centsOf, factorOf, percentOf, priceOf } from './figures.ts';
import { readDemo } from './read-file.ts';
import { type Replay, send } from './replay.ts';
import type { PricesFile, RatesFile } from './shapes.ts';

export async function loadPrices(replay: Replay): Promise<void> {
  const prices = readDemo<PricesFile>('prices');
  const rates = readDemo<RatesFile>('rates');
  const { kinds } = await send(replay, 'operations/list-kinds', {});
  const { packages } = await send(replay, 'operations/list-packages', {});
  const { types } = await send(replay, 'operations/list-casting-types', {});
  const kindOf = (code: string) => idOf(kinds, code);
  for (const price of prices.operations) {
    await setPrice({ operationKindId: kindOf(price.operation), castingKind: price.castingKind }, price);
  }
  for (const price of prices.packages) {
    await setPrice({ packageId: idOf(packages, price.package), castingTypeId: idOf(types, price.castingType) }, price);
  }
  for (const factor of rates.factors) {
    await send(replay, 'rates/add-factor', {
      code: factor.code,
      factor: factorOf(factor.factor),
      whenFact: factor.whenFact as never,
      whenValue: factor.whenValue,
      from: factor.from,
      operations: factor.operations.map(kindOf),
    });
  }
  for (const tax of rates.taxes) {
    await send(replay, 'rates/set-tax-rate', {
      code: tax.code,
      words: tax.words,
      bp: percentOf(tax.percent),
      from: tax.from,
      classes: Object.entries(tax.classes).flatMap(([name, taxed]) => (taxed ? [name as never] : [])),
    });
  }

  async function setPrice(
    thing: Readonly<Record<string, unknown>>,
    price: PricesFile['operations'][number] | PricesFile['packages'][number],
  ) {
    await send(replay, 'rates/set-price', {
      for: thing as never,
      price: priceOf(price.price),
      lineMinimum: centsOf(price.lineMinimum),
      from: price.from,
      list: price.list,
    });
  }
}

function idOf(rows: readonly { code: string; id: number }[], code: string): number {
  const found = rows.find((row) => row.code === code);
  if (!found) throw new Error(`the catalogue has no ${code}`);
  return found.id;
}
