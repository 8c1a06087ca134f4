/** A quick ticket as typed, and how it becomes the request. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { Cents } from '#core/kernel/units.ts';
import { readCount } from '../../../kit/count.tsx';
import { castingInput, customerInput } from '../check-in/request.ts';
import { type CastingTyped, EMPTY_CHECK_IN } from '../check-in/typed.ts';

export type QuickTyped = Readonly<{
  customerId: number | null;
  name: string;
  words: string;
  quantity: string;
  price: string;
  taxClass: 'labour_repair' | 'labour_fabrication' | 'part' | 'fee';
  stays: boolean;
}>;

export const EMPTY_QUICK: QuickTyped = {
  customerId: null,
  name: '',
  words: '',
  quantity: '1',
  price: '',
  taxClass: 'labour_repair',
  stays: false,
};

export const isQuick = (value: unknown): value is QuickTyped =>
  typeof value === 'object' && value !== null && Object.keys(EMPTY_QUICK).every((key) => key in value);

/** Why it cannot be kept yet, or undefined. `price` null: it cannot be read. */
export function quickMissing(typed: QuickTyped, price: Cents | null, casting: CastingTyped): string | undefined {
  if (typed.name.trim() === '') return 'Write a name or a telephone.';
  if (typed.words.trim() === '') return 'Write what is done.';
  if (price === null) return 'Write the price, for example 35.00.';
  if (!typed.stays) return undefined;
  if (casting.type === null && casting.described === null) return 'Choose the casting type, or describe it.';
  return casting.material === null ? 'Metal is not chosen. Magnet sticks: iron.' : undefined;
}

/** Digits alone are a telephone, anything else a name. */
export const quickInput = (
  typed: QuickTyped,
  price: Cents,
  casting: CastingTyped,
): InputOf<App['tickets/quick-ticket']> => ({
  customer: customerInput({
    customer: {
      ...EMPTY_CHECK_IN.customer,
      id: typed.customerId,
      name: typed.name,
      phone: /^[\d\s+()-]+$/.test(typed.name.trim()) ? typed.name.trim() : '',
    },
  }),
  words: typed.words,
  price: price * 100,
  quantity: readCount(typed.quantity, 10_000) || 1,
  taxClass: typed.taxClass,
  casting: typed.stays ? castingInput(casting) : null,
});
