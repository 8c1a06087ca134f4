/**
 * Money after the invoice: what is open, when it is due, which payment goes where. Whole cents; nothing is rounded here.
 *
 * Source: common practice, no source.
 */
import { addDays, type Day, endOfMonth } from '../kernel/days.ts';
import { type Cents, cents, sumCents } from '../kernel/units.ts';

export const TERMS_KINDS = ['on_receipt', 'net', 'end_of_month'] as const;
export type Terms = Readonly<{ kind: (typeof TERMS_KINDS)[number]; days: number }>;

/** The day an invoice is due: the day of issue, n days after it, or n days after the last day of its month. */
export function dueDay(terms: Terms, issuedOn: Day): Day {
  switch (terms.kind) {
    case 'on_receipt':
      return issuedOn;
    case 'net':
      return addDays(issuedOn, terms.days);
    case 'end_of_month':
      return addDays(endOfMonth(issuedOn), terms.days);
  }
}

/** What is still open on an invoice: its total less allocations (payments and credits) and write-offs. */
export const balanceOf = (total: Cents, allocated: readonly Cents[], writtenOff: readonly Cents[]): Cents =>
  cents(total - sumCents(allocated) - sumCents(writtenOff));

/** What is left of a payment or a credit note: its amount less what was allocated of it. */
export const leftOf = (amount: Cents, allocated: readonly Cents[]): Cents => cents(amount - sumCents(allocated));

/** The word of an invoice, as the money words of a ticket print it. */
export type MoneyWord = 'credited' | 'disputed' | 'paid' | 'overdue' | 'part paid' | 'invoiced';

/** First match from the top. `credited`: credit notes make up the whole total. */
export function moneyWord(
  invoice: Readonly<{ total: Cents; balance: Cents; credited: Cents; disputed: boolean; dueOn: Day }>,
  today: Day,
): MoneyWord {
  if (invoice.total > 0 && invoice.credited === invoice.total) return 'credited';
  if (invoice.disputed) return 'disputed';
  if (invoice.balance <= 0) return 'paid';
  if (today > invoice.dueOn) return 'overdue';
  return invoice.balance < invoice.total ? 'part paid' : 'invoiced';
}

export type Purse = Readonly<{ id: number; receivedOn: Day; left: Cents }>;
export type Open = Readonly<{ id: number; dueOn: Day; balance: Cents }>;
export type Share = Readonly<{ purse: number; open: number; amount: Cents }>;

/**
 * Put money on invoices, both oldest first (then by id), until one side is used up. Never more than what is left of a
 * payment nor than what is open on an invoice.
 *
 * @returns one share a pair with an amount; may be empty
 */
export function allocateOldestFirst(purses: readonly Purse[], opens: readonly Open[]): Share[] {
  const money = [...purses].filter((p) => p.left > 0).sort((a, b) => byText(a.receivedOn, b.receivedOn) || a.id - b.id);
  const shares: Share[] = [];
  let purse = money.shift();
  let left = purse?.left ?? 0;
  for (const open of [...opens].sort((a, b) => byText(a.dueOn, b.dueOn) || a.id - b.id)) {
    let wanted: number = open.balance;
    while (purse && wanted > 0) {
      const amount = Math.min(left, wanted);
      shares.push({ purse: purse.id, open: open.id, amount: cents(amount) });
      wanted -= amount;
      left -= amount;
      if (left === 0) {
        purse = money.shift();
        left = purse?.left ?? 0;
      }
    }
  }
  return shares;
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
