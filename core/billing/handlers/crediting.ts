/** Credit notes: an issued invoice is corrected only by giving back, at its own rates (I1). */
import type { Ctx, Handlers } from '../../host/implement.ts';
import { personOf } from '../../host/implement.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { Id, InvoiceId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { lineAmount } from '../../lines/compute/line.ts';
import { creditedTax } from '../../lines/compute/tax.ts';
import { centsText } from '../../lines/compute/working.ts';
import { getWorkLine } from '../../lines/store/work-lines.ts';
import {
  creditedByLine,
  creditedByTax,
  creditName,
  getInvoice,
  getInvoiceBalance,
  insertAllocation,
  insertCreditNote,
  listInvoiceLines,
  listInvoiceTaxes,
} from '../../money/store.ts';
import { isTaxed, taxesInForce } from '../../rates/compute.ts';
import { listTaxes } from '../../rates/store.ts';
import type { billingContract } from '../contract.ts';

type Crediting = Pick<Handlers<typeof billingContract>, 'invoices/credit-invoice'>;
type InvoiceRow = ReturnType<typeof listInvoiceLines>[number];
type Credit = Readonly<{ row: InvoiceRow; amount: Cents; pieces: number }>;
type Wish = Readonly<{ invoiceLineId: Id<'invoice_line'>; amount: Cents | null; pieces: number | null }>;

export const crediting: Crediting = {
  'invoices/credit-invoice': {
    run(input, ctx) {
      const { db, today } = ctx;
      const invoice = getInvoice(db, input.invoiceId);
      const credits = creditsOf(ctx, invoice.id, input.lines);
      if (credits.length === 0)
        throw ruleBroken('invoices/all-credited', 'Everything on this invoice was credited already.');
      const beforeTax = sumCents(credits.map((credit) => credit.amount));
      const taxes = taxesOf(ctx, invoice.id, credits);
      const tax = sumCents(taxes.map((one) => one.amount_cents));
      const total = cents(beforeTax + tax);
      const { id, number } = insertCreditNote(
        db,
        {
          invoice_id: invoice.id,
          ticket_id: invoice.ticket_id,
          customer_id: invoice.customer_id,
          issued_on: today,
          reason: input.reason,
          approved_by: personOf(ctx),
          words: input.words,
          before_tax_cents: beforeTax,
          tax_cents: tax,
          total_cents: total,
        },
        credits.map(({ row, amount, pieces }) => ({
          invoice_line_id: row.id,
          words: row.words,
          quantity: pieces,
          amount_cents: amount,
          tax_class: row.tax_class,
        })),
        taxes,
      );
      const balance = putOnInvoice(ctx, id, invoice, total);
      const name = creditName(number);
      return {
        output: { creditNoteId: id, number: name, beforeTax, tax, total, balance },
        activity: [
          {
            subject: ['credit_note', id],
            words: `Issued credit note ${name} on invoice ${invoice.number}: ${input.words}`,
            ticket: invoice.ticket_id,
            after: { reason: input.reason, total },
          },
        ],
        touched: [invoice.ticket_id],
      };
    },
  },
};

/** What is given back of each row; never more than is left of it. */
function creditsOf(ctx: Ctx, invoice: InvoiceId, wishes: 'all' | readonly Wish[]): Credit[] {
  const rows = listInvoiceLines(ctx.db, invoice);
  const before = creditedByLine(ctx.db, invoice);
  const leftOf = (row: InvoiceRow) => cents(row.amount_cents - (before.get(row.id) ?? 0));
  if (wishes === 'all') {
    return rows
      .map((row) => ({ row, amount: leftOf(row), pieces: row.quantity }))
      .filter((credit) => credit.amount !== 0);
  }
  const seen = new Set<number>();
  return wishes.map((wish, index) => {
    const row = rows.find((one) => one.id === wish.invoiceLineId);
    const field = `lines.${index}`;
    if (!row) throw badField('invoices/not-on-invoice', field, 'This line is not on this invoice.');
    if (seen.has(row.id)) throw badField('invoices/line-twice', field, 'This line is chosen twice.');
    seen.add(row.id);
    const left = leftOf(row);
    const amount = wish.pieces === null ? (wish.amount ?? left) : pieceAmount(ctx, row, left, wish.pieces, field);
    if (amount === 0 || Math.sign(amount) !== Math.sign(left) || Math.abs(amount) > Math.abs(left)) {
      throw badField(
        'invoices/over-credited',
        `${field}.amount`,
        `Only ${centsText(left)} of this line is left to credit.`,
      );
    }
    return { row, amount, pieces: wish.pieces ?? row.quantity };
  });
}

/** What is left of the line less the price of the pieces that are kept, so that the parts add up to the whole. */
function pieceAmount(ctx: Ctx, row: InvoiceRow, left: Cents, pieces: number, field: string): Cents {
  if (row.work_line_id === null || pieces > row.quantity) {
    throw badField('invoices/too-many-pieces', `${field}.pieces`, `${row.quantity} were billed.`);
  }
  const line = getWorkLine(ctx.db, row.work_line_id);
  const kept = lineAmount({ ...line, quantity: row.quantity - pieces, lineMinimum: cents(0) });
  return cents(Math.min(left, row.amount_cents - kept));
}

/** The tax the credited rows carried, by each tax of the invoice. */
function taxesOf(ctx: Ctx, invoice: InvoiceId, credits: readonly Credit[]) {
  const issued = getInvoice(ctx.db, invoice);
  const rates = taxesInForce(listTaxes(ctx.db), issued.issued_on);
  const before = creditedByTax(ctx.db, invoice);
  return listInvoiceTaxes(ctx.db, invoice).flatMap((tax) => {
    const rate = rates.find((one) => one.code === tax.rate_code);
    if (!rate || tax.exempt_certificate !== null) return [];
    const base = sumCents(credits.filter(({ row }) => isTaxed(rate, row.tax_class)).map((credit) => credit.amount));
    if (base === 0) return [];
    const earlier = before.get(tax.rate_code) ?? { base: cents(0), amount: cents(0) };
    const amount = creditedTax({ bp: tax.rate_bp, base: tax.base_cents, amount: tax.amount_cents }, base, earlier);
    return [{ rate_code: tax.rate_code, rate_bp: tax.rate_bp, base_cents: base, amount_cents: amount }];
  });
}

/** The credit pays the invoice as far as it is open; the rest stays as the customer's credit. @returns the new balance */
function putOnInvoice(ctx: Ctx, note: Id<'credit_note'>, invoice: ReturnType<typeof getInvoice>, total: Cents): Cents {
  const { balance } = getInvoiceBalance(ctx.db, invoice.id);
  const amount = cents(Math.max(0, Math.min(balance, total)));
  if (amount > 0) {
    insertAllocation(ctx.db, {
      credit_note_id: note,
      invoice_id: invoice.id,
      ticket_id: invoice.ticket_id,
      amount_cents: amount,
    });
  }
  return cents(balance - amount);
}
