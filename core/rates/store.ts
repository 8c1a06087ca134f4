/** Reads and writes of prices, factors and taxes. */
import type { NewRow, ReadDb, WriteDb } from '../db/query.ts';
import type { Day } from '../kernel/days.ts';
import { notFound } from '../kernel/errors.ts';
import type { Id } from '../kernel/ids.ts';
import type { FactorRow, RateRow, TaxClass, TaxRow } from './compute.ts';

export type OpRate = RateRow & Readonly<{ opUseId: Id<'op_use'> }>;
export type PackageRate = RateRow & Readonly<{ packageId: Id<'package'>; castingTypeId: Id<'casting_type'> }>;

/** Every price of an operation, oldest first. */
export const listOpRates = (db: ReadDb): OpRate[] =>
  db
    .all(
      db.q
        .selectFrom('rate')
        .select(['op_use_id', 'list_name', 'price_e4', 'line_minimum_cents', 'from_on'])
        .where('op_use_id', 'is not', null)
        .orderBy('from_on')
        .orderBy('id'),
    )
    .flatMap(({ op_use_id, ...row }) => (op_use_id === null ? [] : [{ opUseId: op_use_id, ...rateOf(row) }]));

/** Every price of a package, oldest first. */
export const listPackageRates = (db: ReadDb): PackageRate[] =>
  db
    .all(
      db.q
        .selectFrom('rate')
        .select(['package_id', 'casting_type_id', 'list_name', 'price_e4', 'line_minimum_cents', 'from_on'])
        .where('package_id', 'is not', null)
        .orderBy('from_on')
        .orderBy('id'),
    )
    .flatMap(({ package_id, casting_type_id, ...row }) =>
      package_id === null || casting_type_id === null
        ? []
        : [{ packageId: package_id, castingTypeId: casting_type_id, ...rateOf(row) }],
    );

type StoredRate = Readonly<{
  list_name: string;
  price_e4: RateRow['price'];
  line_minimum_cents: RateRow['lineMinimum'];
  from_on: Day;
}>;
const rateOf = (row: StoredRate): RateRow => ({
  list: row.list_name,
  price: row.price_e4,
  lineMinimum: row.line_minimum_cents,
  from: row.from_on,
});

export const insertRate = (db: WriteDb, row: NewRow<'rate'>): Id<'rate'> => db.add('rate', row);

/** How an operation is sold on a kind of casting, or undefined. */
export const findOpUse = (db: ReadDb, kind: Id<'operation_kind'>, castingKind: string): Id<'op_use'> | undefined =>
  db.one(
    db.q
      .selectFrom('op_use')
      .select('id')
      .where('operation_kind_id', '=', kind)
      .where('casting_kind', '=', castingKind as never)
      .where('retired_on', 'is', null),
  )?.id;

/** Every factor with the codes it touches, in the order they were added, which is the order they multiply in. */
export function listFactors(db: ReadDb): (FactorRow & Readonly<{ id: Id<'factor'>; version: number }>)[] {
  const touches = db.all(
    db.q
      .selectFrom('factor_op as f')
      .leftJoin('operation_kind as k', 'k.id', 'f.operation_kind_id')
      .leftJoin('package as p', 'p.id', 'f.package_id')
      .select(['f.factor_id', 'k.code as operation', 'p.code as package'])
      .orderBy('f.id'),
  );
  return db.all(db.q.selectFrom('factor').selectAll().orderBy('id')).map((row) => ({
    id: row.id,
    version: row.version,
    code: row.code,
    factor: row.factor,
    whenFact: row.when_fact,
    whenValue: row.when_value ?? '1',
    from: row.from_on,
    until: row.until_on,
    touches: touches.filter((t) => t.factor_id === row.id).flatMap((t) => t.operation ?? t.package ?? []),
  }));
}

/** Add a factor and what it touches. */
export function insertFactor(
  db: WriteDb,
  row: NewRow<'factor'>,
  operations: readonly Id<'operation_kind'>[],
  packages: readonly Id<'package'>[],
): Id<'factor'> {
  const id = db.add('factor', row);
  for (const kind of operations) db.add('factor_op', { factor_id: id, operation_kind_id: kind });
  for (const pack of packages) db.add('factor_op', { factor_id: id, package_id: pack });
  return id;
}

/** @throws AppError `not-found` `rates/no-such-factor` */
export function getFactor(db: ReadDb, id: Id<'factor'>) {
  const found = listFactors(db).find((row) => row.id === id);
  if (!found) throw notFound('rates/no-such-factor', 'This factor');
  return found;
}

/** @returns the new version. @throws AppError `conflict` when it changed meanwhile. */
export const endFactor = (db: WriteDb, id: Id<'factor'>, seen: number, until: Day): number =>
  db.step('factor', id, seen, { until_on: until });

/** Every tax with its classes, in the order they were added. */
export function listTaxes(db: ReadDb): (TaxRow & Readonly<{ id: Id<'tax_rate'>; version: number }>)[] {
  const classes = db.all(db.q.selectFrom('tax_rate_class').select(['tax_rate_id', 'tax_class']).orderBy('id'));
  return db.all(db.q.selectFrom('tax_rate').selectAll().orderBy('id')).map((row) => ({
    id: row.id,
    version: row.version,
    code: row.code,
    words: row.words,
    bp: row.bp,
    from: row.from_on,
    until: row.until_on,
    classes: classes.filter((c) => c.tax_rate_id === row.id).map((c) => c.tax_class),
  }));
}

export function insertTax(db: WriteDb, row: NewRow<'tax_rate'>, classes: readonly TaxClass[]): Id<'tax_rate'> {
  const id = db.add('tax_rate', row);
  for (const taxClass of new Set(classes)) db.add('tax_rate_class', { tax_rate_id: id, tax_class: taxClass });
  return id;
}

/** @returns the new version. @throws AppError `conflict` when it changed meanwhile. */
export const endTax = (db: WriteDb, id: Id<'tax_rate'>, seen: number, until: Day): number =>
  db.step('tax_rate', id, seen, { until_on: until });
