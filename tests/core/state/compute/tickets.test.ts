/** The word of a ticket, rule by rule, first match from the top; and what is missing before it is ready. */
import { describe, expect, it } from 'vitest';
import type { Cents } from '#core/kernel/units.ts';
import { chipsOfToday, isLate, ticketNow } from '#core/state/compute/tickets.ts';
import {
  answer,
  at,
  casting,
  container,
  factsOf,
  hold,
  item,
  line,
  onDay,
  operation,
  question,
  run,
  signature,
} from '../builders.ts';

const wordOf = (facts: Parameters<typeof factsOf>[0]) => ticketNow(factsOf(facts)).word;
/** Signed, in a ready place. */
const SIGNED = {
  castings: [casting(1, { standsAt: 'ready' })],
  operations: [operation(1, { finishedAt: at(60) })],
  signOffs: [signature()],
};
const cents = (n: number) => n as Cents;

describe('ticketNow', () => {
  it('reads checked in, approved, waiting approval, in work', () => {
    expect(wordOf({})).toBe('checked in');
    expect(wordOf({ authorised: cents(50_000) })).toBe('approved');
    const asked = {
      estimates: [{ id: 1, revision: 1, sentAt: at(5), validUntil: onDay('2026-04-08'), total: cents(37_594) }],
      lines: [line(1, { answer: null, covered: false })],
      authorised: cents(0),
    };
    expect(wordOf(asked)).toBe('waiting approval');
    expect(wordOf({ ...asked, lines: [line(1)] })).toBe('checked in');
    expect(wordOf({ operations: [operation(1)], runs: [run(1)] })).toBe('in work');
    // Done without a start is work too.
    expect(wordOf({ operations: [operation(1, { finishedAt: at(9) }), operation(2)] })).toBe('in work');
  });

  it('is ready only when every casting is settled, nothing is asked and every bag is put away', () => {
    expect(wordOf(SIGNED)).toBe('ready');
    const missing = (more: Parameters<typeof factsOf>[0]) => ticketNow(factsOf({ ...SIGNED, ...more })).missing;
    expect(missing({ signOffs: [] })).toEqual(['30901 is not signed off.']);
    expect(missing({ containers: [container({ standsAt: 'bench' })] })).toEqual([
      'A bag or box is not put away as ready.',
    ]);
    expect(missing({ holds: [hold()] })).toEqual(['A hold is open.']);
    expect(missing({ holds: [hold({ reason: 'money' })] })).toEqual([]);
    expect(missing({ questions: [question()] })).toEqual(['Crack at seat 6: no answer yet.']);
    expect(missing({ questions: [question()], answers: [answer()] })).toEqual([]);
    const begun = [operation(1, { finishedAt: at(60) }), operation(2)];
    expect(missing({ operations: begun, runs: [run(2, { endedAt: at(70) })] })).toEqual([
      'An operation is begun and not done.',
    ]);
    expect(missing({ castings: [] })).toEqual(['No casting is on the ticket.']);
    expect(missing({ castings: [], ticket: { quick: true } })).toEqual([]);
    expect(missing({ items: [item({ customersOwn: true })] })).toEqual(["The customer's rockers is in no bag or box."]);
  });

  it('settles a casting by agreed scrap, by leaving, and by going home unworked', () => {
    const ready = (more: Parameters<typeof casting>[1]) => ticketNow(factsOf({ castings: [casting(1, more)] })).ready;
    expect(ready({})).toBe(false);
    expect(ready({ scrapAt: at(20) })).toBe(false);
    expect(ready({ scrapAt: at(20), scrapAgreed: true })).toBe(true);
    expect(ready({ outAt: at(20) })).toBe(true);
    expect(ready({ unworkedWhy: 'too far gone' })).toBe(true);
  });

  it('goes on to invoiced, paid, collected and closed', () => {
    const billed = { invoices: 1, unbilledLines: 0, unbilled: cents(0), invoiced: cents(38_171) };
    const owing = { ...SIGNED, money: { ...billed, balance: cents(38_171) } };
    const paid = { ...SIGNED, money: { ...billed, balance: cents(0) } };
    expect(wordOf(owing)).toBe('invoiced');
    expect(wordOf(paid)).toBe('paid');
    const out = [casting(1, { outAt: at(200) })];
    expect(wordOf({ ...owing, castings: out })).toBe('collected');
    expect(wordOf({ ...paid, castings: out })).toBe('closed');
    expect(wordOf({ ...paid, castings: out, money: { ...billed, openCores: 1 } })).toBe('collected');
    expect(wordOf({ ...paid, castings: out, money: { ...billed, unbilledLines: 1 } })).toBe('collected');
    // A ticket with nothing to hand out is collected when it is invoiced.
    expect(wordOf({ castings: [], ticket: { quick: true }, money: billed })).toBe('closed');
    expect(wordOf({ castings: [], ticket: { quick: true } })).toBe('ready');
  });

  it('keeps the words of an end above all others', () => {
    expect(wordOf({ ...SIGNED, ticket: { declinedAt: at(1) } })).toBe('declined');
    expect(wordOf({ ...SIGNED, ticket: { declinedAt: at(1), abandonedAt: at(2) } })).toBe('abandoned');
    expect(wordOf({ ticket: { arrivedAt: null } })).toBe('enquiry');
  });

  it('is over when closed, or when declined and nothing stands here', () => {
    const declined = { ticket: { declinedAt: at(1) } };
    expect(ticketNow(factsOf(declined)).over).toBe(false);
    expect(ticketNow(factsOf(declined)).chips.map((chip) => chip.chip)).toEqual(['goods still here']);
    expect(ticketNow(factsOf({ ...declined, castings: [casting(1, { outAt: at(5) })] })).over).toBe(true);
    expect(ticketNow(factsOf({ ...declined, disposed: true })).over).toBe(true);
  });

  it('wears chips for holds, questions, rush, comeback and what is partly out', () => {
    const now = ticketNow(
      factsOf({
        ticket: { rush: true, comeback: true },
        holds: [hold(), hold({ reason: 'money' })],
        questions: [question()],
        castings: [casting(1), casting(2, { outAt: at(9) })],
      }),
    );
    expect(now.chips.map((chip) => chip.words)).toEqual(['held (2)', 'unanswered', 'RUSH', 'comeback', 'partly out']);
  });
});

