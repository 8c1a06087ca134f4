/** Loads the money facts of one ticket; core/lines/compute/ticket-bill.ts says what follows from them. */
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import { AppError, notFound } from '../../kernel/errors.ts';
import type { CustomerId, TicketId } from '../../kernel/ids.ts';
import { basisPoints } from '../../kernel/units.ts';
import { taxesInForce } from '../../rates/compute.ts';
import { listTaxes } from '../../rates/store.ts';
import type { BillTerms } from '../compute/bill.ts';
import { lineAmount, PER_HOUR } from '../compute/line.ts';
import type { TaxTerm } from '../compute/tax.ts';
import type { MoneyLine, MoneyOperation, TicketMoney } from '../compute/ticket-bill.ts';
import { listAnswers, listAskedLines } from './answers.ts';
import { listBilled } from './billed.ts';
import { listWorkLines, type WorkLine } from './work-lines.ts';

/** The ticket as far as prices go. */
export type TicketForPrice = Readonly<{
  id: TicketId;
  number: number;
  version: number;
  customerId: CustomerId;
  priceDay: Day;
  orderNumber: string | null;
  rush: Readonly<{ bp: ReturnType<typeof basisPoints>; lost: boolean }> | null;
  priceList: string;
}>;

/** @throws AppError `not-found` `tickets/no-such-ticket` */
export function getTicketForPrice(db: ReadDb, ticket: TicketId): TicketForPrice {
  const row = db.one(
    db.q
      .selectFrom('ticket as t')
      .innerJoin('customer as c', 'c.id', 't.customer_id')
      .select([
        't.id',
        't.number',
        't.version',
        't.customer_id',
        't.price_day',
        't.order_number',
        't.rush_bp',
        't.rush_lost_at',
        'c.price_list',
      ])
      .where('t.id', '=', ticket),
  );
  if (!row) throw notFound('tickets/no-such-ticket', 'This ticket');
  return {
    id: row.id,
    number: row.number,
    version: row.version,
    customerId: row.customer_id,
    priceDay: row.price_day,
    orderNumber: row.order_number,
    rush: row.rush_bp === null ? null : { bp: row.rush_bp, lost: row.rush_lost_at !== null },
    priceList: row.price_list,
  };
}

/**
 * The terms of a bill: the shop's settings, the customer's discounts and exemptions, the taxes of a day.
 *
 * @param customer null for a customer nobody knows yet: no discount, no exemption
 */
export function readBillTerms(db: ReadDb, customer: CustomerId | null, on: Day, rush: BillTerms['rush']): BillTerms {
  const shop = db.one(
    db.q
      .selectFrom('shop_setting')
      .select(['minimum_labour_cents', 'supplies_bp', 'supplies_cap_cents', 'fee_per_wash_cents', 'tax_rounding']),
  );
  if (!shop) throw new AppError('rule-broken', 'shop/not-set', 'The shop is not set up yet. Finish the first run.');
  const discounts =
    customer === null
      ? undefined
      : db.one(
          db.q.selectFrom('customer').select(['labour_discount_bp', 'parts_discount_bp']).where('id', '=', customer),
        );
  return {
    labourDiscount: discounts?.labour_discount_bp ?? basisPoints(0),
    partsDiscount: discounts?.parts_discount_bp ?? basisPoints(0),
    rush,
    supplies: shop.supplies_bp,
    suppliesCap: shop.supplies_cap_cents,
    feePerWash: shop.fee_per_wash_cents,
    minimum: shop.minimum_labour_cents,
    taxes: readTaxTerms(db, customer, on),
    taxRounding: shop.tax_rounding,
  };
}

/** Taxes of a day, with the certificate of a customer who is exempt on that day. */
function readTaxTerms(db: ReadDb, customer: CustomerId | null, on: Day): TaxTerm[] {
  const certificates = new Map(
    customer === null
      ? []
      : db
          .all(
            db.q
              .selectFrom('tax_exemption as e')
              .leftJoin('tax_exemption_end as x', 'x.tax_exemption_id', 'e.id')
              .select(['e.tax_rate_code', 'e.certificate_no', 'e.from_on', 'e.until_on', 'x.ended_on'])
              .where('e.customer_id', '=', customer)
              .orderBy('e.id'),
          )
          .filter((e) => e.from_on <= on && on <= (e.until_on ?? on) && on <= (e.ended_on ?? on))
          .map((e) => [e.tax_rate_code, e.certificate_no] as const),
  );
  return taxesInForce(listTaxes(db), on).map(({ code, words, bp, classes }) => ({
    code,
    words,
    bp,
    classes,
    exempt: certificates.get(code) ?? null,
  }));
}

