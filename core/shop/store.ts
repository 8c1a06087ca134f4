/** Reads and writes of the shop's settings, hours, numbers and texts. */
import type { NewRow, ReadDb, WriteDb } from '../db/query.ts';
import type { Day } from '../kernel/days.ts';
import { AppError } from '../kernel/errors.ts';
import type { ShopSettings } from './contract.ts';

type Row = NonNullable<ReturnType<typeof findRow>>;
const findRow = (db: ReadDb) => db.one(db.q.selectFrom('shop_setting').selectAll());

/** The one row of settings, or undefined before the first run. */
export const findShop = (db: ReadDb): Row | undefined => findRow(db);

/** @throws AppError `rule-broken` `shop/not-set` before the first run. */
export function getShop(db: ReadDb): Row {
  const row = findRow(db);
  if (!row)
    throw new AppError('rule-broken', 'shop/not-set', 'This workspace has no shop yet. Fill in the first screen.');
  return row;
}

const yes = (flag: number): boolean => flag === 1;

/** The settings under their domain names. */
export const settingsOf = (row: Row): ShopSettings => ({
  name: row.name,
  shortName: row.short_name,
  address: row.address,
  phone: row.phone,
  email: row.email,
  taxNumber: row.tax_number,
  currencyCode: row.currency_code,
  currencySign: row.currency_sign,
  units: row.units,
  showBothUnits: yes(row.show_both_units),
  paper: row.paper,
  language: row.language,
  timeZone: row.time_zone,
  minimumLabour: row.minimum_labour_cents,
  supplies: row.supplies_bp,
  suppliesCap: row.supplies_cap_cents,
  feePerWash: row.fee_per_wash_cents,
  storagePerDay: row.storage_per_day_cents,
  storageAfterDays: row.storage_after_days,
  storageCapped: yes(row.storage_capped),
  rush: row.rush_bp,
  sublet: row.sublet_bp,
  buffer: row.buffer_bp,
  estimateDays: row.estimate_days,
  depositNewRetail: row.deposit_new_retail_cents,
  depositSpecial: row.deposit_special_bp,
  creditWarn: row.credit_warn_bp,
  coreDays: row.core_days,
  coreGood: row.core_good_bp,
  coreRepairable: row.core_repairable_bp,
  coreScrap: row.core_scrap_bp,
  shimStackInch: row.shim_stack_inch_nm,
  shimStackMm: row.shim_stack_mm_nm,
  benchRate: row.bench_rate_e4,
  weldRate: row.weld_rate_e4,
  pinDigits: row.pin_digits,
  taxRounding: row.tax_rounding,
  ageFrom: row.age_from,
  samePersonSigns: yes(row.same_person_signs),
  guard: yes(row.guard),
  ceilingTaxIn: yes(row.ceiling_tax_in),
  promiseMinute: row.promise_minute,
  hourClock: row.hour_clock,
  idleMinutes: row.idle_minutes,
  backupFolder: row.backup_folder,
});

/** Domain name of a setting to its column; flags become 0 and 1. */
const COLUMNS: Readonly<Record<keyof ShopSettings, string>> = {
  name: 'name',
  shortName: 'short_name',
  address: 'address',
  phone: 'phone',
  email: 'email',
  taxNumber: 'tax_number',
  currencyCode: 'currency_code',
  currencySign: 'currency_sign',
  units: 'units',
  showBothUnits: 'show_both_units',
  paper: 'paper',
  language: 'language',
  timeZone: 'time_zone',
  minimumLabour: 'minimum_labour_cents',
  supplies: 'supplies_bp',
  suppliesCap: 'supplies_cap_cents',
  feePerWash: 'fee_per_wash_cents',
  storagePerDay: 'storage_per_day_cents',
  storageAfterDays: 'storage_after_days',
  storageCapped: 'storage_capped',
  rush: 'rush_bp',
  sublet: 'sublet_bp',
  buffer: 'buffer_bp',
  estimateDays: 'estimate_days',
  depositNewRetail: 'deposit_new_retail_cents',
  depositSpecial: 'deposit_special_bp',
  creditWarn: 'credit_warn_bp',
  coreDays: 'core_days',
  coreGood: 'core_good_bp',
  coreRepairable: 'core_repairable_bp',
  coreScrap: 'core_scrap_bp',
  shimStackInch: 'shim_stack_inch_nm',
  shimStackMm: 'shim_stack_mm_nm',
  benchRate: 'bench_rate_e4',
  weldRate: 'weld_rate_e4',
  pinDigits: 'pin_digits',
  taxRounding: 'tax_rounding',
  ageFrom: 'age_from',
  samePersonSigns: 'same_person_signs',
  guard: 'guard',
  ceilingTaxIn: 'ceiling_tax_in',
  promiseMinute: 'promise_minute',
  hourClock: 'hour_clock',
  idleMinutes: 'idle_minutes',
  backupFolder: 'backup_folder',
};

