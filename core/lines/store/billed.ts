/** What invoices of a ticket charged, net of what credit notes opened again. */
import type { ReadDb } from '../../db/query.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { DERIVED_ROLES, type DerivedLine, type DerivedRole, type Earlier } from '../compute/bill.ts';

export type Billed = Readonly<{
  /** Work lines that stand on an invoice: its number and the amount there. */
  lines: ReadonlyMap<number, Readonly<{ invoiceNumber: number; amount: Cents }>>;
  /** Discount, rush, supplies, fee, minimum charged so far. */
  derived: Earlier['derived'];
}>;

/**
 * A line that was credited in full for a wrong price may be billed again; any other credit leaves it billed (goodwill does
 * not open it).
 */
export function listBilled(db: ReadDb, ticket: TicketId): Billed {
  const rows = db.all(
    db.q
      .selectFrom('invoice_line as l')
      .innerJoin('invoice as i', 'i.id', 'l.invoice_id')
      .select(['l.id', 'l.work_line_id', 'l.amount_cents', 'l.role', 'l.tax_class', 'l.words', 'i.number'])
      .where('l.ticket_id', '=', ticket)
      .orderBy('l.id'),
  );
  if (rows.length === 0) return { lines: new Map(), derived: [] };
  const reopened = reopenedLines(db, ticket);
  const standing = rows.map((row) => ({ ...row, left: cents(row.amount_cents - (reopened.get(row.id) ?? 0)) }));
  const lines = new Map<number, Readonly<{ invoiceNumber: number; amount: Cents }>>();
  for (const row of standing) {
    if (row.work_line_id === null) continue;
    if (row.left !== 0 || row.amount_cents === 0) {
      lines.set(row.work_line_id, { invoiceNumber: row.number, amount: row.amount_cents });
    }
  }
  const derived = standing
    .filter((row) => row.work_line_id === null && row.left !== 0 && isDerived(row.role))
    .map((row) => ({
      role: row.role as DerivedRole,
      of: row.role === 'discount' ? discountOf(row.tax_class) : null,
      taxClass: row.tax_class,
      amount: row.left,
    }));
  return { lines, derived };
}

const isDerived = (role: string): boolean => (DERIVED_ROLES as readonly string[]).includes(role);

/** A discount line carries the class of what it reduces: parts are class `part`, everything else is labour. */
const discountOf = (taxClass: string): DerivedLine['of'] => (taxClass === 'part' ? 'part' : 'labour');

/** Credited for a wrong price, by invoice line. */
function reopenedLines(db: ReadDb, ticket: TicketId): Map<number, number> {
  const rows = db.all(
    db.q
      .selectFrom('credit_note_line as c')
      .innerJoin('credit_note as n', 'n.id', 'c.credit_note_id')
      .select(['c.invoice_line_id', 'c.amount_cents'])
      .where('c.ticket_id', '=', ticket)
      .where('n.reason', '=', 'price_error')
      .where('c.invoice_line_id', 'is not', null),
  );
  const sums = new Map<number, number>();
  for (const row of rows) {
    if (row.invoice_line_id !== null) {
      sums.set(row.invoice_line_id, (sums.get(row.invoice_line_id) ?? 0) + row.amount_cents);
    }
  }
  return sums;
}