/** Everything of a ticket's money. @param on the day whose taxes count: today, or the day of the invoice */
export function readTicketMoney(db: ReadDb, ticketId: TicketId, on: Day): TicketMoney {
  const ticket = getTicketForPrice(db, ticketId);
  const rush = ticket.rush && !ticket.rush.lost ? ticket.rush.bp : basisPoints(0);
  const customer = db.one(db.q.selectFrom('customer').select('overrun_bp').where('id', '=', ticket.customerId));
  const asked = listAskedLines(db, ticketId);
  const billed = listBilled(db, ticketId);
  const ordered = readOrdered(db, ticketId);
  const lines = listWorkLines(db, ticketId);
  const moneyLines = lines.map((line) => moneyLine(line, { asked, billed: billed.lines, ordered }));
  return {
    ticketId,
    terms: readBillTerms(db, ticket.customerId, on, rush),
    overrun: customer?.overrun_bp ?? basisPoints(0),
    lines: moneyLines,
    operations: listMoneyOperations(db, ticketId),
    answers: listAnswers(db, ticketId),
    earlier: {
      lines: moneyLines
        .filter((l) => l.invoiceNumber !== null)
        .map((l) => ({ ...l.bill, amount: billed.lines.get(l.id)?.amount ?? l.bill.amount })),
      derived: billed.derived,
    },
  };
}

type Seen = Readonly<{
  asked: ReadonlySet<number>;
  billed: ReturnType<typeof listBilled>['lines'];
  ordered: Readonly<{ known: ReadonlySet<number>; ordered: ReadonlySet<number> }>;
}>;

function moneyLine(line: WorkLine, { asked, billed, ordered }: Seen): MoneyLine {
  return {
    id: line.id,
    bill: { key: String(line.id), kind: line.kind, amount: line.amount, taxClass: line.taxClass, net: line.net },
    castingIds: line.castingIds,
    optionId: line.optionId,
    asked: asked.has(line.id),
    withdrawn: line.withdrawnAt !== null,
    ordered: ordered.known.has(line.id) ? ordered.ordered.has(line.id) : true,
    actualAmount: actualAmount(line),
    invoiceNumber: billed.get(line.id)?.invoiceNumber ?? null,
  };
}

/** What the worked hours of a line come to; null while they are not known, and for lines not sold by the hour. */
const actualAmount = (line: WorkLine): MoneyLine['actualAmount'] =>
  line.per === PER_HOUR && line.actualSeconds !== null ? lineAmount({ ...line, quantity: line.actualSeconds }) : null;

/** Lines that have a part or outside work of their own, and those of them that are ordered, here or out. */
function readOrdered(db: ReadDb, ticket: TicketId): Seen['ordered'] {
  const parts = db.all(
    db.q
      .selectFrom('part_line')
      .select(['work_line_id', 'ordered_at', 'here_at', 'fitted_at', 'returned_at'])
      .where('ticket_id', '=', ticket)
      .where('work_line_id', 'is not', null),
  );
  const sublets = db.all(
    db.q
      .selectFrom('sublet')
      .select(['work_line_id', 'out_at'])
      .where('ticket_id', '=', ticket)
      .where('work_line_id', 'is not', null),
  );
  const isOrdered = (p: (typeof parts)[number]) =>
    p.returned_at === null && (p.ordered_at !== null || p.here_at !== null || p.fitted_at !== null);
  const idsOf = (rows: readonly Readonly<{ work_line_id: number | null }>[]) =>
    rows.flatMap((row) => (row.work_line_id === null ? [] : [row.work_line_id]));
  return {
    known: new Set([...idsOf(parts), ...idsOf(sublets)]),
    ordered: new Set([...idsOf(parts.filter(isOrdered)), ...idsOf(sublets.filter((s) => s.out_at !== null))]),
  };
}

function listMoneyOperations(db: ReadDb, ticket: TicketId): MoneyOperation[] {
  const begun = new Set(
    db
      .all(db.q.selectFrom('operation_run').select('operation_id').distinct().where('ticket_id', '=', ticket))
      .map((row) => row.operation_id),
  );
  const washes = new Set(
    db
      .all(db.q.selectFrom('op_group').select('operation_kind_id').where('code', '=', 'clean'))
      .map((row) => row.operation_kind_id),
  );
  return db
    .all(
      db.q
        .selectFrom('operation')
        .select(['id', 'work_line_id', 'casting_id', 'operation_kind_id', 'finished_at', 'not_needed_at'])
        .where('ticket_id', '=', ticket)
        .orderBy('position')
        .orderBy('id'),
    )
    .map((row) => ({
      id: row.id,
      lineId: row.work_line_id,
      castingId: row.casting_id,
      kindId: row.operation_kind_id,
      clean: washes.has(row.operation_kind_id),
      started: begun.has(row.id),
      done: row.finished_at !== null,
      notNeeded: row.not_needed_at !== null,
    }));
}
