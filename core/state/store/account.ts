/** How far a trade account is used, from its invoices and what is authorised on open tickets. */
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { CustomerId } from '../../kernel/ids.ts';
import { basisPoints, type Cents, cents } from '../../kernel/units.ts';
import { type AccountUse, accountUse } from '../../lines/compute/account.ts';
import { unbilledAuthorised } from '../../lines/compute/ticket-bill.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';

const OWED = `SELECT i.id, i.due_on, i.total_cents
    - COALESCE((SELECT SUM(a.amount_cents) FROM allocation a WHERE a.invoice_id = i.id), 0)
    - COALESCE((SELECT SUM(w.amount_cents) FROM write_off w WHERE w.invoice_id = i.id), 0) AS balance
  FROM invoice i WHERE i.customer_id = ?`;

/** Open balance of a customer, and how much of it is past its day. Whole cents, credits as negative. */
export function readOwed(db: ReadDb, customer: CustomerId, today: Day): Readonly<{ owed: Cents; overdue: Cents }> {
  const rows = db.sql<{ due_on: Day; balance: number }>(OWED, customer).filter((row) => row.balance !== 0);
  const sum = (list: typeof rows) => cents(list.reduce((all, row) => all + row.balance, 0));
  return { owed: sum(rows), overdue: sum(rows.filter((row) => row.due_on < today && row.balance > 0)) };
}

/**
 * Use of an account now.
 *
 * @param more amounts about to be added (the bill of a ticket being checked in)
 */
export function readAccountUse(
  db: ReadDb,
  customer: CustomerId,
  today: Day,
  more: readonly Cents[] = [],
): AccountUse & Readonly<{ owed: Cents; overdue: Cents }> {
  const owed = readOwed(db, customer, today);
  const limit =
    db.one(db.q.selectFrom('customer').select('credit_limit_cents').where('id', '=', customer))?.credit_limit_cents ??
    null;
  const warn = db.one(db.q.selectFrom('shop_setting').select('credit_warn_bp'))?.credit_warn_bp ?? basisPoints(8000);
  const open = db.all(
    db.q
      .selectFrom('ticket_now')
      .select('ticket_id')
      .where('customer_id', '=', customer)
      .where('over', '=', 0)
      .limit(500),
  );
  const unbilled =
    limit === null ? [] : open.map((row) => unbilledAuthorised(readTicketMoney(db, row.ticket_id, today)));
  return { ...accountUse([owed.owed], [...unbilled, ...more], limit, warn), ...owed };
}
