/** Everything a price is made of, read once a request: operations, packages, their prices, factors, rules of order. */
import type { OrderRule } from '../../catalogue/compute/order-rules.ts';
import { listFits, listGroups, listKinds, listRules, listUses } from '../../catalogue/store/operations.ts';
import { keptRead } from '../../db/kept-read.ts';
import type { ReadDb } from '../../db/query.ts';
import { listFactors, listOpRates, listPackageRates } from '../../rates/store.ts';
import type { BookKind, BookPackage, BookUse, PriceBook } from '../compute/book.ts';

/** The whole book; a few hundred rows, kept until something is written. */
export const readPriceBook = keptRead((db): PriceBook => {
  const kinds = readKinds(db);
  const groups = new Map<string, Set<string>>();
  for (const kind of kinds.values()) {
    for (const group of kind.groups) groups.set(group, (groups.get(group) ?? new Set()).add(kind.code));
  }
  return { kinds, packages: readPackages(db), factors: listFactors(db), rules: listRules(db).map(ruleOf), groups };
});

function readKinds(db: ReadDb): Map<number, BookKind> {
  const uses = readUses(db);
  const fits = Map.groupBy(listFits(db), (row) => row.kind);
  const groups = Map.groupBy(listGroups(db), (row) => row.kind);
  const centres = new Map(
    db
      .all(db.q.selectFrom('operation_kind').select(['id', 'work_centre_id']))
      .map((row) => [row.id, row.work_centre_id]),
  );
  return new Map(
    listKinds(db).map((row) => [
      row.id as number,
      {
        id: row.id,
        code: row.code,
        words: row.shopWords,
        customerWords: row.customerWords,
        section: row.section,
        gate: row.gate,
        taxClass: row.taxClass,
        position: row.position,
        retired: row.retiredOn !== null,
        workCentreId: centres.get(row.id) ?? null,
        uses: uses.get(row.id) ?? new Map(),
        fits: (fits.get(row.id) ?? []).map(({ fact, value, fit }) => ({ fact, value, fit })),
        groups: (groups.get(row.id) ?? []).map((group) => group.code),
      },
    ]),
  );
}

function readUses(db: ReadDb): Map<number, Map<string, BookUse>> {
  const rates = Map.groupBy(listOpRates(db), (row) => row.opUseId);
  const times = Map.groupBy(
    db.all(db.q.selectFrom('op_time').select(['op_use_id', 'count_name', 'per_unit_s']).orderBy('id')),
    (row) => row.op_use_id,
  );
  const byKind = new Map<number, Map<string, BookUse>>();
  for (const use of listUses(db)) {
    const uses = byKind.get(use.kind) ?? new Map<string, BookUse>();
    byKind.set(use.kind, uses);
    uses.set(use.castingKind, {
      chargeUnit: use.chargeUnit,
      countFrom: use.countFrom,
      setup: use.setup,
      unattended: use.unattended,
      times: (times.get(use.id) ?? []).map((row) => ({ count: row.count_name, perUnit: row.per_unit_s })),
      rates: rates.get(use.id) ?? [],
    });
  }
  return byKind;
}

function readPackages(db: ReadDb): Map<number, BookPackage> {
  const rates = Map.groupBy(listPackageRates(db), (row) => row.packageId);
  const items = Map.groupBy(
    db.all(
      db.q
        .selectFrom('package_item')
        .select(['package_id', 'operation_kind_id as kind', 'metal'])
        .where('retired_on', 'is', null)
        .orderBy('position')
        .orderBy('id'),
    ),
    (row) => row.package_id,
  );
  return new Map(
    db.all(db.q.selectFrom('package').selectAll().orderBy('id')).map((row) => [
      row.id as number,
      {
        id: row.id,
        code: row.code,
        shopWords: row.shop_words,
        customerWords: row.customer_words,
        castingKind: row.casting_kind,
        taxClass: row.tax_class,
        retired: row.retired_on !== null,
        items: (items.get(row.id) ?? []).map(({ kind, metal }) => ({ kind, metal })),
        rates: Map.groupBy(rates.get(row.id) ?? [], (rate) => rate.castingTypeId as number),
      },
    ]),
  );
}

const ruleOf = (row: ReturnType<typeof listRules>[number]): OrderRule => ({
  id: row.id,
  no: row.no,
  first: row.first_group,
  next: row.then_group,
  strength: row.strength,
  need: row.need,
  scope: row.scope,
  ifKind: row.if_kind,
  ifMetal: row.if_metal,
  ifCamLayout: row.if_cam_layout,
  ifFuel: row.if_fuel,
  waiver: row.waiver,
  why: row.why,
});
