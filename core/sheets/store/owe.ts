/** What is owed for a ticket whose castings turn out not worth saving: taking apart, washing, crack checks. */
import type { TicketId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { type BillLine, NOTHING_EARLIER, priceBill } from '../../lines/compute/bill.ts';
import { draftOperation } from '../../lines/compute/book.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { listTicketCastings } from '../../lines/store/priced-castings.ts';
import { getTicketForPrice, readTicketMoney } from '../../lines/store/ticket-money.ts';
import type { Scene } from './scene.ts';

/** Work that is done before anybody knows whether a casting is sound. */
const EARLY_GATES = ['strip', 'clean', 'crack'] as const;

/**
 * The operations that come before a casting is known to be sound, at list price, with discount, supplies and fees, before
 * tax. An estimate in words ("about"): what is really owed is what was done.
 *
 * @returns null when the ticket has none of them, or no price for them
 */
export function oweIfNotSaved({ db, today }: Scene, id: TicketId): Cents | null {
  const early = listEarly(db, id);
  if (early.length === 0) return null;
  const ticket = getTicketForPrice(db, id);
  const book = readPriceBook(db);
  const castings = listTicketCastings(db, id);
  const pricing = { list: ticket.priceList, on: ticket.priceDay, factors: book.factors };
  const lines: BillLine[] = early.map((row) => {
    const casting = castings.find((one) => one.id === row.casting_id);
    const kind = book.kinds.get(row.operation_kind_id);
    const drafted = casting && kind && draftOperation(book, kind, casting, pricing, row.units);
    const amount = drafted && 'draft' in drafted ? drafted.draft.offer.amount : cents(0);
    return { key: String(row.id), kind: 'operation', amount, taxClass: row.tax_class, net: false };
  });
  if (lines.every(({ amount }) => amount === 0)) return null;
  const washed = new Set(early.filter(({ gate }) => gate === 'clean').map(({ casting_id }) => casting_id)).size;
  const { terms } = readTicketMoney(db, id, today);
  return priceBill({ lines, washed, earlier: NOTHING_EARLIER, last: true, terms }).figures.beforeTax;
}

const listEarly = (db: Scene['db'], id: TicketId) =>
  db.all(
    db.q
      .selectFrom('operation as o')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .leftJoin('work_line as l', 'l.id', 'o.work_line_id')
      .select(['o.id', 'o.casting_id', 'o.operation_kind_id', 'o.units', 'k.tax_class', 'k.gate'])
      .where('o.ticket_id', '=', id)
      .where('k.gate', 'in', EARLY_GATES)
      .where('o.not_needed_at', 'is', null)
      .where('o.redo_of_id', 'is', null)
      .where('o.option_id', 'is', null)
      .where('l.withdrawn_at', 'is', null)
      .orderBy('o.id'),
  );
