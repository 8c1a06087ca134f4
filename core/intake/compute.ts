/** Words of what came with a casting: counts, mix-up rules, containers, fates. Pure and browser-safe. */

export const MIX_WORDS = {
  none: null,
  keep_order: 'keep in order',
  own_place: 'belongs to its own place',
} as const;
export const CONTAINER_WORDS = {
  bag: 'Bag',
  tray: 'Tray',
  board: 'Board',
  box: 'Box',
  basket: 'Basket',
  pallet: 'Pallet',
} as const;
export const OWNER_WORDS = {
  ours_with_casting: 'with the casting',
  customers_own: "customer's own",
  new: 'new',
  old_return: 'OLD - RETURN',
} as const;
export const FATE_WORDS = {
  in_casting: 'in the casting',
  replaced: 'replaced',
  in_bag: 'in a bag',
  returned: 'returned',
  scrapped_agreed: 'scrapped with agreement',
} as const;
export const STAGE_WORDS = {
  teardown: 'at teardown',
  after_wash: 'after the wash',
  assembly: 'at assembly',
  out: 'out',
} as const;

export type Counted = Readonly<{ expected: number | null; counted: number | null; missing: boolean }>;

/** Fewer than expected, or written as missing. Not counted is not short: nobody looked yet. */
export const isShort = ({ expected, counted, missing }: Counted): boolean =>
  missing || (expected !== null && counted !== null && counted < expected);

/** "8 of 8", "1 of 2, one short", "not counted", "missing at arrival". */
export function countWords(item: Counted): string {
  if (item.missing) return 'missing at arrival';
  if (item.counted === null) return item.expected === null ? 'not counted' : `not counted, usually ${item.expected}`;
  if (item.expected === null) return String(item.counted);
  const short = item.expected - item.counted;
  const more = short > 0 ? `, ${short} short` : short < 0 ? `, ${-short} more` : '';
  return `${item.counted} of ${item.expected}${more}`;
}

/** What must be said at the door about one line: the last count differs from what came in, or nobody says where it is. */
export type DoorItem = Readonly<{
  words: string;
  counted: number | null;
  missing: boolean;
  /** The count out, when somebody counted. */
  out: number | null;
  explained: string | null;
  fate: keyof typeof FATE_WORDS | null;
}>;

/**
 * Why a line cannot leave: counted in = counted out or explained, and it ends in one fate.
 *
 * @returns a sentence, or null when it may go. A line that was missing from the start, or counted as none, has nothing to
 *   count out; one that nobody counted still ends somewhere: unknown is not none.
 */
export function doorStop(item: DoorItem): string | null {
  if (item.missing || item.counted === 0) return null;
  if (item.counted === null) {
    return item.fate === null ? `${item.words}: nobody counted them. Say where they are, or count none.` : null;
  }
  if (item.fate === null)
    return `${item.words}: say where they are (in the casting, replaced, in a bag, returned, scrapped with agreement).`;
  const out = item.out ?? (item.fate === 'in_bag' || item.fate === 'returned' ? null : item.counted);
  if (out === null) return `${item.words}: ${item.counted} came, none counted out. Count before handing over.`;
  if (out !== item.counted && item.explained === null) {
    return `${item.counted} ${item.words} came, ${out} counted out. Explain before handing over.`;
  }
  return null;
}
