/** A payment as typed. Pure. */
import { type FormatSettings, readMoney } from '#core/kernel/format.ts';
import type { Cents } from '#core/kernel/units.ts';

/** `account`: nothing is taken, the bill stays open. */
export type PayKind = 'card' | 'cash' | 'cheque' | 'transfer' | 'account';
export type PaymentTyped = Readonly<{ kind: PayKind | null; amount: string; slip: string }>;

export const EMPTY_PAYMENT: PaymentTyped = { kind: null, amount: '', slip: '' };

export const isPayment = (value: unknown): value is PaymentTyped =>
  typeof value === 'object' && value !== null && 'kind' in value && 'amount' in value && 'slip' in value;

export type PaymentRead = Readonly<{ amount: Cents | null; wrong: string | undefined; missing: string | undefined }>;

/** How a payment reads. `open`: used while nothing is typed, so that the whole sum needs no typing. */
export function readPayment(
  typed: PaymentTyped,
  open: number,
  settings: Pick<FormatSettings, 'language' | 'currencySign'>,
): PaymentRead {
  const text = typed.amount.trim();
  const amount = text === '' ? (open > 0 ? (open as Cents) : null) : readMoney(text, settings);
  const wrong =
    text !== '' && amount === null
      ? 'Write an amount, for example 544.47.'
      : amount !== null && amount <= 0
        ? 'Write an amount above 0.'
        : undefined;
  if (typed.kind === null) return { amount, wrong, missing: 'Choose how they pay.' };
  return { amount, wrong, missing: wrong ?? (amount === null ? 'Write the amount.' : undefined) };
}
