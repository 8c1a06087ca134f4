/** A check-in as it is typed: text in text fields, nothing read yet. It is kept as a draft as it stands. */
import type { DrawnKind } from '#core/drawing/drawn-type.ts';

export type Material = 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | 'not_known';
export type Position = 'left' | 'right' | 'front_bank' | 'rear_bank' | 'single' | 'not_known';
export type Owner = 'ours_with_casting' | 'customers_own' | 'new' | 'old_return';
export type BoxKind = 'bag' | 'tray' | 'board' | 'box' | 'basket' | 'pallet';

export type ItemTyped = Readonly<{
  words: string;
  expected: number | null;
  counted: number | null;
  mixRule: 'none' | 'keep_order' | 'own_place';
  removeBeforeWash: boolean;
  inside: boolean;
  own: boolean;
  numbersSeen: boolean;
  arrowsSeen: boolean;
  boltedInPlace: boolean;
  more: string;
  /** Index into the boxes of the casting. */
  box: number | null;
}>;

export type MarkTyped = Readonly<{
  key: string;
  condition: string;
  conditionWords: string;
  view: string;
  x: number | null;
  y: number | null;
  words: string;
  photoWanted: boolean;
}>;

export type BoxTyped = Readonly<{ key: string; kind: BoxKind; contents: string; count: string; owner: Owner }>;
export type PhotoTyped = Readonly<{ sha256: string; name: string }>;

/** A casting the catalogue does not know, described by its counts. */
export type DescribedTyped = Readonly<{
  kind: DrawnKind;
  camLayout: 'none' | 'side' | 'ohv' | 'sohc' | 'dohc';
  fuel: 'petrol' | 'diesel' | 'gas' | 'other';
  cylinders: string;
  intakeValves: string;
  exhaustValves: string;
  mains: string;
}>;

export type CastingTyped = Readonly<{
  key: string;
  typeText: string;
  /** Code and id of the catalogue's type, null while it is not chosen or described. */
  type: string | null;
  typeId: number | null;
  kind: DrawnKind | null;
  described: DescribedTyped | null;
  tagNo: string;
  material: Material | null;
  magnet: boolean;
  closeTolerance: boolean;
  position: Position | null;
  castingNumber: string;
  serial: string;
  shopStamp: string;
  earlierStamps: string;
  tagOnly: boolean;
  pair: number | null;
  bare: boolean;
  cameAssembled: boolean;
  dress: string;
  ownMarks: string;
  items: readonly ItemTyped[];
  boxes: readonly BoxTyped[];
  marks: readonly MarkTyped[];
  photos: readonly PhotoTyped[];
}>;

export type WishTyped = Readonly<{
  key: string;
  kind: 'operation' | 'package' | 'part' | 'said';
  /** Id and code of the catalogue (a part: of the stock); null for words only. */
  id: number | null;
  code: string | null;
  /** Shop's words, and the customer's as the catalogue has them. */
  words: string;
  customerWords: string;
  /** What they called it. */
  said: string;
  quantity: string;
  /** Sold by the hour: the quantity is working time. */
  hourly?: boolean;
  note: string;
  /** Keys of castings; empty for all. */
  castings: readonly string[];
}>;

export type CheckInTyped = Readonly<{
  form: 1;
  draft: number | null;
  /** The enquiry that now brings its castings, and the ticket whose limits are copied. Left out in older drafts. */
  enquiry?: number | null;
  like?: number | null;
  customer: Readonly<{
    id: number | null;
    name: string;
    phone: string;
    kind: 'retail' | 'trade';
    personId: number | null;
    /** Who speaks for them. */
    said: string;
    mayApprove: boolean;
  }>;
  orderNumber: string;
  broughtBy: string;
  history: string;
  use: string;
  fuel: string;
  lift: string;
  gasket: 'mls' | 'composition' | 'other' | 'not_asked';
  oldParts: 'return' | 'discard' | 'not_asked';
  ceiling: string;
  ceilingTaxIn: boolean;
  deposit: string;
  castings: readonly CastingTyped[];
  /** The casting on the middle sheet. */
  at: string | null;
  boxes: readonly BoxTyped[];
  wishes: readonly WishTyped[];
  rush: boolean;
  promise: Readonly<{ day: string; time: string; dependsOn: string; byHand: boolean }>;
  signed: 'drawn' | 'on_paper' | 'left_unsigned' | null;
  signatureFile: string | null;
}>;

export const EMPTY_CHECK_IN: CheckInTyped = {
  form: 1,
  draft: null,
  customer: { id: null, name: '', phone: '', kind: 'retail', personId: null, said: '', mayApprove: true },
  orderNumber: '',
  broughtBy: '',
  history: '',
  use: '',
  fuel: '',
  lift: '',
  gasket: 'not_asked',
  oldParts: 'not_asked',
  ceiling: '',
  ceilingTaxIn: false,
  deposit: '',
  castings: [],
  at: null,
  boxes: [],
  wishes: [],
  rush: false,
  promise: { day: '', time: '', dependsOn: '', byHand: false },
  signed: null,
  signatureFile: null,
};

/** A casting of which nothing is known yet. `key` is unique on the page. */
export const emptyCasting = (key: string): CastingTyped => ({
  key,
  typeText: '',
  type: null,
  typeId: null,
  kind: null,
  described: null,
  tagNo: '',
  material: null,
  magnet: false,
  closeTolerance: false,
  position: null,
  castingNumber: '',
  serial: '',
  shopStamp: '',
  earlierStamps: '',
  tagOnly: false,
  pair: null,
  bare: false,
  cameAssembled: false,
  dress: '',
  ownMarks: '',
  items: [],
  boxes: [],
  marks: [],
  photos: [],
});

/** Whether kept text is a check-in of this form; an older form is left alone rather than half read. */
export const isCheckIn = (value: unknown): value is CheckInTyped =>
  typeof value === 'object' &&
  value !== null &&
  'form' in value &&
  value.form === 1 &&
  'castings' in value &&
  Array.isArray(value.castings);

/** Whether anything was typed at all. */
export const isBegun = (typed: CheckInTyped): boolean =>
  typed.customer.name !== '' || typed.customer.phone !== '' || typed.castings.length > 0 || typed.wishes.length > 0;

/** What a set-aside check-in is called in a list: `Hill Road Garage, 2 castings`. */
export function titleOf(typed: CheckInTyped): string {
  const full = typed.customer.name || typed.customer.phone || 'Nobody named yet';
  const name = full.length > 40 ? `${full.slice(0, 40).trimEnd()}...` : full;
  const count = typed.castings.length;
  return count === 0 ? name : `${name}, ${count} ${count === 1 ? 'casting' : 'castings'}`;
}

/** A short key for a new thing on the page, unique among those there. */
export function nextKey(taken: readonly Readonly<{ key: string }>[], letter: string): string {
  const numbers = taken.map((one) => Number.parseInt(one.key.slice(1), 10)).filter(Number.isFinite);
  return `${letter}${Math.max(0, ...numbers) + 1}`;
}
