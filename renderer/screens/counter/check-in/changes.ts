/** What the hand does on the check-in page, as plain changes of what is typed. */
import {
  type CastingTyped,
  type CheckInTyped,
  emptyCasting,
  type ItemTyped,
  nextKey,
  type Position,
  type WishTyped,
} from './typed.ts';

/** One casting changed. */
export const changeCasting = (typed: CheckInTyped, key: string, changes: Partial<CastingTyped>): CheckInTyped => ({
  ...typed,
  castings: typed.castings.map((casting) => (casting.key === key ? { ...casting, ...changes } : casting)),
});

/** Another casting, empty, and the hand is at it. */
export function addCasting(typed: CheckInTyped): CheckInTyped {
  const key = nextKey(typed.castings, 'c');
  return { ...typed, castings: [...typed.castings, emptyCasting(key)], at: key };
}

const OTHER_SIDE: Readonly<Record<Position, Position>> = {
  left: 'right',
  right: 'left',
  front_bank: 'rear_bank',
  rear_bank: 'front_bank',
  single: 'not_known',
  not_known: 'not_known',
};

/**
 * The other one of the same engine: same type, metal and list, nothing counted, the other side. Work asked for one of
 * them stays with that one; work for all is for both.
 */
export function addPairOf(typed: CheckInTyped, key: string): CheckInTyped {
  const first = typed.castings.find((casting) => casting.key === key);
  if (!first) return typed;
  const pair = first.pair ?? Math.max(0, ...typed.castings.map((casting) => casting.pair ?? 0)) + 1;
  const other: CastingTyped = {
    ...first,
    key: nextKey(typed.castings, 'c'),
    pair,
    position: first.position ? OTHER_SIDE[first.position] : null,
    tagNo: '',
    castingNumber: '',
    serial: '',
    shopStamp: '',
    earlierStamps: '',
    items: first.items.map((item) => ({ ...item, counted: null, more: '', box: null })),
    boxes: [],
    marks: [],
    photos: [],
  };
  const paired = changeCasting(typed, key, { pair });
  return { ...paired, castings: [...paired.castings, other], at: other.key };
}

/** Without a casting; work that was for it alone goes with it. */
export function dropCasting(typed: CheckInTyped, key: string): CheckInTyped {
  const castings = typed.castings.filter((casting) => casting.key !== key);
  return {
    ...typed,
    castings,
    at: typed.at === key ? (castings.at(-1)?.key ?? null) : typed.at,
    wishes: typed.wishes.flatMap((wish) => withoutCasting(wish, key)),
  };
}

function withoutCasting(wish: WishTyped, key: string): WishTyped[] {
  if (!wish.castings.includes(key)) return [wish];
  const castings = wish.castings.filter((one) => one !== key);
  return castings.length === 0 ? [] : [{ ...wish, castings }];
}

/** One item of a casting's list changed. */
export const changeItem = (casting: CastingTyped, position: number, changes: Partial<ItemTyped>): CastingTyped => ({
  ...casting,
  items: casting.items.map((item, at) => (at === position ? { ...item, ...changes } : item)),
});

/** Lines that are to be counted now: what came assembled hides its inside until it is taken apart. */
const countedNow = (casting: CastingTyped): readonly ItemTyped[] =>
  casting.items.filter((item) => !(casting.cameAssembled && item.inside));

/** `8 of 9 lines counted`. */
export function countedWords(casting: CastingTyped): string {
  const lines = countedNow(casting);
  return `${lines.filter((item) => item.counted !== null).length} of ${lines.length} lines counted`;
}

/** Every line that is not counted yet came as the type says. */
export const countAsExpected = (casting: CastingTyped): CastingTyped => ({
  ...casting,
  items: casting.items.map((item) =>
    item.counted === null && item.expected !== null && !(casting.cameAssembled && item.inside)
      ? { ...item, counted: item.expected }
      : item,
  ),
});

/** One more thing asked for; the same operation for the same castings is not added twice. */
export function addWish(typed: CheckInTyped, wish: Omit<WishTyped, 'key'>): CheckInTyped {
  const there = typed.wishes.some(
    (one) =>
      one.kind === wish.kind &&
      one.code === wish.code &&
      one.words === wish.words &&
      one.castings.join() === wish.castings.join(),
  );
  if (there) return typed;
  return { ...typed, wishes: [...typed.wishes, { ...wish, key: nextKey(typed.wishes, 'w') }] };
}

/** One wish changed. */
export const changeWish = (typed: CheckInTyped, key: string, changes: Partial<WishTyped>): CheckInTyped => ({
  ...typed,
  wishes: typed.wishes.map((wish) => (wish.key === key ? { ...wish, ...changes } : wish)),
});

/** Without a wish. */
export const dropWish = (typed: CheckInTyped, key: string): CheckInTyped => ({
  ...typed,
  wishes: typed.wishes.filter((wish) => wish.key !== key),
});

/** What a casting is called on the page before it has a tag: `Head 1 of 2, left`. */
export function castingWords(typed: CheckInTyped, casting: CastingTyped): string {
  const kind = KIND_WORDS[casting.kind ?? casting.described?.kind ?? 'other'];
  const alike = typed.castings.filter(
    (one) => (one.kind ?? one.described?.kind) === (casting.kind ?? casting.described?.kind),
  );
  const piece = alike.length > 1 ? ` ${alike.indexOf(casting) + 1} of ${alike.length}` : '';
  const position = casting.position ? POSITION_WORDS[casting.position] : '';
  return `${kind}${piece}${position === '' ? '' : `, ${position}`}`;
}

/** Kinds as the shop says them. */
export const KIND_WORDS: Readonly<Record<string, string>> = {
  head: 'Head',
  block: 'Block',
  intake_manifold: 'Intake manifold',
  exhaust_manifold: 'Exhaust manifold',
  crank: 'Crank',
  rod_set: 'Rods',
  flywheel: 'Flywheel',
  cover: 'Cover',
  other: 'Casting',
};

const POSITION_WORDS: Readonly<Record<Position, string>> = {
  left: 'left',
  right: 'right',
  front_bank: 'front',
  rear_bank: 'rear',
  single: 'single',
  not_known: 'side not known',
};
