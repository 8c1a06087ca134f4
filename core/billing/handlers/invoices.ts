/** An issued invoice as it stands, with what was paid, credited and approved. */
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import type { InvoiceId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { daysLate } from '../../lines/compute/account.ts';
import type { LineRole } from '../../lines/compute/bill.ts';
import { isDerivedRow, printedFigures } from '../../lines/compute/printed-bill.ts';
import { centsText, percentText } from '../../lines/compute/working.ts';
import { listApprovals } from '../../lines/store/answers.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { moneyWord } from '../../money/compute.ts';
import {
  creditedByLine,
  creditName,
  getInvoice,
  getInvoiceBalance,
  listCreditNotes,
  listInvoiceLines,
  listInvoiceTaxes,
  listPaymentsLeft,
  receiptName,
} from '../../money/store.ts';
import { getShop } from '../../shop/store.ts';
import { readAccountUse } from '../../state/store/account.ts';
import type { billingContract } from '../contract.ts';
import type { Frozen } from './issuing.ts';

type Invoices = Pick<Handlers<typeof billingContract>, 'invoices/get-invoice' | 'accounts/get-account-use'>;

export const invoices: Invoices = {
  'invoices/get-invoice': {
    run({ invoiceId }, ctx) {
      const { db, today } = ctx;
      const issued = getInvoice(db, invoiceId);
      const { credited, disputed, ...row } = getInvoiceBalance(db, invoiceId);
      const frozen = JSON.parse(issued.frozen_json) as Frozen;
      const ageFrom = getShop(db).age_from;
      return {
        ...row,
        word: moneyWord({ ...row, credited, disputed }, today),
        daysLate: daysLate(ageFrom === 'due' ? row.dueOn : row.issuedOn, today),
        printName: frozen.printName,
        printAddress: frozen.printAddress,
        contact: frozen.contact,
        termsWords: frozen.termsWords,
        warranty: warrantyOf(ctx, issued.warranty_text_id),
        ...linesAndBill(ctx, issued),
        beforeTax: issued.before_tax_cents,
        tax: issued.tax_cents,
        payments: paymentsOn(ctx, invoiceId),
        credits: listCreditNotes(db, invoiceId).map((note) => ({
          id: note.id,
          number: creditName(note.number),
          issuedOn: note.issued_on,
          reason: note.reason,
          words: note.words,
          beforeTax: note.before_tax_cents,
          tax: note.tax_cents,
          total: note.total_cents,
        })),
        castings: castingsOn(ctx, invoiceId),
        approvals: listApprovals(db, issued.ticket_id)
          .filter((a) => a.answer === 'yes' || a.answer === 'part')
          .map((a) => ({ at: a.said_at, words: approvalWords(a) }))
          .reverse(),
        held: listPaymentsLeft(db, { customerId: issued.customer_id })
          .filter((payment) => payment.left > 0)
          .map(({ id, receiptNumber, receivedOn, left }) => ({
            paymentId: id,
            receipt: receiptName(receiptNumber),
            receivedOn,
            left,
            applies: cents(Math.min(left, Math.max(row.balance, 0))),
          })),
      };
    },
  },
  'accounts/get-account-use': {
    run({ customerId }, { db, today }) {
      const { used, limit, bp, state, owed } = readAccountUse(db, customerId, today);
      const words =
        limit === null || bp === null ? '' : `${centsText(used)} of ${centsText(limit)} used, ${percentText(bp)}`;
      return { customerId, open: owed, unbilledAuthorised: cents(used - owed), used, limit, bp, state, words };
    },
  },
};

function linesAndBill(ctx: QueryCtx, issued: ReturnType<typeof getInvoice>) {
  const { db } = ctx;
  const credited = creditedByLine(db, issued.id);
  const money = readTicketMoney(db, issued.ticket_id, issued.issued_on);
  const views = new Map(listLineViews(db, issued.ticket_id, money, readPriceBook(db)).map((view) => [view.id, view]));
  const rows = listInvoiceLines(db, issued.id);
  const printed = rows.map((row) => ({
    role: row.role,
    taxClass: row.tax_class,
    amount: row.amount_cents,
    derived: isDerivedRow(row.role, row.work_line_id !== null),
  }));
  const figures = printedFigures(printed, issued.tax_cents);
  return {
    lines: rows.map((row) => {
      const view = row.work_line_id === null ? undefined : views.get(row.work_line_id);
      return {
        id: row.id,
        lineId: row.work_line_id,
        castingId: row.casting_id,
        tag: row.tag_no,
        role: row.role,
        words: row.words,
        quantityWords: view?.quantityWords ?? '',
        priceWords: view?.priceWords ?? '',
        working: row.working ?? '',
        amount: row.amount_cents,
        taxClass: row.tax_class,
        credited: credited.get(row.id) ?? cents(0),
      };
    }),
    bill: {
      figures,
      derived: rows
        .filter((row) => isDerivedRow(row.role, row.work_line_id !== null))
        .map((row) => ({
          role: row.role as Extract<LineRole, 'discount' | 'rush' | 'supplies' | 'fee' | 'minimum'>,
          words: row.words,
          working: row.working ?? '',
          amount: row.amount_cents,
          taxClass: row.tax_class,
        })),
      taxes: listInvoiceTaxes(db, issued.id).map((tax) => ({
        code: tax.rate_code,
        words: tax.rate_words,
        bp: tax.rate_bp,
        base: tax.base_cents,
        amount: tax.amount_cents,
        exempt: tax.exempt_certificate,
        working: taxWorking(tax.rate_bp, tax.base_cents, tax.exempt_certificate),
      })),
    },
  };
}

const taxWorking = (bp: Parameters<typeof percentText>[0], base: Cents, exempt: string | null): string =>
  exempt === null ? `${percentText(bp)} of ${centsText(base)}` : `exempt, certificate ${exempt}`;

const warrantyOf = ({ db }: QueryCtx, id: number | null): string | null =>
  id === null
    ? null
    : (db.one(
        db.q
          .selectFrom('text_version')
          .select('body')
          .where('id', '=', id as never),
      )?.body ?? null);

const paymentsOn = ({ db }: QueryCtx, invoice: InvoiceId) =>
  db
    .all(
      db.q
        .selectFrom('allocation as a')
        .innerJoin('payment as p', 'p.id', 'a.payment_id')
        .select(['p.receipt_number', 'p.kind', 'p.received_on', 'a.amount_cents'])
        .where('a.invoice_id', '=', invoice)
        .orderBy('a.id'),
    )
    .map((row) => ({
      receipt: receiptName(row.receipt_number),
      kind: row.kind,
      receivedOn: row.received_on,
      amount: row.amount_cents,
    }));

const castingsOn = ({ db }: QueryCtx, invoice: InvoiceId) =>
  db
    .all(
      db.q
        .selectFrom('casting as c')
        .innerJoin('casting_type as t', 't.id', 'c.casting_type_id')
        .select(['c.id', 'c.tag_no', 't.name'])
        .where('c.id', 'in', (eb) =>
          eb
            .selectFrom('invoice_line')
            .select('casting_id')
            .where('invoice_id', '=', invoice)
            .where('casting_id', 'is not', null),
        )
        .orderBy('c.position_in_ticket'),
    )
    .map((row) => ({ id: row.id, tag: row.tag_no, words: row.name }));

/** "Added work A1 a, 326.72: Ysolde Kerrow by phone, 555-0115". */
function approvalWords(a: ReturnType<typeof listApprovals>[number]): string {
  const number = a.number_called === null ? '' : `, ${a.number_called}`;
  return `${aboutWords(a)}, ${centsText(a.amount_cents)}: ${a.said_by} by ${a.means}${number}`;
}

function aboutWords(a: ReturnType<typeof listApprovals>[number]): string {
  switch (a.about) {
    case 'estimate':
      return `Estimate ${a.estimate_revision}`;
    case 'added_work':
      return `Added work A${a.added_work_number} ${a.option_letter ?? ''}`.trim();
    case 'ceiling':
      return 'Ceiling';
    case 'scrap':
      return 'Scrap';
    case 'overrun':
      return 'More hours';
  }
}
