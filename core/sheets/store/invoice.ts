/** What invoices and receipts show. */

import { notFound } from '../../kernel/errors.ts';
import { formatDayYear, formatPercent } from '../../kernel/format.ts';
import type { CastingId, Id, InvoiceId, PaymentId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { list, sentence } from '../compute/words.ts';
import type { InvoicePaper, MoneyLine, Named, ReceiptPaper, TotalLine } from '../contract/papers.ts';
import { listContainers, listPrintedCastings, metalWords, type PrintedCasting, pieceWords, tagOf } from './castings.ts';
import { getPrintedCustomer, readTicketPeople, staffName } from './people.ts';
import type { Scene } from './scene.ts';

const getInvoice = ({ db }: Scene, id: InvoiceId) => {
  const row = db.one(db.q.selectFrom('invoice').selectAll().where('id', '=', id));
  if (!row) throw notFound('invoices/no-such-invoice', 'This invoice');
  return row;
};
type Invoice = ReturnType<typeof getInvoice>;
type Line = ReturnType<typeof listLines>[number];

const listLines = ({ db }: Scene, id: InvoiceId) =>
  db.all(db.q.selectFrom('invoice_line').selectAll().where('invoice_id', '=', id).orderBy('position').orderBy('id'));

/** @throws AppError `not-found` for an invoice that is not there */
export function readInvoice(scene: Scene, id: InvoiceId): Omit<InvoicePaper, 'head'> {
  const invoice = getInvoice(scene, id);
  const { ticket } = readTicketPeople(scene.db, invoice.ticket_id);
  const castings = listPrintedCastings(scene.db, invoice.ticket_id);
  const lines = listLines(scene, id);
  const paid = listPaid(scene, id);
  const frozen = frozenOf(scene, invoice);
  const credited = listCredited(scene, id);
  const gone = sumCents([...paid.map(({ amount }) => amount), ...credited.map(({ amount }) => amount)]);
  return {
    number: String(invoice.number),
    to: frozen,
    facts: [
      { label: 'Invoice date', words: formatDayYear(invoice.issued_on) },
      { label: 'Due', words: formatDayYear(invoice.due_on) },
      { label: 'Ticket', words: String(ticket.number) },
      { label: 'Your order no.', words: invoice.order_number ?? '' },
      ...(scene.shop.tax_number === null ? [] : [{ label: 'Our tax number', words: scene.shop.tax_number }]),
    ],
    groups: groupsOf(scene, lines, castings),
    currency: scene.shop.currency_code,
    totals: [
      { words: 'Before tax', amount: scene.money(invoice.before_tax_cents) },
      ...taxLines(scene, id),
      { words: 'Total', amount: scene.money(invoice.total_cents), strong: true },
      ...paid.map(({ words, amount }) => ({ words, amount: scene.money(cents(-amount)) })),
      ...credited.map(({ words, amount }) => ({ words, amount: scene.money(cents(-amount)) })),
    ],
    toPay: scene.money(cents(invoice.total_cents - gone)),
    notes: notesOf(scene, invoice),
    pieces: piecesOf(scene, invoice, castings),
  };
}

/** Name and address as they were when it was issued. */
function frozenOf(scene: Scene, invoice: Invoice): InvoicePaper['to'] {
  const customer = getPrintedCustomer(scene.db, invoice.customer_id);
  const frozen = JSON.parse(invoice.frozen_json) as Readonly<Record<string, unknown>>;
  const text = (key: string): string | undefined =>
    typeof frozen[key] === 'string' ? (frozen[key] as string) : undefined;
  const address = text('printAddress') ?? text('address') ?? customer.billing_address ?? '';
  return { name: text('printName') ?? text('name') ?? customer.printName, lines: address.split('\n').filter(Boolean) };
}

const COLUMNS: Readonly<Partial<Record<Line['role'], string>>> = {
  labour: 'Labour',
  part: 'Parts',
  sublet: 'Outside work',
  core: 'Cores',
};
const OTHER = 'Supplies, fees, discounts';
const columnOf = (line: Line): string => COLUMNS[line.role] ?? OTHER;

/** By casting, labour and parts apart; then the lines of the ticket as a whole. */
function groupsOf(scene: Scene, lines: readonly Line[], castings: readonly PrintedCasting[]): InvoicePaper['groups'] {
  const columns = ['Labour', 'Parts', 'Outside work', 'Cores', OTHER];
  const made = (own: readonly Line[], about: Readonly<{ words: string; tag?: ReturnType<typeof tagOf> }>) =>
    columns.flatMap((column) => {
      const here = own.filter((line) => columnOf(line) === column);
      if (here.length === 0) return [];
      const sum = scene.money(sumCents(here.map(({ amount_cents }) => amount_cents)));
      const total = here.length > 1 && column !== OTHER ? { total: { words: column, amount: sum } } : {};
      return [{ ...about, column, lines: here.map((line) => moneyLine(scene, line)), ...total }];
    });
  const byCasting = castings.flatMap((casting) => {
    const words = list([
      pieceWords(casting),
      metalWords(casting.material),
      casting.type_name,
      casting.casting_number === null ? '' : `casting no. ${casting.casting_number}`,
    ]);
    return made(
      lines.filter(({ casting_id }) => casting_id === casting.id),
      { words, tag: tagOf(casting) },
    );
  });
  const rest = lines.filter(({ casting_id }) => !castings.some(({ id }) => id === (casting_id as CastingId | null)));
  return [...byCasting, ...made(rest, { words: byCasting.length === 0 ? '' : 'For the whole ticket' })];
}

/** The working is "16 valves × 9.00 × 1.15"; the first part is the count. */
function moneyLine(scene: Scene, line: Line): MoneyLine {
  const amount = scene.money(line.amount_cents);
  const words = sentence(line.words);
  const [first = '', ...others] = (line.working ?? '').split(' × ');
  // "24", "16 valves", "1.5 h"; a price has two decimals and no word.
  const counted = others.length > 0 && /^(\d+|[\d.,]+ \D.*)$/.test(first);
  if (line.working === null || line.working === '' || line.working === amount) return { words, amount };
  return counted ? { words, units: first, price: others.join(' × '), amount } : { words, price: line.working, amount };
}

const taxLines = (scene: Scene, id: InvoiceId): TotalLine[] =>
  scene.db
    .all(scene.db.q.selectFrom('invoice_tax').selectAll().where('invoice_id', '=', id).orderBy('id'))
    .map((tax) => ({
      words:
        tax.exempt_certificate === null
          ? `${tax.rate_words} ${formatPercent(tax.rate_bp, scene.settings)} on ${scene.money(tax.base_cents)}`
          : `${tax.rate_words}: exempt, certificate ${tax.exempt_certificate}`,
      amount: scene.money(tax.amount_cents),
    }));

type Sum = Readonly<{ words: string; amount: Cents }>;

/** Payments and deposits applied to it. */
function listPaid(scene: Scene, id: InvoiceId): Sum[] {
  const rows = scene.db.all(
    scene.db.q
      .selectFrom('allocation as a')
      .innerJoin('payment as p', 'p.id', 'a.payment_id')
      .innerJoin('invoice as i', 'i.id', 'a.invoice_id')
      .select([
        'a.amount_cents',
        'p.kind',
        'p.receipt_number',
        'p.for_ticket_id',
        'p.created_at',
        'i.created_at as issued_at',
      ])
      .where('a.invoice_id', '=', id)
      .orderBy('a.id'),
  );
  return rows.map((row) => {
    const deposit = row.for_ticket_id !== null && row.created_at < row.issued_at;
    return {
      words: `${deposit ? 'Deposit' : 'Paid'}, ${row.kind}, receipt R${row.receipt_number}`,
      amount: row.amount_cents,
    };
  });
}

function listCredited(scene: Scene, id: InvoiceId): Sum[] {
  const rows = scene.db.all(
    scene.db.q
      .selectFrom('allocation as a')
      .innerJoin('credit_note as c', 'c.id', 'a.credit_note_id')
      .select(['a.amount_cents', 'c.number'])
      .where('a.invoice_id', '=', id)
      .orderBy('a.id'),
  );
  return rows.map((row) => ({ words: `Credit note C${row.number}`, amount: row.amount_cents }));
}

function notesOf(scene: Scene, invoice: Invoice): Named[] {
  const { db, shop } = scene;
  const extras = db.all(
    db.q
      .selectFrom('approval as a')
      .leftJoin('added_work_option as o', 'o.id', 'a.option_id')
      .leftJoin('added_work as w', 'w.id', 'o.added_work_id')
      .leftJoin('staff as s', 's.id', 'a.created_by')
      .select([
        'a.said_by',
        'a.means',
        'a.number_called',
        'a.said_at',
        'a.amount_cents',
        'o.letter',
        'o.words',
        'w.number',
        's.name as by',
      ])
      .where('a.ticket_id', '=', invoice.ticket_id)
      .where('a.about', '=', 'added_work')
      .where('a.answer', '=', 'yes')
      .orderBy('a.id'),
  );
  const approved = extras.map((row) => ({
    label: 'Approved extra:',
    words: `${sentence(row.words ?? '')} (A${row.number} ${row.letter}), ${scene.money(row.amount_cents)}, by ${row.said_by}, ${list([row.means, row.number_called])}, ${scene.shortMoment(row.said_at)}, taken by ${row.by ?? ''}.`,
  }));
  const warranty =
    invoice.warranty_text_id === null
      ? undefined
      : db.one(db.q.selectFrom('text_version').select(['body', 'from_on']).where('id', '=', invoice.warranty_text_id));
  return [
    ...approved,
    ...(warranty ? [{ label: `Warranty (text of ${warranty.from_on}):`, words: warranty.body }] : []),
    {
      label: 'Storage',
      words: `is charged from ${shop.storage_after_days} days after the later of ready and told. Parts are new unless the line says used or rebuilt.`,
    },
  ];
}

function piecesOf({ db }: Scene, invoice: Invoice, castings: readonly PrintedCasting[]): string {
  const pieces = castings.length + listContainers(db, invoice.ticket_id).length;
  return pieces === 0 ? 'Received' : `${pieces} ${pieces === 1 ? 'piece' : 'pieces'} received`;
}

/** Everything applied to an invoice up to and with this row: what was open after it. */
const appliedUpTo = ({ db }: Scene, invoice: InvoiceId, last: number): Cents =>
  sumCents(
    db
      .sql<{ amount: Cents }>(
        'SELECT amount_cents AS amount FROM allocation WHERE invoice_id = ? AND id <= ?',
        invoice,
        last,
      )
      .map(({ amount }) => amount),
  );

/** @throws AppError `not-found` for a payment that is not there */
export function readReceipt(
  scene: Scene,
  id: PaymentId,
): Omit<ReceiptPaper, 'head'> & { ticketId: Id<'ticket'> | null } {
  const { db } = scene;
  const payment = db.one(db.q.selectFrom('payment').selectAll().where('id', '=', id));
  if (!payment) throw notFound('payments/no-such-payment', 'This payment');
  const applied = db.all(
    db.q
      .selectFrom('allocation as a')
      .innerJoin('invoice as i', 'i.id', 'a.invoice_id')
      .select(['a.id', 'a.invoice_id', 'a.amount_cents', 'i.number', 'i.issued_on', 'i.ticket_id', 'i.total_cents'])
      .where('a.payment_id', '=', id)
      .orderBy('a.id'),
  );
  const forTicket =
    payment.for_ticket_id === null
      ? undefined
      : db.one(db.q.selectFrom('ticket').select('number').where('id', '=', payment.for_ticket_id));
  const used = sumCents(applied.map(({ amount_cents }) => amount_cents));
  const left = cents(payment.amount_cents - used);
  const refund = payment.amount_cents < 0;
  return {
    ticketId: payment.for_ticket_id ?? applied[0]?.ticket_id ?? null,
    number: `R${payment.receipt_number}`,
    from: { name: getPrintedCustomer(db, payment.customer_id).printName },
    when: scene.moment(payment.created_at),
    how: list([payment.kind, payment.words]),
    by: staffName(db, payment.created_by),
    amount: scene.money(payment.amount_cents),
    currency: scene.shop.currency_code,
    lines: [
      ...applied.map((row) => ({
        words: `Invoice ${row.number} of ${formatDayYear(row.issued_on)}, ${scene.money(row.total_cents)}`,
        amount: scene.money(row.amount_cents),
      })),
      ...(left === 0 || refund
        ? []
        : [
            {
              words: forTicket ? `Deposit held for ticket ${forTicket.number}` : 'Held, not applied yet',
              amount: scene.money(left),
            },
          ]),
    ],
    totals: [
      { words: refund ? 'Paid back' : 'Received', amount: scene.money(payment.amount_cents), strong: true },
      ...applied.map((row) => ({
        words: `Left to pay on invoice ${row.number}`,
        amount: scene.money(cents(row.total_cents - appliedUpTo(scene, row.invoice_id, row.id))),
      })),
    ],
    note: left !== 0 && !refund ? 'A deposit is yours until it is applied to an invoice or given back.' : '',
  };
}
