/**
 * How much of a trade account is used, and how old what it owes is.
 *
 * Source: common practice, no source. "Exactly 30 days late" belongs to 1-30.
 */
import { type Day, daysBetween } from '../../kernel/days.ts';
import { type BasisPoints, basisPoints, type Cents, cents, ONE, sumCents } from '../../kernel/units.ts';

export type AccountUse = Readonly<{
  used: Cents;
  limit: Cents | null;
  /** Share of the limit, rounded down to 1/100 %, so that "80 %" is never shown too early; null without a limit. */
  bp: BasisPoints | null;
  /** `over` from more than the limit, `warn` from the shop's share of it; `none` without a limit. */
  state: 'none' | 'ok' | 'warn' | 'over';
}>;

/**
 * Use of an account: what is owed plus what is authorised and not yet billed.
 *
 * @param openBalances of all issued invoices, credits as negative
 * @param unbilledAuthorised with tax, of all open tickets
 */
export function accountUse(
  openBalances: readonly Cents[],
  unbilledAuthorised: readonly Cents[],
  limit: Cents | null,
  warnFrom: BasisPoints,
): AccountUse {
  const used = cents(sumCents(openBalances) + sumCents(unbilledAuthorised));
  if (limit === null) return { used, limit, bp: null, state: 'none' };
  const bp = limit === 0 ? 0 : Number((BigInt(Math.max(used, 0)) * BigInt(ONE)) / BigInt(limit));
  const warn = BigInt(used) * BigInt(ONE) >= BigInt(limit) * BigInt(warnFrom);
  const state = used > limit ? 'over' : warn && used > 0 ? 'warn' : 'ok';
  return { used, limit, bp: basisPoints(bp), state };
}

export const AGE_BUCKETS = ['current', '1-30', '31-60', '61-90', 'over 90'] as const;
export type AgeBucket = (typeof AGE_BUCKETS)[number];

/** Days past the day age is counted from; 0 or less is not late. */
export const daysLate = (from: Day, asOf: Day): number => daysBetween(from, asOf);

/** The bucket of so many days late. */
export function ageBucket(late: number): AgeBucket {
  if (late <= 0) return 'current';
  if (late <= 30) return '1-30';
  if (late <= 60) return '31-60';
  return late <= 90 ? '61-90' : 'over 90';
}

export type AgeRow = Readonly<Record<AgeBucket, Cents>>;

/** Open balances by age. Money not applied to an invoice is no part of it: it is shown beside, never netted unseen. */
export function agedBalances(open: readonly Readonly<{ from: Day; balance: Cents }>[], asOf: Day): AgeRow {
  const sum = (bucket: AgeBucket) =>
    sumCents(open.filter((row) => ageBucket(daysLate(row.from, asOf)) === bucket).map((row) => row.balance));
  return {
    current: sum('current'),
    '1-30': sum('1-30'),
    '31-60': sum('31-60'),
    '61-90': sum('61-90'),
    'over 90': sum('over 90'),
  };
}
