import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '#core/kernel/days.ts';
import { cents } from '#core/kernel/units.ts';
import { allocateOldestFirst, balanceOf, dueDay, leftOf, moneyWord } from '#core/money/compute.ts';

describe('dueDay', () => {
  it.each([
    ['on_receipt', 0, '2027-03-02', '2027-03-02'],
    ['net', 30, '2027-05-11', '2027-06-10'],
    ['net', 15, '2027-01-28', '2027-02-12'],
    ['net', 30, '2028-01-31', '2028-03-01'],
    ['end_of_month', 30, '2027-02-10', '2027-03-30'],
    ['end_of_month', 0, '2028-02-10', '2028-02-29'],
    ['end_of_month', 30, '2027-12-31', '2028-01-30'],
  ] as const)('%s %i issued %s is due %s', (kind, days, issued, due) => {
    expect(dueDay({ kind, days }, day(issued))).toBe(due);
  });
});

describe('balanceOf and leftOf', () => {
  it('subtract what was allocated and written off', () => {
    expect(balanceOf(cents(155941), [cents(35400)], [])).toBe(120541);
    expect(balanceOf(cents(10000), [cents(4000), cents(-4000)], [cents(10)])).toBe(9990);
    expect(leftOf(cents(5000), [cents(1200), cents(800)])).toBe(3000);
  });
});

describe('moneyWord', () => {
  const invoice = {
    total: cents(100),
    balance: cents(100),
    credited: cents(0),
    disputed: false,
    dueOn: day('2026-03-09'),
  };
  it.each([
    [{}, '2026-03-09', 'invoiced'],
    [{}, '2026-03-10', 'overdue'],
    [{ balance: cents(40) }, '2026-03-09', 'part paid'],
    [{ balance: cents(0) }, '2026-04-09', 'paid'],
    [{ disputed: true }, '2026-04-09', 'disputed'],
    [{ credited: cents(100), balance: cents(0) }, '2026-03-09', 'credited'],
    [{ total: cents(0), balance: cents(0) }, '2026-03-09', 'paid'],
  ])('%o on %s is %s', (changes, today, word) => {
    expect(moneyWord({ ...invoice, ...changes }, day(today))).toBe(word);
  });
});

describe('allocateOldestFirst', () => {
  const purse = (id: number, left: number, on = '2026-01-01') => ({ id, left: cents(left), receivedOn: day(on) });
  const open = (id: number, balance: number, on = '2026-01-01') => ({ id, balance: cents(balance), dueOn: day(on) });

  it('pays the oldest invoice first from the oldest payment', () => {
    const shares = allocateOldestFirst(
      [purse(1, 500, '2026-02-01'), purse(2, 300, '2026-01-05')],
      [open(9, 400, '2026-03-01'), open(8, 350, '2026-02-01')],
    );
    expect(shares).toEqual([
      { purse: 2, open: 8, amount: 300 },
      { purse: 1, open: 8, amount: 50 },
      { purse: 1, open: 9, amount: 400 },
    ]);
  });

  it('does nothing without money or without anything open', () => {
    expect(allocateOldestFirst([], [open(1, 5)])).toEqual([]);
    expect(allocateOldestFirst([purse(1, 5)], [])).toEqual([]);
    expect(allocateOldestFirst([purse(1, 0)], [open(1, 5)])).toEqual([]);
  });

  it('never takes more than is left or open, and stops only when one side is used up (I28)', () => {
    const start = day('2026-01-01');
    const side = fc.array(fc.record({ amount: fc.nat({ max: 5000 }), days: fc.nat({ max: 40 }) }), { maxLength: 8 });
    fc.assert(
      fc.property(side, side, (money, bills) => {
        const purses = money.map((m, id) => purse(id + 1, m.amount, addDays(start, m.days)));
        const opens = bills.map((b, id) => open(id + 1, b.amount, addDays(start, b.days)));
        const shares = allocateOldestFirst(purses, opens);
        const total = shares.reduce((sum, s) => sum + s.amount, 0);
        const spent = (id: number) => shares.filter((s) => s.purse === id).reduce((sum, s) => sum + s.amount, 0);
        const paid = (id: number) => shares.filter((s) => s.open === id).reduce((sum, s) => sum + s.amount, 0);
        expect(purses.every((p) => spent(p.id) <= p.left)).toBe(true);
        expect(opens.every((o) => paid(o.id) <= o.balance)).toBe(true);
        const sum = (rows: readonly { amount: number }[]) => rows.reduce((n, r) => n + r.amount, 0);
        expect(total).toBe(Math.min(sum(money), sum(bills)));
        expect(shares.every((s) => s.amount > 0)).toBe(true);
      }),
    );
  });
});
