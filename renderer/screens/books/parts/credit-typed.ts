/** A credit note as typed. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { type FormatSettings, readMoney } from '#core/kernel/format.ts';

type CreditInput = InputOf<App['invoices/credit-invoice']>;
export type CreditReason = CreditInput['reason'];

export type CreditTyped = Readonly<{
  /** Amounts by line; a line that is missing here is not credited, an empty text is all that is left of it. */
  lines: Readonly<Record<string, string>>;
  reason: CreditReason | null;
  words: string;
}>;

export const EMPTY_CREDIT: CreditTyped = { lines: {}, reason: null, words: '' };

export const isCredit = (value: unknown): value is CreditTyped =>
  typeof value === 'object' && value !== null && 'lines' in value && 'reason' in value && 'words' in value;

type Settings = Pick<FormatSettings, 'language' | 'currencySign'>;

/** What is wrong with the amount of a line, or undefined. */
export const amountWrong = (text: string | undefined, settings: Settings): string | undefined =>
  text === undefined || text.trim() === '' || readMoney(text, settings) !== null
    ? undefined
    : 'Write an amount, for example 35.00.';

/** Why it cannot be sent yet, or undefined. */
export function creditMissing(typed: CreditTyped, settings: Settings): string | undefined {
  const chosen = Object.values(typed.lines);
  if (chosen.length === 0) return 'Choose what is credited.';
  if (chosen.some((text) => amountWrong(text, settings))) return 'An amount cannot be read.';
  if (typed.reason === null) return 'Choose the reason.';
  return typed.words.trim() === '' ? 'Write why.' : undefined;
}

/** The request; lines in the order given. */
export const creditInput = (
  invoiceId: number,
  ids: readonly number[],
  typed: CreditTyped,
  settings: Settings,
): CreditInput => ({
  invoiceId,
  lines: ids
    .filter((id) => typed.lines[id] !== undefined)
    .map((id) => ({ invoiceLineId: id, amount: readMoney(typed.lines[id] ?? '', settings) })),
  reason: typed.reason ?? ('' as CreditReason),
  words: typed.words,
});
