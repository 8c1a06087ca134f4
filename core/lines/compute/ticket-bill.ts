/**
 * The money of one ticket from its facts: what stands on the bill, what is spent, what is authorised, what is covered.
 *
 * Counter pages, bench guards, estimates and invoices all ask here, so they cannot disagree.
 */
import { type BasisPoints, type Cents, cents } from '../../kernel/units.ts';
import {
  type AnswerFact,
  type Authorised,
  answerOnLine,
  authorisedAmount,
  authorisedWithOverrun,
  type Coverage,
  isCommitted,
  lineCovered,
} from './authorised.ts';
import { type Bill, type BillLine, type BillTerms, type Earlier, NOTHING_EARLIER, priceBill } from './bill.ts';

/** One operation, as far as money cares. */
export type MoneyOperation = Readonly<{
  id: number;
  lineId: number | null;
  castingId: number;
  kindId: number;
  /** In the group of washes: the cleaning fee counts it. */
  clean: boolean;
  started: boolean;
  done: boolean;
  notNeeded: boolean;
}>;

export type MoneyLine = Readonly<{
  id: number;
  bill: BillLine;
  castingIds: readonly number[];
  optionId: number | null;
  /** On a sent estimate or an asked option: its price is frozen. */
  asked: boolean;
  withdrawn: boolean;
  /** A part is ordered, here or fitted; outside work is out; a charge typed without either counts at once. */
  ordered: boolean;
  /** What worked hours come to, when they are known; null for lines not sold by the hour. */
  actualAmount: Cents | null;
  invoiceNumber: number | null;
}>;

export type TicketMoney = Readonly<{
  ticketId: number;
  terms: BillTerms;
  overrun: BasisPoints;
  /** In printing order. */
  lines: readonly MoneyLine[];
  operations: readonly MoneyOperation[];
  answers: readonly AnswerFact[];
  earlier: Earlier;
}>;

/** Live: not withdrawn, not declined, and of added work only what was said yes to. */
export const isOnBill = (money: TicketMoney, line: MoneyLine): boolean => {
  if (line.withdrawn) return false;
  const answer = answerOnLine(money.answers, line.id);
  return line.optionId === null ? answer !== 'no' : answer === 'yes';
};

export const linesOnBill = (money: TicketMoney): MoneyLine[] => money.lines.filter((line) => isOnBill(money, line));

/** Castings washed, each once, by a wash of one of these lines. `planned` counts washes still to come. */
export function washedCastings(money: TicketMoney, lines: readonly MoneyLine[], when: 'planned' | 'done'): number {
  const ids = new Set(lines.map((line) => line.id));
  const washes = money.operations.filter(
    (o) => o.clean && !o.notNeeded && o.lineId !== null && ids.has(o.lineId) && (when === 'planned' || o.done),
  );
  return new Set(washes.map((o) => o.castingId)).size;
}

/** The ticket as one bill: estimate, live price, ceiling check. */
export const wholeBill = (money: TicketMoney, lines: readonly MoneyLine[] = linesOnBill(money)): Bill =>
  priceBill({
    lines: lines.map((line) => line.bill),
    washed: washedCastings(money, lines, 'planned'),
    earlier: NOTHING_EARLIER,
    last: true,
    terms: money.terms,
  });

/** What a line counts in exposure: of hours the greater of estimate and what was worked. */
const exposedLine = (line: MoneyLine): BillLine =>
  line.actualAmount !== null && line.actualAmount > line.bill.amount
    ? { ...line.bill, amount: line.actualAmount }
    : line.bill;

/** Lines whose money is spent. A declined line that was begun before still is. */
export function committedLines(money: TicketMoney): MoneyLine[] {
  const begun = new Set(money.operations.filter((o) => o.started || o.done).map((o) => o.lineId));
  return money.lines.filter(
    (line) =>
      !line.withdrawn && isCommitted({ kind: line.bill.kind, started: begun.has(line.id), ordered: line.ordered }),
  );
}

/**
 * Committed lines with discount, rush, supplies and fees recomputed on them; with tax when the authorised amount is.
 *
 * @param extra lines that are about to be committed too
 */
export function exposureOf(money: TicketMoney, extra: readonly MoneyLine[] = []): Cents {
  const committed = committedLines(money);
  const lines = [...committed, ...extra.filter((line) => !committed.includes(line))];
  const { figures } = priceBill({
    lines: lines.map(exposedLine),
    washed: washedCastings(money, lines, 'planned'),
    earlier: NOTHING_EARLIER,
    // The smallest labour charge is asked at the end; it never holds up work.
    last: false,
    terms: money.terms,
  });
  return authorisedAmount(money.answers).taxIn ? figures.total : figures.beforeTax;
}

/**
 * Whether one line may be started, ordered or sent out. A way of added work waits for its own yes: a ceiling does not choose
 * between ways.
 */
export function coverageOf(money: TicketMoney, line: MoneyLine): Coverage {
  const answer = answerOnLine(money.answers, line.id);
  const exposure = answer === null ? exposureOf(money, [line]) : cents(0);
  const coverage = lineCovered(money.answers, line.id, exposure, money.overrun);
  return answer === null && line.optionId !== null
    ? { ...coverage, covered: false, why: 'asked, no answer yet' }
    : coverage;
}

export type AgreedSoFar = Readonly<{
  authorised: Authorised;
  /** Authorised with the overrun agreed in writing. */
  most: Cents;
  exposure: Cents;
  /** What may still be begun or ordered; negative when past it. */
  left: Cents;
}>;

/** Authorised beside spent, on one basis. */
export function agreedSoFar(money: TicketMoney): AgreedSoFar {
  const authorised = authorisedAmount(money.answers);
  const most = authorisedWithOverrun(authorised.amount, money.overrun);
  const exposure = exposureOf(money);
  return { authorised, most, exposure, left: cents(most - exposure) };
}

/** Lines that an invoice may take: on the bill and on no invoice yet. */
export const unbilledLines = (money: TicketMoney): MoneyLine[] =>
  linesOnBill(money).filter((line) => line.invoiceNumber === null);

/** A line at what it is billed for: worked hours where they are known. */
export const billedLine = (line: MoneyLine): BillLine =>
  line.actualAmount === null ? line.bill : { ...line.bill, amount: line.actualAmount };

/** One invoice over these unbilled lines, after what earlier invoices charged. */
export function invoiceBill(money: TicketMoney, lines: readonly MoneyLine[]): Bill {
  const billed = money.lines.filter((line) => line.invoiceNumber !== null);
  return priceBill({
    lines: lines.map(billedLine),
    washed: washedCastings(money, [...billed, ...lines], 'done'),
    earlier: money.earlier,
    last: unbilledLines(money).every((line) => lines.includes(line)),
    terms: money.terms,
  });
}

/** Authorised work that is not billed yet, with tax: part of the use of an account. */
export function unbilledAuthorised(money: TicketMoney): Cents {
  const lines = unbilledLines(money).filter((line) => coverageOf(money, line).covered);
  if (lines.length === 0) return cents(0);
  return priceBill({
    lines: lines.map(billedLine),
    washed: washedCastings(money, [...money.lines.filter((line) => line.invoiceNumber !== null), ...lines], 'planned'),
    earlier: money.earlier,
    last: true,
    terms: money.terms,
  }).figures.total;
}
