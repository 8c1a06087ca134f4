import { describe, expect, it } from 'vitest';
import { basisPoints, cents } from '#core/kernel/units.ts';
import type { AnswerFact } from '#core/lines/compute/authorised.ts';
import { NOTHING_EARLIER } from '#core/lines/compute/bill.ts';
import {
  agreedSoFar,
  committedLines,
  coverageOf,
  exposureOf,
  invoiceBill,
  linesOnBill,
  type MoneyLine,
  type MoneyOperation,
  type TicketMoney,
  unbilledAuthorised,
  unbilledLines,
  washedCastings,
  wholeBill,
} from '#core/lines/compute/ticket-bill.ts';
import { billTerms, line, taxOn } from './builders.ts';

const moneyLine = (
  id: number,
  kind: Parameters<typeof line>[0],
  amount: number,
  more: Partial<MoneyLine> = {},
): MoneyLine => ({
  id,
  bill: line(kind, amount, String(id)),
  castingIds: [1],
  optionId: null,
  asked: false,
  withdrawn: false,
  ordered: kind !== 'part',
  actualAmount: null,
  invoiceNumber: null,
  ...more,
});
const operation = (lineId: number, more: Partial<MoneyOperation> = {}): MoneyOperation => ({
  id: lineId * 10,
  lineId,
  castingId: 1,
  kindId: 1,
  clean: false,
  started: false,
  done: false,
  notNeeded: false,
  ...more,
});
const answer = (about: AnswerFact['about'], amount: number, more: Partial<AnswerFact> = {}): AnswerFact => ({
  id: 1,
  order: 1,
  at: '2026-03-09T14:00:00.000Z',
  askedAt: null,
  about,
  answer: 'yes',
  question: null,
  amount: cents(amount),
  taxIn: false,
  lines: [],
  withdraws: null,
  ...more,
});
const ticket = (more: Partial<TicketMoney> = {}): TicketMoney => ({
  ticketId: 1,
  terms: billTerms({ minimum: cents(0), supplies: basisPoints(0), taxes: [taxOn('part')] }),
  overrun: basisPoints(0),
  lines: [],
  operations: [],
  answers: [],
  earlier: NOTHING_EARLIER,
  ...more,
});

describe('coverageOf', () => {
  // Common practice, no source: ceiling 900.00, done 700.00, next line 265.00: stop and ask.
  it('stops the next line when it would pass the ceiling', () => {
    const next = moneyLine(2, 'operation', 26_500);
    const money = ticket({
      lines: [moneyLine(1, 'operation', 70_000), next],
      operations: [operation(1, { started: true })],
      answers: [answer('ceiling', 90_000)],
    });
    expect(coverageOf(money, next)).toMatchObject({ covered: false, why: 'over the ceiling', exposure: 96_500 });
    expect(agreedSoFar(money)).toMatchObject({ exposure: 70_000, left: 20_000 });
  });

  it('counts tax where the ceiling was meant with tax', () => {
    const part = moneyLine(1, 'part', 10_000);
    const money = ticket({ lines: [part], answers: [answer('ceiling', 10_500, { taxIn: true })] });
    expect(coverageOf(money, part)).toMatchObject({ covered: false, exposure: 10_700 });
    expect(coverageOf({ ...money, answers: [answer('ceiling', 10_500)] }, part).covered).toBe(true);
  });

  it('holds a way of added work until it is chosen, below the ceiling too', () => {
    const way = moneyLine(1, 'operation', 100, { optionId: 5 });
    const money = ticket({ lines: [way], answers: [answer('ceiling', 90_000)] });
    expect(coverageOf(money, way)).toMatchObject({ covered: false, why: 'asked, no answer yet' });
    const yes = answer('added_work', 100, { id: 2, order: 2, question: 5, lines: [{ line: 1, yes: true }] });
    expect(coverageOf({ ...money, answers: [...money.answers, yes] }, way).covered).toBe(true);
  });
});

