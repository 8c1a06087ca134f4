/** What an invoice would hold now: its lines, its sums, and what stands in the way. */
import type { z } from 'zod';
import { getCustomer } from '../../customers/store.ts';
import type { QueryCtx } from '../../host/implement.ts';
import type { Day } from '../../kernel/days.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { CastingId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import { overrunAgreed } from '../../lines/compute/authorised.ts';
import { type Bill, roleOf } from '../../lines/compute/bill.ts';
import { lineWords } from '../../lines/compute/line-views.ts';
import {
  billedLine,
  invoiceBill,
  type MoneyLine,
  type TicketMoney,
  unbilledLines,
} from '../../lines/compute/ticket-bill.ts';
import { centsText } from '../../lines/compute/working.ts';
import type { LineView } from '../../lines/contract.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { dueDay, type Terms } from '../../money/compute.ts';
import { getTicket } from '../../tickets/store.ts';
import type { InvoiceLineView } from '../contract.ts';

type View = z.output<typeof InvoiceLineView>;
type Line = z.output<typeof LineView>;

export type ChosenLines = Readonly<{
  ticketId: TicketId;
  castings?: readonly CastingId[] | undefined;
  lines?: readonly WorkLineId[] | undefined;
}>;

export type Draft = Readonly<{
  ticket: ReturnType<typeof getTicket>;
  customer: ReturnType<typeof getCustomer>;
  money: TicketMoney;
  chosen: readonly Readonly<{ facts: MoneyLine; view: Line }>[];
  bill: Bill;
  /** Typed and priced lines, then what the bill adds. */
  lines: readonly View[];
  dueOn: Day;
  terms: Terms & Readonly<{ words: string }>;
  last: boolean;
  problems: readonly Readonly<{ code: string; words: string }>[];
  notes: readonly string[];
  stays: readonly Readonly<{ lineId: WorkLineId; words: string; why: string }>[];
}>;

/** Draft the invoice of today. @throws AppError `invoices/line-billed` when a chosen line is on an invoice (I4) */
export function draftInvoice(ctx: QueryCtx, which: ChosenLines): Draft {
  const { db, today } = ctx;
  const ticket = getTicket(db, which.ticketId);
  const customer = getCustomer(db, ticket.customer_id);
  const money = readTicketMoney(db, ticket.id, today);
  const views = new Map(
    listLineViews(db, ticket.id, money, readPriceBook(db)).map((view) => [view.id as number, view]),
  );
  const order = [...views.keys()];
  const all = [...unbilledLines(money)].sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
  const taken = chooseLines(all, which, money);
  const chosen = taken.flatMap((facts) => {
    const view = views.get(facts.id);
    return view ? [{ facts, view }] : [];
  });
  const bill = invoiceBill(money, taken);
  const terms = termsOf(ctx, customer.terms_id);
  const stays = all
    .filter((line) => !taken.includes(line))
    .flatMap((line) => {
      const view = views.get(line.id);
      return view ? [{ lineId: view.id, words: view.words, why: 'stays for a later invoice' }] : [];
    });
  return {
    ticket,
    customer,
    money,
    chosen,
    bill,
    lines: [...chosen.map(lineView), ...bill.derived.map(derivedView)],
    dueOn: dueDay(terms, today),
    terms,
    last: stays.length === 0,
    problems: problemsOf({ ticket, customer, money, chosen, bill }),
    notes: notesOf(money, chosen),
    stays,
  };
}

function chooseLines(all: readonly MoneyLine[], which: ChosenLines, money: TicketMoney): MoneyLine[] {
  if (which.lines) return which.lines.map((id, index) => unbilledLine(all, id, `lines.${index}`, money));
  const { castings } = which;
  if (!castings) return [...all];
  return all.filter(
    (line) => line.castingIds.length > 0 && line.castingIds.every((id) => castings.includes(id as CastingId)),
  );
}

function unbilledLine(all: readonly MoneyLine[], id: WorkLineId, field: string, money: TicketMoney): MoneyLine {
  const found = all.find((line) => line.id === id);
  if (found) return found;
  const known = money.lines.find((line) => line.id === id);
  if (known && known.invoiceNumber !== null) {
    throw ruleBroken('invoices/line-billed', `This line is already on invoice ${known.invoiceNumber}.`);
  }
  throw badField(
    'invoices/not-billable',
    field,
    'This line is not on the bill of this ticket: it was declined or withdrawn.',
  );
}

function termsOf(
  { db }: QueryCtx,
  id: ReturnType<typeof getCustomer>['terms_id'],
): Terms & Readonly<{ words: string }> {
  const row = db.one(db.q.selectFrom('terms').select(['kind', 'days', 'words']).where('id', '=', id));
  if (!row) throw new RangeError(`terms ${id} are gone`);
  return row;
}

/** A line with what it is billed at: worked hours where they are known. */
function lineView({ facts, view }: Draft['chosen'][number]): View {
  const hours = facts.actualAmount !== null && view.actualSeconds !== null ? view.actualSeconds : view.quantity;
  const terms = { ...view, quantity: hours, lineMinimum: 0 as never };
  const { quantityWords, working } = lineWords(terms, view.unit);
  return {
    id: null,
    lineId: view.id,
    castingId: view.castingId ?? null,
    tag: view.tag,
    role: roleOf(facts.bill),
    words: view.words,
    quantityWords,
    priceWords: view.priceWords,
    working,
    amount: billedLine(facts).amount,
    taxClass: view.taxClass,
    credited: 0 as never,
  };
}

const derivedView = (line: Bill['derived'][number]): View => ({
  id: null,
  lineId: null,
  castingId: null,
  tag: null,
  role: line.role,
  words: line.words,
  quantityWords: '',
  priceWords: '',
  working: line.working,
  amount: line.amount,
  taxClass: line.taxClass,
  credited: 0 as never,
});

type Judged = Pick<Draft, 'ticket' | 'customer' | 'money' | 'chosen' | 'bill'>;

/** Everything that stops the invoice, as sentences. */
function problemsOf({ ticket, customer, money, chosen, bill }: Judged): Draft['problems'] {
  const problems: { code: string; words: string }[] = [];
  if (chosen.length === 0) {
    problems.push({
      code: 'invoices/nothing-to-bill',
      words: 'There is nothing to bill: every line is on an invoice, declined or withdrawn.',
    });
  }
  if (customer.needs_order_number === 1 && ticket.order_number === null) {
    problems.push({ code: 'invoices/no-order-number', words: 'This account needs an order number before invoicing.' });
  }
  for (const { facts, view } of chosen) {
    if (
      facts.actualAmount === null ||
      facts.actualAmount <= facts.bill.amount ||
      overrunAgreed(money.answers, facts.id)
    )
      continue;
    const words = `${view.words}: ${centsText(facts.actualAmount)} worked, ${centsText(facts.bill.amount)} agreed. Ask the customer, or write the agreed hours.`;
    problems.push({ code: 'invoices/hours-not-agreed', words });
  }
  if (bill.figures.total < 0) {
    problems.push({ code: 'invoices/below-nothing', words: 'The total is below 0. Give money back by a credit note.' });
  }
  return problems;
}

/** Work that is billed before it is done; allowed, but to be seen. */
function notesOf(money: TicketMoney, chosen: Draft['chosen']): string[] {
  return chosen
    .filter(({ facts }) => money.operations.some((o) => o.lineId === facts.id && !o.done && !o.notNeeded))
    .map(({ view }) => `Not done yet: ${view.words}${view.tag === null ? '' : ` on ${view.tag}`}.`);
}
