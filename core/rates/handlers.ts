/** Setting and showing prices, factors and taxes. Nothing here touches a line of a ticket (I31). */
import { listCastingTypes } from '../catalogue/store/castings.ts';
import { listKinds, listPackages, listUses } from '../catalogue/store/operations.ts';
import type { ReadDb } from '../db/query.ts';
import { implement } from '../host/implement.ts';
import type { Day } from '../kernel/days.ts';
import { AppError, badField, notFound } from '../kernel/errors.ts';
import { divideRounded } from '../kernel/units.ts';
import { type FactorFact, type RateRow, rateInForce, STANDARD_LIST, taxesInForce } from './compute.ts';
import { ratesContract } from './contract.ts';
import {
  endFactor,
  endTax,
  findOpUse,
  getFactor,
  insertFactor,
  insertRate,
  insertTax,
  listFactors,
  listOpRates,
  listPackageRates,
  listTaxes,
} from './store.ts';

export const rates = implement(ratesContract, {
  'rates/set-price': {
    run(input, { db }) {
      const row = {
        price_e4: input.price,
        line_minimum_cents: input.lineMinimum,
        from_on: input.from,
        list_name: input.list,
      };
      const words = wordsOfThing(db, input.for);
      const refuseTwice = (rows: readonly RateRow[]) => {
        if (!rows.some((r) => r.list === input.list && r.from === input.from)) return;
        const message = `${words} already has a price from ${input.from}. Prices are never changed; set one from a later day.`;
        throw badField('rates/price-there', 'from', message);
      };
      if ('packageId' in input.for) {
        const { packageId, castingTypeId } = input.for;
        refuseTwice(listPackageRates(db).filter((r) => r.packageId === packageId && r.castingTypeId === castingTypeId));
        const id = insertRate(db, { ...row, package_id: packageId, casting_type_id: castingTypeId });
        return { output: { id }, activity: [priceLine(id, words, input)] };
      }
      const opUse = findOpUse(db, input.for.operationKindId, input.for.castingKind);
      if (opUse === undefined) {
        throw badField('rates/not-done-there', 'for', `${words}: this is not done on that kind of casting.`);
      }
      refuseTwice(listOpRates(db).filter((r) => r.opUseId === opUse));
      const id = insertRate(db, { ...row, op_use_id: opUse });
      return { output: { id }, activity: [priceLine(id, words, input)] };
    },
  },
  'rates/add-factor': {
    run(input, { db }) {
      if (input.operations.length + input.packages.length === 0) {
        throw badField('rates/factor-touches-nothing', 'operations', 'Choose the operations it multiplies.');
      }
      if (listFactors(db).some((f) => f.code === input.code && (f.until === null || f.until >= input.from))) {
        throw badField('rates/factor-there', 'code', `There is a factor ${input.code} already. End it first.`);
      }
      const id = insertFactor(
        db,
        {
          code: input.code,
          factor: input.factor,
          when_fact: input.whenFact,
          when_value: input.whenValue,
          from_on: input.from,
        },
        input.operations,
        input.packages,
      );
      const words = `Added the factor ${input.code}, ${whenWords(input.whenFact, input.whenValue)}, from ${input.from}`;
      return { output: { id }, activity: [{ subject: ['factor', id], words, after: input }] };
    },
  },
  'rates/end-factor': {
    run(input, { db }) {
      const factor = getFactor(db, input.factor);
      const version = endFactor(db, input.factor, input.seenVersion, input.until);
      const words = `Ended the factor ${factor.code} with ${input.until}`;
      return { output: { version }, activity: [{ subject: ['factor', factor.id], words, before: factor.until }] };
    },
  },
  'rates/set-tax-rate': {
    run(input, { db }) {
      if (input.classes.includes('deposit')) {
        const message = 'Taxing a deposit when it is taken is not worked out here yet. Leave deposits out of this tax.';
        throw badField('rates/deposit-not-taxed', 'classes', message);
      }
      if (listTaxes(db).some((t) => t.code === input.code && t.from === input.from)) {
        throw badField('rates/tax-there', 'from', `${input.code} already begins on that day. Choose a later day.`);
      }
      const id = insertTax(
        db,
        { code: input.code, words: input.words, bp: input.bp, from_on: input.from },
        input.classes,
      );
      const words = `Set the tax ${input.words} from ${input.from}`;
      return { output: { id }, activity: [{ subject: ['tax_rate', id], words, after: input }] };
    },
  },
  'rates/end-tax-rate': {
    run(input, { db }) {
      const tax = listTaxes(db).find((t) => t.id === input.taxRate);
      if (!tax) throw notFound('rates/no-such-tax', 'This tax');
      const version = endTax(db, tax.id, input.seenVersion, input.until);
      const words = `Ended the tax ${tax.words} with ${input.until}`;
      return { output: { version }, activity: [{ subject: ['tax_rate', tax.id], words, before: tax.until }] };
    },
  },
  'rates/list-rates': {
    run(input, { db, today }) {
      const on = input.day ?? today;
      const opRates = listOpRates(db);
      const packageRates = listPackageRates(db);
      const lists = [...new Set([STANDARD_LIST, ...[...opRates, ...packageRates].map((r) => r.list).sort()])];
      const taxesNow = new Set(taxesInForce(listTaxes(db), on));
      return {
        day: on,
        lists,
        operations: listOperationPrices(db, input.list, on),
        packages: listPackagePrices(db, input.list, on),
        factors: listFactorViews(db, on),
        taxes: listTaxes(db).map(({ classes, ...tax }) => ({
          ...tax,
          inForce: [...taxesNow].some((t) => t.code === tax.code && t.from === tax.from),
          classes: [...classes],
        })),
      };
    },
  },
  'rates/get-package-sum': {
    run(input, { db, today }) {
      const on = input.day ?? today;
      const pack = listPackages(db).find((p) => p.id === input.packageId);
      const type = listCastingTypes(db, true).find((t) => t.id === input.castingTypeId);
      if (!pack || !type) throw notFound('rates/no-such-package', 'This package');
      return packageSum(db, pack, type, on);
    },
  },
});

