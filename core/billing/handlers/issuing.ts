/** Previewing and issuing an invoice. */

import type { ReadDb } from '../../db/query.ts';
import type { Ctx, Handlers } from '../../host/implement.ts';
import { AppError, ruleBroken } from '../../kernel/errors.ts';
import type { PaymentId, TicketId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { billView } from '../../lines/store/line-views.ts';
import { allocateOldestFirst } from '../../money/compute.ts';
import {
  insertAllocation,
  insertInvoice,
  listInvoiceBalances,
  listPaymentsLeft,
  receiptName,
} from '../../money/store.ts';
import { findText, getShop } from '../../shop/store.ts';
import type { billingContract } from '../contract.ts';
import { type Draft, draftInvoice } from './bill-lines.ts';

type Issuing = Pick<Handlers<typeof billingContract>, 'invoices/get-preview' | 'invoices/issue-invoice'>;

export const issuing: Issuing = {
  'invoices/get-preview': {
    run(input, ctx) {
      const draft = draftInvoice(ctx, input);
      const deposits = depositsFor(ctx.db, input.ticketId, draft.bill.figures.total);
      const applied = sumCents(deposits.map((deposit) => deposit.applies));
      return {
        ticketId: draft.ticket.id,
        ticketNumber: draft.ticket.number,
        lines: [...draft.lines],
        bill: billView(draft.bill),
        issuedOn: ctx.today,
        dueOn: draft.dueOn,
        termsWords: draft.terms.words,
        last: draft.last,
        stays: [...draft.stays],
        deposits,
        toPay: cents(draft.bill.figures.total - applied),
        notes: [...draft.notes],
        problems: [...draft.problems],
        earlierInvoices: listInvoiceBalances(ctx.db, { ticketId: input.ticketId })
          .map((invoice) => invoice.number)
          .reverse(),
      };
    },
  },
  'invoices/issue-invoice': {
    run(input, ctx) {
      const draft = draftInvoice(ctx, input);
      const [problem] = draft.problems;
      if (problem) throw ruleBroken(problem.code, problem.words);
      const { total } = draft.bill.figures;
      if (total !== input.seenTotal) {
        const message =
          'The total moved while you looked at it. Nothing was issued. Look at the new figures, then issue again.';
        throw new AppError('conflict', 'invoices/total-moved', message, { facts: { total } });
      }
      const { id, number } = write(ctx, draft);
      const deposits = input.applyDeposits ? depositsFor(ctx.db, draft.ticket.id, total) : [];
      for (const { paymentId, applies } of deposits) {
        insertAllocation(ctx.db, {
          payment_id: paymentId,
          invoice_id: id,
          ticket_id: draft.ticket.id,
          amount_cents: applies,
        });
      }
      const applied = sumCents(deposits.map((deposit) => deposit.applies));
      return {
        output: { invoiceId: id, number, total, applied, balance: cents(total - applied), dueOn: draft.dueOn },
        activity: [
          {
            subject: ['invoice', id],
            words: `Issued invoice ${number} for ticket ${draft.ticket.number}`,
            ticket: draft.ticket.id,
            after: { total, applied, due: draft.dueOn },
          },
        ],
        touched: [draft.ticket.id],
      };
    },
  },
};

/** Payments held for the ticket, and what of each goes on an invoice of this total; those that give nothing left out. */
function depositsFor(db: ReadDb, ticket: TicketId, total: Cents) {
  const held = listPaymentsLeft(db, { ticketId: ticket }).filter((payment) => payment.left > 0);
  const shares = allocateOldestFirst(held, [{ id: 0, dueOn: '9999-12-31' as never, balance: total }]);
  return shares.flatMap((share) => {
    const payment = held.find((one) => one.id === (share.purse as PaymentId));
    if (!payment) return [];
    const { id, receiptNumber, receivedOn, left } = payment;
    return [{ paymentId: id, receipt: receiptName(receiptNumber), receivedOn, left, applies: share.amount }];
  });
}

/** What is frozen on the invoice beside its lines: as the customer and the shop were called that day. */
export type Frozen = Readonly<{
  printName: string;
  printAddress: string | null;
  contact: string | null;
  termsWords: string;
  shop: Readonly<{ name: string; address: string | null; phone: string | null; taxNumber: string | null }>;
}>;

function write(ctx: Ctx, draft: Draft) {
  const { customer, ticket, bill } = draft;
  const shop = getShop(ctx.db);
  const contact =
    ticket.contact_person_id === null
      ? undefined
      : ctx.db.one(ctx.db.q.selectFrom('customer_person').select('name').where('id', '=', ticket.contact_person_id));
  const frozen: Frozen = {
    printName: customer.legal_name ?? customer.name,
    printAddress: customer.billing_address,
    contact: contact?.name ?? null,
    termsWords: draft.terms.words,
    shop: { name: shop.name, address: shop.address, phone: shop.phone, taxNumber: shop.tax_number },
  };
  return insertInvoice(
    ctx.db,
    {
      ticket_id: ticket.id,
      customer_id: customer.id,
      issued_on: ctx.today,
      due_on: draft.dueOn,
      frozen_json: JSON.stringify(frozen),
      order_number: ticket.order_number,
      warranty_text_id: findText(ctx.db, 'warranty', ctx.today)?.id ?? null,
      before_tax_cents: bill.figures.beforeTax,
      tax_cents: bill.figures.tax,
      total_cents: bill.figures.total,
    },
    draft.lines.map((line, index) => {
      const own = draft.chosen.find(({ view }) => view.id === line.lineId);
      return {
        work_line_id: line.lineId,
        casting_id: line.castingId,
        words: line.words,
        quantity: own ? billedQuantity(own) : 1,
        per: own?.view.per ?? 1,
        unit_price_e4: own?.view.unitPrice ?? (0 as never),
        working: line.working.slice(0, 240) || null,
        amount_cents: line.amount,
        tax_class: line.taxClass,
        role: line.role as never,
        position: index + 1,
      };
    }),
    bill.taxes.map((tax) => ({
      rate_code: tax.code,
      rate_words: tax.words,
      rate_bp: tax.bp,
      base_cents: tax.base,
      amount_cents: tax.amount,
      exempt_certificate: tax.exempt,
    })),
  );
}

const billedQuantity = ({ facts, view }: Draft['chosen'][number]): number =>
  facts.actualAmount !== null && view.actualSeconds !== null ? view.actualSeconds : view.quantity;
