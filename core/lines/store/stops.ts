/** What a stop leaves on the bill, and carrying a stop out once the customer chose it. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import type { CastingId, OperationId, StaffId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import { type Cents, cents, splitByWeight } from '../../kernel/units.ts';
import { type Bill, type BillLine, NOTHING_EARLIER, priceBill } from '../compute/bill.ts';
import type { PriceBook } from '../compute/book.ts';
import { lineAmount } from '../compute/line.ts';
import { type Offer, offerOn } from '../compute/offer.ts';
import { type LineUnit, linesIfStopped, type StoppableLine } from '../compute/stop.ts';
import {
  committedLines,
  linesOnBill,
  type MoneyLine,
  type MoneyOperation,
  type TicketMoney,
} from '../compute/ticket-bill.ts';
import { dropOperations, moveToLine } from './operations.ts';
import { readPriceBook } from './price-book.ts';
import { listTicketCastings, type TicketCasting } from './priced-castings.ts';
import { getTicketForPrice } from './ticket-money.ts';
import { insertWorkLine, listWorkLines, type WorkLine, withdrawLine } from './work-lines.ts';

/** Castings that stop; everything stops the ticket as a whole. */
export type Stops = ReadonlySet<CastingId> | 'everything';

export type StopBook = Readonly<{
  money: TicketMoney;
  lines: readonly WorkLine[];
  castings: readonly TicketCasting[];
  book: PriceBook;
  list: string;
  priceDay: Day;
}>;

/** Everything a stop is reckoned from. */
export function readStopBook(db: ReadDb, ticket: TicketId, money: TicketMoney): StopBook {
  const { priceList: list, priceDay } = getTicketForPrice(db, ticket);
  const [lines, castings] = [listWorkLines(db, ticket), listTicketCastings(db, ticket)];
  return { money, lines, castings, book: readPriceBook(db), list, priceDay };
}

export type StopResult = Readonly<{
  bill: Bill;
  kept: readonly Readonly<{ line: WorkLine; amount: Cents; working: string }>[];
}>;

/** What is to pay when these castings stop: done and ordered so far, the rest of the ticket as it stands. */
export function priceStop(stop: StopBook, stops: Stops): StopResult {
  const stoppable = linesOnBill(stop.money).map((line) => stoppableLine(stop, line));
  const keys = stops === 'everything' ? stops : new Set([...stops].map(String));
  const kept = linesIfStopped(stoppable, keys);
  const bill = priceBill({
    lines: kept,
    washed: washedIfStopped(stop, kept, stops),
    earlier: NOTHING_EARLIER,
    last: true,
    terms: stop.money.terms,
  });
  return { bill, kept: kept.flatMap((line) => keptView(stop, line)) };
}

function keptView(stop: StopBook, kept: BillLine): StopResult['kept'] {
  const line = stop.lines.find((other) => other.id === Number(kept.key));
  if (!line) return [];
  const whole = kept.amount === line.amount;
  return [{ line, amount: kept.amount, working: whole ? '' : 'done so far, at list price' }];
}

/** Castings washed already, and those that go on and will be. */
function washedIfStopped(stop: StopBook, kept: readonly BillLine[], stops: Stops): number {
  const ids = new Set(kept.map((line) => Number(line.key)));
  const counts = (o: MoneyOperation) =>
    o.clean && !o.notNeeded && o.lineId !== null && ids.has(o.lineId) && (o.done || !isStopped(o.castingId, stops));
  return new Set(stop.money.operations.filter(counts).map((o) => o.castingId)).size;
}

const isStopped = (casting: number | null, stops: Stops): boolean =>
  stops === 'everything' || (casting !== null && stops.has(casting as CastingId));

function stoppableLine(stop: StopBook, money: MoneyLine): StoppableLine {
  const line = stop.lines.find((other) => other.id === money.id);
  const work = money.bill.kind === 'operation' || money.bill.kind === 'package';
  if (work && line && money.castingIds.length > 0) {
    return { line: money.bill, units: money.castingIds.map((casting) => workUnit(stop, line, casting)) };
  }
  const spent = committedLines(stop.money).includes(money);
  const casting = money.castingIds[0] === undefined ? null : String(money.castingIds[0]);
  return { line: money.bill, units: [{ casting, done: spent ? 'all' : 'none', doneAtList: [] }] };
}

function workUnit(stop: StopBook, line: WorkLine, casting: number): LineUnit {
  const all = operationsOf(stop, line.id, casting).filter((o) => !o.notNeeded);
  const done = all.filter((o) => o.done);
  const key = String(casting);
  if (done.length === all.length) return { casting: key, done: 'all', doneAtList: [] };
  if (done.length === 0) return { casting: key, done: 'none', doneAtList: [] };
  return { casting: key, done: 'some', doneAtList: done.map((o) => listOffer(stop, line, o)?.amount ?? cents(0)) };
}