type Thing = Readonly<{ operationKindId: number; castingKind: string } | { packageId: number; castingTypeId: number }>;

/** "Cut seats on a head", "Valve job for LO-4". @throws AppError `not-found` */
function wordsOfThing(db: ReadDb, thing: Thing): string {
  if ('packageId' in thing) {
    const pack = listPackages(db).find((p) => p.id === thing.packageId);
    const type = listCastingTypes(db, true).find((t) => t.id === thing.castingTypeId);
    if (!pack || !type) throw notFound('rates/no-such-package', 'This package');
    return `${pack.shopWords} for ${type.name}`;
  }
  const kind = listKinds(db).find((k) => k.id === thing.operationKindId);
  if (!kind) throw new AppError('not-found', 'rates/no-such-operation', 'This operation is not in the catalogue.');
  return `${kind.shopWords} on a ${thing.castingKind.replaceAll('_', ' ')}`;
}

const priceLine = (id: number, words: string, input: Readonly<{ price: number; from: string; list: string }>) => ({
  subject: ['rate', id] as const,
  words: `Set the price of ${words} from ${input.from}`,
  after: { price: input.price, from: input.from, list: input.list },
});

function priceOnDay(rows: readonly RateRow[], list: string, on: Day) {
  const now = rateInForce(rows, list, on);
  const [next] = rows.filter((r) => r.list === list && r.from > on).sort((a, b) => (a.from < b.from ? -1 : 1));
  return {
    price: now?.price ?? null,
    lineMinimum: now?.lineMinimum ?? (0 as RateRow['lineMinimum']),
    from: now?.from ?? null,
    list: now?.list ?? null,
    next: next ? { price: next.price, from: next.from } : null,
  };
}

