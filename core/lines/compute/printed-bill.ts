/** The sums of an issued invoice, from its rows as they were printed. */
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import type { TaxClass } from '../../rates/compute.ts';
import { type BillFigures, DERIVED_ROLES, type LineRole } from './bill.ts';

/** A row of an invoice. `derived`: added by the bill itself. */
export type PrintedRow = Readonly<{
  role: LineRole | 'text';
  taxClass: TaxClass;
  amount: Cents;
  derived: boolean;
}>;

/** Add the rows up under the names a bill has. Nothing is priced or rounded again. */
export function printedFigures(rows: readonly PrintedRow[], tax: Cents): BillFigures {
  const sum = (take: (row: PrintedRow) => boolean) => sumCents(rows.filter(take).map((row) => row.amount));
  const typed = (...roles: PrintedRow['role'][]) => sum((row) => !row.derived && roles.includes(row.role));
  const added = (role: PrintedRow['role']) => sum((row) => row.derived && row.role === role);
  const partsDiscount = sum((row) => row.derived && row.role === 'discount' && row.taxClass === 'part');
  const beforeTax = sum(() => true);
  return {
    labour: typed('labour'),
    labourDiscount: cents(added('discount') - partsDiscount),
    rush: added('rush'),
    supplies: added('supplies'),
    fee: added('fee'),
    minimum: added('minimum'),
    parts: typed('part'),
    partsDiscount,
    sublet: typed('sublet'),
    core: typed('core'),
    other: typed('fee', 'freight', 'storage', 'text'),
    beforeTax,
    tax,
    total: cents(beforeTax + tax),
  };
}

/** Whether a row was added by the bill itself: discount, rush, supplies, fee or minimum without a line of its own. */
export const isDerivedRow = (role: PrintedRow['role'], hasLine: boolean): boolean =>
  !hasLine && (DERIVED_ROLES as readonly string[]).includes(role);