/** Change some settings. @throws AppError `conflict` when the version moved on. @returns the new version. */
export function stepSettings(
  db: WriteDb,
  seen: number,
  changes: { [K in keyof ShopSettings]?: ShopSettings[K] | undefined },
): number {
  const columns = Object.fromEntries(
    Object.entries(changes)
      .filter(([, value]) => value !== undefined)
      .map(([key, value]) => [COLUMNS[key as keyof ShopSettings], typeof value === 'boolean' ? Number(value) : value]),
  );
  return db.step('shop_setting', getShop(db).id, seen, columns);
}

/** Hours in force, by weekday and start. */
export const listOpenHours = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('open_hours')
      .select(['id', 'weekday', 'part', 'from_minute as from', 'until_minute as until'])
      .where('ended_at', 'is', null)
      .orderBy('part')
      .orderBy('weekday')
      .orderBy('from_minute'),
  );

/** Days the shop is closed, in order. */
export const listHolidays = (db: ReadDb) =>
  db.all(
    db.q.selectFrom('holiday').select(['id', 'on_day as day', 'words']).where('ended_at', 'is', null).orderBy('on_day'),
  );

export type Series = 'ticket' | 'tag' | 'invoice' | 'credit_note' | 'receipt';
const NUMBERED: Readonly<
  Record<Series, readonly [table: 'ticket' | 'casting' | 'invoice' | 'credit_note' | 'payment', column: string]>
> = {
  ticket: ['ticket', 'number'],
  tag: ['casting', 'tag_no'],
  invoice: ['invoice', 'number'],
  credit_note: ['credit_note', 'number'],
  receipt: ['payment', 'receipt_number'],
};

/** True when the series has given a number already. */
export function isSeriesUsed(db: ReadDb, series: Series): boolean {
  const [table, column] = NUMBERED[series];
  return db.sql<{ n: number }>(`SELECT EXISTS (SELECT 1 FROM ${table} WHERE ${column} > 0) AS n`)[0]?.n === 1;
}

/** The next number of a series, without taking it; 1 when none was ever set. */
export const peekNumber = (db: ReadDb, series: Series): number =>
  db.one(db.q.selectFrom('sequence').select('next').where('series', '=', series))?.next ?? 1;

/** Set the next number of a series. */
export function setNextNumber(db: WriteDb, series: Series, next: number): void {
  const row = db.one(db.q.selectFrom('sequence').select('id').where('series', '=', series));
  if (row) db.set('sequence', row.id, { next });
  else db.add('sequence', { series, next });
}

/**
 * The number that would be given next. Ticket and tag skip numbers that were typed by hand; the unbroken series (invoice,
 * credit note, receipt) are always highest plus one.
 */
export function nextNumber(db: ReadDb, series: Series): number {
  const [table, column] = NUMBERED[series];
  if (series !== 'ticket' && series !== 'tag') {
    const highest = db.sql<{ n: number | null }>(`SELECT MAX(${column}) AS n FROM ${table}`)[0]?.n ?? null;
    return highest === null ? peekNumber(db, series) : highest + 1;
  }
  let next = peekNumber(db, series);
  const isUsed = () => db.sql(`SELECT 1 FROM ${table} WHERE ${column} = ?`, next).length > 0;
  while (isUsed()) next += 1;
  return next;
}

/** Take the next number inside the issuing transaction. */
export function takeNumber(db: WriteDb, series: Series): number {
  const next = nextNumber(db, series);
  if (series === 'ticket' || series === 'tag') setNextNumber(db, series, next + 1);
  return next;
}

/** The text of a kind in force on a day, or undefined. */
export const findText = (db: ReadDb, kind: string, on: Day) =>
  db.one(
    db.q
      .selectFrom('text_version')
      .select(['id', 'kind', 'body', 'from_on as from'])
      .where('kind', '=', kind as never)
      .where('from_on', '<=', on)
      .orderBy('from_on', 'desc')
      .orderBy('id', 'desc')
      .limit(1),
  );

/** The row of the first run; everything not typed keeps its default. */
export const insertShop = (db: WriteDb, typed: NewRow<'shop_setting'>): void => void db.add('shop_setting', typed);