function listOperationPrices(db: ReadDb, list: string, on: Day) {
  const byUse = Map.groupBy(listOpRates(db), (r) => r.opUseId);
  const uses = Map.groupBy(listUses(db), (use) => use.kind);
  return listKinds(db)
    .filter((kind) => kind.retiredOn === null)
    .flatMap((kind) =>
      (uses.get(kind.id) ?? []).map((use) => ({
        operationKindId: kind.id,
        code: kind.code,
        words: kind.shopWords,
        section: kind.section,
        castingKind: use.castingKind,
        chargeUnit: use.chargeUnit,
        taxClass: kind.taxClass,
        ...priceOnDay(byUse.get(use.id) ?? [], list, on),
      })),
    );
}

function listPackagePrices(db: ReadDb, list: string, on: Day) {
  const all = listPackageRates(db);
  const types = listCastingTypes(db, false);
  const classes = new Map(
    db.all(db.q.selectFrom('package').select(['id', 'tax_class'])).map((p) => [p.id, p.tax_class]),
  );
  return listPackages(db).flatMap((pack) =>
    types
      .filter((type) => type.kind === pack.castingKind)
      .map((type) => ({
        packageId: pack.id,
        code: pack.code,
        words: pack.shopWords,
        castingTypeId: type.id,
        castingType: type.name,
        taxClass: classes.get(pack.id) ?? 'labour_repair',
        ...priceOnDay(
          all.filter((r) => r.packageId === pack.id && r.castingTypeId === type.id),
          list,
          on,
        ),
      })),
  );
}

const listFactorViews = (db: ReadDb, on: Day) =>
  listFactors(db).map(({ touches, ...factor }) => ({
    ...factor,
    whenWords: whenWords(factor.whenFact, factor.whenValue),
    inForce: factor.from <= on && (factor.until === null || on <= factor.until),
    touches: touches.map((code) => wordsOfCode(db, code)),
  }));

const wordsOfCode = (db: ReadDb, code: string): string =>
  listKinds(db).find((k) => k.code === code)?.shopWords ??
  listPackages(db).find((p) => p.code === code)?.shopWords ??
  code;

function whenWords(fact: FactorFact, value: string): string {
  switch (fact) {
    case 'material':
      return `on ${value} castings`;
    case 'cam_layout':
      return `on ${value.toUpperCase()} heads`;
    case 'heavy_diesel':
      return 'on heavy diesel heads';
    case 'close_tolerance':
      return 'on close-tolerance work';
  }
}

type Pack = ReturnType<typeof listPackages>[number];
type CastingType = ReturnType<typeof listCastingTypes>[number];

/** List amounts of the items on this type, without factors of a single casting: a help for the owner, never a price. */
function packageSum(db: ReadDb, pack: Pack, type: CastingType, on: Day) {
  const metal = type.material === 'aluminium' ? 'aluminium' : 'iron';
  const opRates = listOpRates(db);
  const uses = listUses(db);
  const items = pack.items
    .filter((item) => item.metal === 'any' || item.metal === metal)
    .map((item) => {
      const use = uses.find((u) => u.kind === item.kind && u.castingKind === type.kind);
      const price =
        use &&
        rateInForce(
          opRates.filter((r) => r.opUseId === use.id),
          STANDARD_LIST,
          on,
        )?.price;
      const count = use ? countOf(use.countFrom, type.counts) : 0;
      const amount = price === undefined ? null : divideRounded(BigInt(price) * BigInt(count), 100n);
      const working = price === undefined ? 'no price on that day' : `${count} × ${Number(price) / 10_000}`;
      return { operationKindId: item.kind, words: item.words, amount: amount as never, working };
    });
  const own = listPackageRates(db).filter((r) => r.packageId === pack.id && r.castingTypeId === type.id);
  return {
    price: rateInForce(own, STANDARD_LIST, on)?.price ?? null,
    items,
    sum: items.reduce((sum, item) => sum + Number(item.amount ?? 0), 0) as never,
  };
}

function countOf(countFrom: string, counts: Readonly<Record<string, number>>): number {
  if (countFrom === 'one' || countFrom === 'ask') return 1;
  if (countFrom === 'valves') return (counts.intake_valves ?? 0) + (counts.exhaust_valves ?? 0);
  return counts[countFrom] ?? 0;
}
