/** A question to the customer as it is typed, and how it becomes the request. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { type FormatSettings, readMoney } from '#core/kernel/format.ts';
import { readCount } from '../../../kit/count.tsx';
import { quantityFault, readQuantity } from '../parts/quantity.ts';

export type WorkTyped = Readonly<{ key: string; id: number; words: string; quantity: string; hourly: boolean }>;
export type PartTyped = Readonly<{ key: string; id: number; words: string; quantity: string }>;
export type ChargeTyped = Readonly<{ key: string; words: string; price: string }>;
export type WayTyped = Readonly<{
  key: string;
  kind: 'work' | 'other_casting';
  words: string;
  operations: readonly WorkTyped[];
  /** From the stock, at its list price. */
  parts: readonly PartTyped[];
  /** Other parts, outside work and anything with a price of its own. */
  charges: readonly ChargeTyped[];
  daysMore: string;
  ifDeclined: string;
}>;

export type AskTyped = Readonly<{
  castingId: number;
  findings: readonly number[];
  words: string;
  ways: readonly WayTyped[];
  /** Day and time the answer is needed by, as typed. */
  day: string;
  time: string;
  ifNoAnswer: string;
}>;

export const emptyWay = (key: string): WayTyped => ({
  key,
  kind: 'work',
  words: '',
  operations: [],
  parts: [],
  charges: [],
  daysMore: '',
  ifDeclined: '',
});

type PriceInput = InputOf<App['approvals/get-added-work-price']>;

/** Why it cannot be asked yet, or undefined. */
export function askMissing(typed: AskTyped, settings: FormatSettings): string | undefined {
  if (typed.words.trim() === '') return 'Write what was found, in words for the customer.';
  const bare = typed.ways.find((way) => way.words.trim() === '');
  if (bare) return 'Write each way in plain words.';
  const wrong = typed.ways.flatMap((way) => way.charges).find((charge) => readMoney(charge.price, settings) === null);
  if (wrong) return `Write a price for ${wrong.words || 'each charge'}, for example 120.00.`;
  const unread = typed.ways.flatMap((way) => way.operations).find((work) => quantityFault(work.quantity, work.hourly));
  if (unread) return `${unread.words}: ${quantityFault(unread.quantity, unread.hourly)}`;
  return typed.day === '' ? 'Choose the day you need the answer by.' : undefined;
}

/** What is priced and asked. A charge without a readable price is left out of the price. */
export function askInput(ticketId: number, typed: AskTyped, settings: FormatSettings): PriceInput {
  return {
    ticketId,
    castingId: typed.castingId,
    findings: [...typed.findings],
    words: typed.words.trim() || 'What was found',
    options: typed.ways.map((way) => ({
      kind: way.kind,
      words: way.words.trim() || 'Go on',
      daysMore: readCount(way.daysMore, 400) ?? 0,
      ifDeclinedWords: way.ifDeclined.trim() || null,
      operations: way.operations.map((work) => ({
        operationKindId: work.id,
        quantity: readQuantity(work.quantity, work.hourly),
      })),
      parts: way.parts.map((part) => ({ stockItemId: part.id, quantity: readQuantity(part.quantity, false) ?? 1 })),
      charges: way.charges.flatMap((charge) => {
        const cents = readMoney(charge.price, settings);
        if (cents === null || charge.words.trim() === '') return [];
        return [
          {
            kind: 'text' as const,
            words: charge.words.trim(),
            price: cents * 100,
            priceWhy: 'typed when the question was made',
          },
        ];
      }),
    })),
  };
}
