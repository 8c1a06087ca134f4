/** Who owes what since when, and the statement of one account. */
import type { z } from 'zod';
import { getCustomer } from '../../customers/store.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Handlers } from '../../host/implement.ts';
import { addDays, type Day } from '../../kernel/days.ts';
import type { CustomerId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { agedBalances, daysLate } from '../../lines/compute/account.ts';
import { getShop } from '../../shop/store.ts';
import { moneyWord } from '../compute.ts';
import type { InvoiceRow, moneyContract } from '../contract.ts';
import {
  creditLeft,
  creditName,
  type InvoiceBalance,
  listInvoiceBalances,
  listPaymentsLeft,
  receiptName,
} from '../store.ts';

type Accounts = Pick<
  Handlers<typeof moneyContract>,
  'invoices/list-invoices' | 'accounts/list-ageing' | 'accounts/get-statement'
>;

export const accounts: Accounts = {
  'invoices/list-invoices': {
    run({ openOnly, limit, ...which }, { db, today }) {
      const ageFrom = getShop(db).age_from;
      const rows = listInvoiceBalances(db, { ...which, open: openOnly }, limit);
      return { rows: rows.map((row) => invoiceRow(row, today, ageFrom)) };
    },
  },
  'accounts/list-ageing': {
    run(input, { db, today }) {
      const asOf = input.asOf ?? today;
      const ageFrom = getShop(db).age_from;
      const open = openInvoices(db);
      const rows = listOwing(db)
        .map((customer) => owingRow(db, customer, open, asOf, ageFrom))
        .filter((row) => row.owed !== 0 || row.notApplied !== 0)
        .sort((a, b) => b.owed - a.owed || (a.customer < b.customer ? -1 : 1));
      const all = rows.flatMap((row) => open.get(row.customerId) ?? []);
      return {
        asOf,
        countedFrom: ageFrom === 'due' ? 'due day' : 'day of the invoice',
        rows,
        sum: agedBalances(agedFrom(all, ageFrom), asOf),
        owed: sumCents(rows.map((row) => row.owed)),
        notApplied: sumCents(rows.map((row) => row.notApplied)),
      };
    },
  },
  'accounts/get-statement': {
    run(input, { db, today }) {
      const customer = getCustomer(db, input.customerId);
      const asOf = input.asOf ?? today;
      const from = input.from ?? addDays(asOf, -30);
      const all = statementRows(db, customer.id).filter((row) => row.on <= asOf);
      const opening = sumCents(all.filter((row) => row.on < from).map((row) => row.amount));
      let balance: number = opening;
      const rows = all
        .filter((row) => row.on >= from)
        .map((row) => {
          balance += row.amount;
          return { ...row, balance: cents(balance) };
        });
      const ageFrom = getShop(db).age_from;
      const open = listInvoiceBalances(db, { customerId: customer.id, open: true });
      return {
        customerId: customer.id,
        customer: customer.legal_name ?? customer.name,
        address: customer.billing_address,
        from,
        asOf,
        opening,
        rows,
        closing: cents(balance),
        aged: agedBalances(agedFrom(open, ageFrom), asOf),
        notApplied: notApplied(db, customer.id),
      };
    },
  },
};

/** An invoice in one row. */
function invoiceRow(row: InvoiceBalance, today: Day, ageFrom: 'due' | 'issued'): z.output<typeof InvoiceRow> {
  const { credited: _credited, disputed: _disputed, ...shown } = row;
  return {
    ...shown,
    word: moneyWord(row, today),
    daysLate: daysLate(ageFrom === 'due' ? row.dueOn : row.issuedOn, today),
  };
}

type OpenInvoice = Readonly<{ customerId: CustomerId; dueOn: Day; issuedOn: Day; balance: Cents }>;

/** Open balances of everybody in one reading; some thousand rows at most. */
function openInvoices(db: ReadDb): Map<CustomerId, OpenInvoice[]> {
  const rows = db.sql<OpenInvoice>(
    `SELECT customer_id AS customerId, due_on AS dueOn, issued_on AS issuedOn, balance FROM (
       SELECT i.customer_id, i.due_on, i.issued_on, i.total_cents
         - COALESCE((SELECT SUM(a.amount_cents) FROM allocation a WHERE a.invoice_id = i.id), 0)
         - COALESCE((SELECT SUM(w.amount_cents) FROM write_off w WHERE w.invoice_id = i.id), 0) AS balance
       FROM invoice i) WHERE balance <> 0`,
  );
  return Map.groupBy(rows, (row) => row.customerId);
}

type Owing = Readonly<{ id: CustomerId; shortName: string; limit: Cents | null }>;

/** Customers with an invoice, a payment or a credit note. */
const listOwing = (db: ReadDb): Owing[] =>
  db.sql<Owing>(
    `SELECT id, short_name AS shortName, credit_limit_cents AS "limit" FROM customer
     WHERE id IN (SELECT customer_id FROM invoice UNION SELECT customer_id FROM payment UNION SELECT customer_id FROM credit_note)`,
  );

function owingRow(
  db: ReadDb,
  customer: Owing,
  open: ReadonlyMap<CustomerId, OpenInvoice[]>,
  asOf: Day,
  ageFrom: 'due' | 'issued',
) {
  const own = open.get(customer.id) ?? [];
  return {
    customerId: customer.id,
    customer: customer.shortName,
    owed: sumCents(own.map((row) => row.balance)),
    aged: agedBalances(agedFrom(own, ageFrom), asOf),
    notApplied: notApplied(db, customer.id),
    limit: customer.limit,
  };
}

const agedFrom = (rows: readonly Omit<OpenInvoice, 'customerId'>[], ageFrom: 'due' | 'issued') =>
  rows.map((row) => ({ from: ageFrom === 'due' ? row.dueOn : row.issuedOn, balance: row.balance }));

/** Payments and credit that stand on no invoice. */
const notApplied = (db: ReadDb, customer: CustomerId): Cents =>
  cents(
    sumCents(listPaymentsLeft(db, { customerId: customer }).map((payment) => payment.left)) + creditLeft(db, customer),
  );

type StatementRow = Readonly<{
  on: Day;
  kind: 'invoice' | 'credit' | 'payment' | 'refund' | 'write-off';
  number: string;
  words: string;
  amount: Cents;
  disputed: boolean;
}>;

/** Everything that moved the account, in date order; what lowers it is negative. */
function statementRows(db: ReadDb, customer: CustomerId): StatementRow[] {
  const invoices = listInvoiceBalances(db, { customerId: customer }).map((row): StatementRow => {
    const words = `Ticket ${row.ticketNumber}${row.orderNumber === null ? '' : `, order ${row.orderNumber}`}`;
    return {
      on: row.issuedOn,
      kind: 'invoice',
      number: String(row.number),
      words,
      amount: row.total,
      disputed: row.disputed,
    };
  });
  const credits = db
    .all(db.q.selectFrom('credit_note').selectAll().where('customer_id', '=', customer).orderBy('number'))
    .map((row): StatementRow => {
      const amount = cents(-row.total_cents);
      return {
        on: row.issued_on,
        kind: 'credit',
        number: creditName(row.number),
        words: row.words,
        amount,
        disputed: false,
      };
    });
  const payments = listPaymentsLeft(db, { customerId: customer }).map((row): StatementRow => {
    const kind = row.amount < 0 ? 'refund' : 'payment';
    const amount = cents(-row.amount);
    return {
      on: row.receivedOn,
      kind,
      number: receiptName(row.receiptNumber),
      words: row.kind,
      amount,
      disputed: false,
    };
  });
  const offs = db
    .all(
      db.q
        .selectFrom('write_off as w')
        .innerJoin('invoice as i', 'i.id', 'w.invoice_id')
        .select(['w.amount_cents', 'w.reason', 'w.created_at', 'i.number'])
        .where('i.customer_id', '=', customer),
    )
    .map((row): StatementRow => {
      const on = row.created_at.slice(0, 10) as Day;
      const amount = cents(-row.amount_cents);
      return { on, kind: 'write-off', number: String(row.number), words: row.reason, amount, disputed: false };
    });
  return [...invoices, ...credits, ...payments, ...offs].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}
