/** The live price of what is typed, and the promise that could be given. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { type FormatSettings, readMoney } from '#core/kernel/format.ts';
import { readQuantity } from '../parts/quantity.ts';
import type { CastingTyped, CheckInTyped, WishTyped } from './typed.ts';

export type Quote = OutputOf<App['pricing/get-quote']>;
type QuoteInput = InputOf<App['pricing/get-quote']>;
type SuggestionInput = InputOf<App['promises/get-suggestion']>;

const isFor = (wish: WishTyped, casting: CastingTyped): boolean =>
  wish.castings.length === 0 || wish.castings.includes(casting.key);

/** Castings that can be priced: their type and metal are known. */
const priced = (typed: CheckInTyped): readonly CastingTyped[] =>
  typed.castings.filter((casting) => casting.type !== null && casting.material !== null);

/** The request for the price, or null while there is nothing to price. */
export function quoteInput(typed: CheckInTyped, settings: FormatSettings, rush: number): QuoteInput | null {
  const castings = priced(typed);
  if (castings.length === 0 || typed.wishes.length === 0) return null;
  return {
    customerId: typed.customer.id,
    castings: castings.map((casting) => ({
      key: casting.key,
      type: casting.type ?? '',
      material: casting.material ?? 'not_known',
      closeTolerance: casting.closeTolerance,
      operations: typed.wishes
        .filter((wish) => wish.kind === 'operation' && wish.id !== null && isFor(wish, casting))
        .map((wish) => ({
          operationKindId: wish.id ?? 0,
          quantity: readQuantity(wish.quantity, wish.hourly),
          wishedWords: wish.said.trim() || null,
          countNote: wish.note.trim() || null,
        })),
      packages: typed.wishes
        .filter((wish) => wish.kind === 'package' && wish.id !== null && isFor(wish, casting))
        .map((wish) => ({ packageId: wish.id ?? 0, wishedWords: wish.said.trim() || null })),
      parts: typed.wishes
        .filter((wish) => wish.kind === 'part' && wish.id !== null && isFor(wish, casting))
        .map((wish) => ({ stockItemId: wish.id, quantity: readQuantity(wish.quantity, false) ?? 1 })),
    })),
    rushBp: typed.rush ? rush : null,
    ceiling: readMoney(typed.ceiling, settings),
    ceilingTaxIn: typed.ceilingTaxIn,
  };
}

/** The request for a promise, or null while there is nothing to reckon. */
export function suggestionInput(typed: CheckInTyped): SuggestionInput | null {
  const castings = priced(typed);
  if (castings.length === 0 || typed.wishes.every((wish) => wish.code === null)) return null;
  return {
    castings: castings.map((casting) => ({
      type: casting.type ?? '',
      material: casting.material ?? 'not_known',
      operations: typed.wishes.flatMap((wish) => {
        if (wish.kind !== 'operation' || wish.code === null || !isFor(wish, casting)) return [];
        const quantity = readQuantity(wish.quantity, wish.hourly);
        return [{ operation: wish.code, ...(quantity !== null && { quantity }) }];
      }),
      packages: typed.wishes.flatMap((wish) =>
        wish.kind === 'package' && wish.code !== null && isFor(wish, casting) ? [wish.code] : [],
      ),
    })),
    rush: typed.rush,
  };
}

type QuoteLine = Quote['lines'][number];

/** The lines of the quote that a wish stands for, in the quote's order. */
export const linesOf = (wish: WishTyped, quote: Quote): readonly QuoteLine[] =>
  quote.lines.filter(
    (line) =>
      ((wish.kind === 'operation' && line.operationKindId === wish.id) ||
        (wish.kind === 'package' && line.packageId === wish.id) ||
        (wish.kind === 'part' && line.kind === 'part' && line.words === wish.words)) &&
      (wish.castings.length === 0 || line.castingKey === null || wish.castings.includes(line.castingKey)),
  );

/** The refusals of a wish. */
export const refusalsOf = (wish: WishTyped, quote: Quote): Quote['refusals'] =>
  quote.refusals.filter(
    (refusal) =>
      ((wish.kind === 'operation' && refusal.operationKindId === wish.id) ||
        (wish.kind === 'package' && refusal.packageId === wish.id)) &&
      (wish.castings.length === 0 || wish.castings.includes(refusal.castingKey)),
  );
