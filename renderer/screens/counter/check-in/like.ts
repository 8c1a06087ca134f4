/** The castings and work of another ticket as new castings on this page. Pure. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { hoursText, isHourly } from '../parts/quantity.ts';
import { type CheckInTyped, emptyCasting, nextKey, type WishTyped } from './typed.ts';

export type LikeParts = Readonly<{
  like: OutputOf<App['tickets/get-like']>;
  ticketId: number;
  kinds: OutputOf<App['operations/list-kinds']>['kinds'];
  packages: OutputOf<App['operations/list-packages']>['packages'];
  types: OutputOf<App['operations/list-casting-types']>['types'];
}>;

/** Adds to what is typed; the metal stays open, because it is looked at anew on each casting. */
export function likeTicket(typed: CheckInTyped, { like, ticketId, kinds, packages, types }: LikeParts): CheckInTyped {
  const firstPair = Math.max(0, ...typed.castings.map((casting) => casting.pair ?? 0));
  const castings = [...typed.castings];
  const keys = like.castings.map((copied) => {
    const key = nextKey(castings, 'c');
    const type = types.find((one) => one.code === copied.type);
    castings.push({
      ...emptyCasting(key),
      typeText: copied.typeName,
      type: copied.type,
      typeId: type?.id ?? null,
      kind: type?.kind ?? null,
      position: copied.position,
      closeTolerance: copied.closeTolerance,
      pair: copied.pair === null ? null : firstPair + copied.pair,
    });
    return key;
  });
  const wishes = [...typed.wishes];
  for (const wish of like.wishes) {
    const forAll = wish.castings.length === 0 || wish.castings.length === keys.length;
    wishes.push({
      ...wishOfCatalogue(wish, kinds, packages),
      key: nextKey(wishes, 'w'),
      quantity: quantityText(wish, kinds),
      castings: forAll && typed.castings.length === 0 ? [] : wish.castings.flatMap((at) => keys[at] ?? []),
    });
  }
  return {
    ...typed,
    castings,
    wishes,
    at: keys[0] ?? typed.at,
    like: ticketId,
    use: typed.use || (like.useWords ?? ''),
    gasket: typed.gasket === 'not_asked' ? like.gasket : typed.gasket,
    lift: typed.lift || (like.valveLift ?? ''),
  };
}

/** Pieces as a figure, working time as hours and minutes. */
function quantityText(wish: Copied, kinds: LikeParts['kinds']): string {
  if (wish.quantity === null) return '';
  const kind = kinds.find((one) => one.code === wish.operation);
  return kind && isHourly(kind, null) ? hoursText(wish.quantity) : String(wish.quantity);
}

type Copied = LikeParts['like']['wishes'][number];

/** The wish under today's words of the catalogue; what is no longer there stays as words. */
function wishOfCatalogue(
  wish: Copied,
  kinds: LikeParts['kinds'],
  packages: LikeParts['packages'],
): Omit<WishTyped, 'key' | 'quantity' | 'castings'> {
  const kind = kinds.find((one) => one.code === wish.operation);
  const found = kind ?? packages.find((one) => one.code === wish.package);
  if (!found) {
    return {
      kind: 'said',
      id: null,
      code: null,
      words: wish.words,
      customerWords: wish.words,
      said: wish.words,
      note: '',
    };
  }
  return {
    kind: kind ? 'operation' : 'package',
    hourly: kind !== undefined && isHourly(kind, null),
    id: found.id,
    code: found.code,
    words: found.shopWords,
    customerWords: found.customerWords,
    said: '',
    note: '',
  };
}