const operationsOf = (stop: StopBook, line: number, casting: number): MoneyOperation[] =>
  stop.money.operations.filter((o) => o.lineId === line && o.castingId === casting);

/** An operation of a package at its own list price on the day of the line. */
function listOffer(stop: StopBook, line: WorkLine, operation: MoneyOperation): Offer | undefined {
  const casting = stop.castings.find((c) => c.id === operation.castingId);
  const kind = stop.book.kinds.get(operation.kindId);
  const use = casting && kind?.uses.get(casting.kind);
  if (!casting || !kind || !use) return undefined;
  const pricing = { list: stop.list, on: line.priceDay, factors: stop.book.factors };
  return offerOn({ ...use, code: kind.code, taxClass: kind.taxClass }, casting, pricing);
}

type Who = Readonly<{ now: Moment; by: StaffId; why: string }>;

/**
 * Carry a stop out: what is not begun is crossed out, a package half done becomes its done operations at list price (never
 * dearer than the package), and what was still to do is no longer needed.
 *
 * @returns the lines written in place of others: the customer's yes is theirs
 */
export function applyStop(db: WriteDb, stop: StopBook, stops: Stops, who: Who): WorkLineId[] {
  const written: WorkLineId[] = [];
  for (const money of linesOnBill(stop.money)) {
    const line = stop.lines.find((other) => other.id === money.id);
    if (!line || money.invoiceNumber !== null) continue;
    const { units } = stoppableLine(stop, money);
    const stopped = units.filter((unit) => isStopped(unit.casting === null ? null : Number(unit.casting), stops));
    if (stopped.every((unit) => unit.done === 'all')) continue;
    written.push(...replaceLine(db, stop, line, units, stops, who));
  }
  const left = stop.money.operations.filter((o) => !o.done && !o.notNeeded && isStopped(o.castingId, stops));
  dropOperations(
    db,
    left.map((o) => o.id as OperationId),
    who,
  );
  return written;
}

function replaceLine(
  db: WriteDb,
  stop: StopBook,
  line: WorkLine,
  units: readonly LineUnit[],
  stops: Stops,
  who: Who,
): WorkLineId[] {
  const shares = splitByWeight(
    line.amount,
    units.map(() => 1),
  );
  const halves = units
    .map((unit, index) => ({ unit, share: shares[index] ?? cents(0) }))
    .filter(({ unit }) => unit.done === 'some' && isStopped(Number(unit.casting), stops));
  const dear = (half: (typeof halves)[number]) => half.unit.doneAtList.reduce((a, b) => a + b, 0) >= half.share;
  const whole = units.filter((unit) => unit.done === 'all' || !isStopped(Number(unit.casting), stops));
  const asPackage = [...whole, ...halves.filter(dear).map((half) => half.unit)].map((unit) => Number(unit.casting));
  if (asPackage.length === units.length) return [];
  withdrawLine(db, line.id, line.version, who.now, who.why);
  const rest = asPackage.length === 0 ? [] : [keepFor(db, stop, line, asPackage, units.length)];
  const single = halves
    .filter((half) => !dear(half))
    .flatMap(({ unit }) => singles(db, stop, line, Number(unit.casting)));
  return [...rest, ...single];
}

/** The same line for fewer castings, at the same price. */
function keepFor(db: WriteDb, stop: StopBook, line: WorkLine, castings: readonly number[], before: number): WorkLineId {
  const quantity = Math.round((line.quantity * castings.length) / before);
  const { optionId: _option, ...same } = line;
  const id = insertWorkLine(db, {
    ...same,
    castings: castings as readonly CastingId[],
    quantity,
    amount: lineAmount({ ...line, quantity }),
  });
  const moved = castings.flatMap((casting) => operationsOf(stop, line.id, casting));
  moveToLine(
    db,
    moved.map((o) => o.id as OperationId),
    id,
  );
  return id;
}

/** A line of its own for each done operation of a package. */
function singles(db: WriteDb, stop: StopBook, line: WorkLine, casting: number): WorkLineId[] {
  const done = operationsOf(stop, line.id, casting).filter((o) => o.done && !o.notNeeded);
  return done.flatMap((operation) => {
    const offer = listOffer(stop, line, operation);
    const kind = stop.book.kinds.get(operation.kindId);
    if (!offer || !kind) return [];
    const id = insertWorkLine(db, {
      ...offer,
      ticketId: line.ticketId,
      kind: 'operation',
      castings: [casting as CastingId],
      operationKindId: kind.id,
      castingTypeId: line.castingTypeId,
      words: kind.customerWords.charAt(0).toUpperCase() + kind.customerWords.slice(1),
      priceFrom: 'rate',
      priceDay: line.priceDay,
    });
    moveToLine(db, [operation.id as OperationId], id);
    return [id];
  });
}