describe('exposureOf', () => {
  it('is what is begun, ordered and typed; a package whole from its first operation', () => {
    const money = ticket({
      lines: [
        moneyLine(1, 'package', 40_000),
        moneyLine(2, 'operation', 5000),
        moneyLine(3, 'part', 1000),
        moneyLine(4, 'part', 2000, { ordered: true }),
        moneyLine(5, 'fee', 300),
        moneyLine(6, 'operation', 700, { withdrawn: true }),
      ],
      operations: [operation(1, { done: true }), operation(1), operation(2), operation(6, { started: true })],
    });
    expect(committedLines(money).map((l) => l.id)).toEqual([1, 4, 5]);
    expect(exposureOf(money)).toBe(42_300);
  });

  it('takes the greater of estimated and worked hours', () => {
    const over = moneyLine(1, 'operation', 11_000, { actualAmount: cents(16_500) });
    const under = moneyLine(2, 'operation', 11_000, { actualAmount: cents(5500) });
    const started = [operation(1, { started: true }), operation(2, { started: true })];
    expect(exposureOf(ticket({ lines: [over, under], operations: started }))).toBe(27_500);
  });
});

describe('linesOnBill and wholeBill', () => {
  it('leave out what was declined, withdrawn or not chosen', () => {
    const no = answer('estimate', 0, { answer: 'no', question: 1, lines: [{ line: 2, yes: true }] });
    const money = ticket({
      lines: [
        moneyLine(1, 'operation', 1000),
        moneyLine(2, 'operation', 2000),
        moneyLine(3, 'operation', 4000, { withdrawn: true }),
        moneyLine(4, 'operation', 8000, { optionId: 9 }),
      ],
      answers: [no],
    });
    expect(linesOnBill(money).map((l) => l.id)).toEqual([1]);
    expect(wholeBill(money).figures.total).toBe(1000);
  });
});

describe('washedCastings', () => {
  it('counts each casting once, planned or done, and no wash that is not charged', () => {
    const lines = [moneyLine(1, 'package', 1000), moneyLine(2, 'operation', 1000)];
    const operations = [
      operation(1, { clean: true, done: true }),
      operation(2, { clean: true, castingId: 1 }),
      operation(1, { clean: true, castingId: 2 }),
      operation(1, { clean: true, castingId: 3, notNeeded: true }),
      { ...operation(1, { clean: true, castingId: 4, done: true }), lineId: null },
    ];
    const money = ticket({ lines, operations });
    expect(washedCastings(money, lines, 'planned')).toBe(2);
    expect(washedCastings(money, lines, 'done')).toBe(1);
  });
});

describe('invoiceBill', () => {
  it('bills worked hours, and asks the smallest charge only when nothing stays', () => {
    const hours = moneyLine(1, 'operation', 1000, { actualAmount: cents(800) });
    const other = moneyLine(2, 'operation', 500);
    const money = ticket({ lines: [hours, other], terms: billTerms({ supplies: basisPoints(0) }) });
    expect(invoiceBill(money, [hours]).figures).toMatchObject({ labour: 800, minimum: 0 });
    expect(invoiceBill(money, [hours, other]).figures).toMatchObject({ labour: 1300, minimum: 2200 });
    expect(unbilledLines({ ...money, lines: [{ ...hours, invoiceNumber: 7001 }, other] })).toEqual([other]);
  });
});

describe('unbilledAuthorised', () => {
  it('counts covered work that is not billed, with tax', () => {
    const money = ticket({
      lines: [
        moneyLine(1, 'part', 10_000),
        moneyLine(2, 'operation', 5000),
        moneyLine(3, 'part', 900, { invoiceNumber: 7001 }),
      ],
      answers: [answer('estimate', 10_000, { question: 1, lines: [{ line: 1, yes: true }] })],
    });
    expect(unbilledAuthorised(money)).toBe(10_700);
    expect(unbilledAuthorised(ticket())).toBe(0);
  });
});