describe('isLate', () => {
  const promise = { day: onDay('2026-03-09'), minute: 1020 };
  const now = (word: 'in work' | 'ready' | 'collected', ready = false) => ({ word, ready });

  it('is late from the promised minute on while the work is not ready', () => {
    expect(isLate(promise, now('in work'), { day: onDay('2026-03-09'), minute: 1019 })).toBe(false);
    expect(isLate(promise, now('in work'), { day: onDay('2026-03-09'), minute: 1020 })).toBe(true);
    expect(isLate(promise, now('in work'), { day: onDay('2026-03-10'), minute: 0 })).toBe(true);
    expect(isLate(promise, now('ready', true), { day: onDay('2026-03-10'), minute: 0 })).toBe(false);
    expect(isLate(promise, now('collected'), { day: onDay('2026-03-10'), minute: 0 })).toBe(false);
    expect(isLate(null, now('in work'), { day: onDay('2026-03-10'), minute: 0 })).toBe(false);
  });
});

describe('chipsOfToday', () => {
  it('says late and overdue by the day they are read', () => {
    const facts = factsOf({
      promises: [{ day: onDay('2026-03-09'), minute: 1020, ownTime: false, dependsOn: null, at: at(0) }],
      money: { balance: cents(100), dueOn: onDay('2026-03-20'), invoices: 1 },
    });
    const chips = (day: string) => chipsOfToday(ticketNow(facts), { day: onDay(day), minute: 0 }).map((c) => c.chip);
    expect(chips('2026-03-09')).toEqual([]);
    expect(chips('2026-03-20')).toEqual(['late']);
    expect(chips('2026-03-21')).toEqual(['late', 'overdue']);
  });
});
