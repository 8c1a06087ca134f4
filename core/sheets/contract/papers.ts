/**
 * What each paper shows. All words, figures, dates and amounts are ready to print: a sheet draws, it computes nothing, so
 * paper and screen cannot differ.
 */
import type { Drawing } from '../../drawing/shape.ts';
import type { BlankGrid, Certified, FaceSurvey, FactTable, ReadingTable } from './reading-tables.ts';

/** What stands on every sheet. */
export type PaperHead = Readonly<{
  paper: 'letter' | 'a4';
  shop: Readonly<{
    name: string;
    /** Address, telephone, hours. */
    line: string;
  }>;
  /** For example "revision 1". */
  revision: string;
  /** When and by whom, for example "Mon 9 Mar 2026 09:31, Nadia R.". */
  printed: string;
  /** The same moment for the file, ISO 8601. */
  printedAt: string;
  /** The practice shop: all its paper says so. */
  practice: boolean;
  /** Kept in the file itself, not drawn. */
  facts?: Readonly<Record<string, string>>;
}>;

export type TagWords = Readonly<{ number: string; metal: 'iron' | 'aluminium' | 'other' | 'not_known' }>;
/** Bars of tags and travellers say the metal in words, never by a drawing alone. */
export const METAL_BARS: Readonly<Record<TagWords['metal'], string>> = {
  iron: 'IRON',
  aluminium: 'ALUMINIUM - NO CAUSTIC',
  other: 'OTHER METAL - ASK BEFORE WASHING',
  not_known: 'METAL NOT KNOWN - DO NOT WASH',
};
/** A bold word and what it says. */
export type Named = Readonly<{ label: string; words: string }>;
/** A condition with the number of its balloon on the drawing. */
export type Marked = Readonly<{ no: string; words: string }>;
export type MoneyLine = Readonly<{ words: string; units?: string; price?: string; amount: string; note?: string }>;
export type TotalLine = Readonly<{ words: string; amount: string; strong?: boolean }>;
/** A thing of the customer: name in full, and who speaks for it. */
export type Party = Readonly<{ name: string; more?: string }>;

export type ClaimTicketPaper = Readonly<{
  head: PaperHead;
  number: string;
  leftBy: Party;
  orderNumber: string;
  takenIn: Readonly<{ when: string; by: string }>;
  account: string;
  castings: readonly Readonly<{
    tag: TagWords;
    words: string;
    /** For example "1 of 2". */
    piece: string;
    lines: readonly string[];
    came: string;
    /** What is short, for example "1 dowel of 2". */
    short: readonly string[];
    conditions: readonly Marked[];
  }>[];
  containers: readonly Readonly<{ numbers: readonly string[]; words: string; contents: string; condition: string }>[];
  asked: readonly MoneyLine[];
  currency: string;
  totals: readonly TotalLine[];
  /** Under the lines: what happens if, in one sentence each. */
  askedNotes: readonly string[];
  promise: Readonly<{ when: string; condition: string }>;
  ceiling: Readonly<{ amount: string; basis: string }>;
  oldParts: string;
  contact: string;
  deposit: string;
  /** What the customer said about it. */
  said: string;
  /** Package contents, own marks, what is owed if it cannot be saved, standing instructions, declined checks. */
  notes: readonly Named[];
  terms: string;
  signature: Readonly<{ label: string; written?: string; date?: string; png?: string }>;
}>;

export type TravellerPaper = Readonly<{
  head: PaperHead;
  tag: TagWords;
  /** LEFT, RIGHT, or empty. */
  position: string;
  piece: string;
  ticket: string;
  customer: string;
  promise: Readonly<{ day: string; time: string }>;
  rush: boolean;
  /** Engine, casting type, casting number, stamp of an earlier visit. */
  about: string;
  drawing: Drawing | null;
  marks: readonly Marked[];
  spec: readonly Readonly<{ label: string; chosen: string; other: string }>[];
  warnings: readonly string[];
  operations: readonly Readonly<{
    no: string;
    name: string;
    note: string;
    units: string;
    /** What is read in it, small in the box for readings: the grids on the back have the places. */
    readings?: string;
  }>[];
  notes: readonly Named[];
  /** What changed since the revision named, when this is a later one. */
  changed: readonly string[];
  changedSince: string;
  /** Blank grids on the back, to be typed row by row; empty when nothing is measured. */
  grids: readonly BlankGrid[];
}>;

export type TagStock = 'tag-5' | 'tag-3' | 'tag-1' | 'label-3x2' | 'label-4x6';
export type TagPaper = Readonly<{
  stock: TagStock;
  kind: 'casting' | 'container';
  /** Null: a spare. It carries no number until it is used, and no code. */
  number: string | null;
  title: string;
  lines: readonly Readonly<{ words: string; strong?: string }>[];
  /** Lower right: "TWO PEOPLE", "tray 1 of 3". */
  corner: string;
  bar: string;
  back?: Readonly<{ lines: readonly Readonly<{ words: string; strong?: string }>[]; bar: string }>;
}>;
export type TagsPaper = Readonly<{
  head: PaperHead;
  /** A page per tag in stock size, or tags with cut lines on Letter or A4. */
  layout: 'single' | 'sheet';
  tags: readonly TagPaper[];
}>;

export type EstimatePaper = Readonly<{
  head: PaperHead;
  number: string;
  ticket: string;
  to: Party;
  orderNumber: string;
  made: string;
  validUntil: string;
  groups: readonly Readonly<{ tag?: TagWords; words: string; lines: readonly MoneyLine[] }>[];
  currency: string;
  totals: readonly TotalLine[];
  promise: Readonly<{ when: string; condition: string }>;
  ceiling: string;
  notes: readonly Named[];
  signFor: string;
}>;

export type AddedWorkPaper = Readonly<{
  head: PaperHead;
  number: string;
  to: Party;
  answerBy: string;
  agreed: string;
  tag: TagWords;
  found: string;
  foundMore: readonly string[];
  reading?: Readonly<{ what: string; value: string; limit: string; verdict: string }>;
  drawing: Drawing | null;
  /** A picture, JPEG or PNG in base 64. */
  photo?: string;
  ways: readonly Readonly<{
    letter: string;
    title: string;
    words: string;
    rows: readonly Readonly<{ label: string; value: string }>[];
    small: readonly string[];
  }>[];
  /** What "to pay if stopped" is made of. */
  soFar: readonly MoneyLine[];
  soFarTotal: readonly TotalLine[];
  currency: string;
  silence: string;
  signFor: string;
}>;

export type BuildSheetPaper = Readonly<{
  head: PaperHead;
  number: string;
  customer: Party;
  tag: TagWords;
  casting: string;
  finished: string;
  units: string;
  /** The rule of a sheet judged with a guard band; null without. */
  guard: string | null;
  /** With the doubt of each figure and the gauges one by one; null for an ordinary sheet. */
  certified: Certified | null;
  tables: readonly ReadingTable[];
  facts: readonly FactTable[];
  faces: readonly FaceSurvey[];
  texts: readonly Readonly<{ heading: string; words: string; named?: readonly Named[] }>[];
  signatures: readonly Readonly<{ label: string; written: string }>[];
  disclaimer: string;
}>;

export type InvoicePaper = Readonly<{
  head: PaperHead;
  number: string;
  to: Readonly<{ name: string; lines: readonly string[] }>;
  facts: readonly Named[];
  /** Groups of one casting follow each other: labour, then what else. */
  groups: readonly Readonly<{
    tag?: TagWords;
    words: string;
    /** Head of the column of words: "Labour", "Parts". */
    column: string;
    lines: readonly MoneyLine[];
    total?: TotalLine;
  }>[];
  currency: string;
  totals: readonly TotalLine[];
  toPay: string;
  notes: readonly Named[];
  pieces: string;
}>;

export type ReceiptPaper = Readonly<{
  head: PaperHead;
  number: string;
  from: Party;
  when: string;
  how: string;
  by: string;
  amount: string;
  currency: string;
  lines: readonly MoneyLine[];
  totals: readonly TotalLine[];
  note: string;
}>;

export type ReleasePaper = Readonly<{
  head: PaperHead;
  number: string;
  customer: Party;
  ticket: string;
  when: string;
  takenBy: string;
  proof: string;
  by: string;
  items: readonly Readonly<{ tag?: TagWords; number: string; words: string; contents: string; count: string }>[];
  total: string;
  staying: readonly Named[];
  money: string;
  notes: readonly Named[];
  care: string;
  signFor: string;
  /** How it was signed on the glass: a picture, JPEG or PNG in base 64, and when. */
  signature?: Readonly<{ png?: string; when: string }>;
}>;

export type ReadyLabelPaper = Readonly<{
  head: PaperHead;
  stock: 'label-100x50' | 'label-3x2' | 'label-4x6';
  layout: 'single' | 'sheet';
  labels: readonly Readonly<{
    kind: 'casting' | 'container';
    number: string;
    metal?: TagWords['metal'];
    ticket: string;
    customer: string;
    place: string;
    piece: string;
    weight: string;
  }>[];
}>;

export type DropOffPaper = Readonly<{
  head: PaperHead;
  /** A ticket that is already known; empty for the blank sheet of the counter. */
  number: string;
  customer: string;
  before: readonly Named[];
  questions: readonly string[];
  terms: string;
}>;

/** Every paper by its name. */
export type Papers = Readonly<{
  'claim-ticket': ClaimTicketPaper;
  traveller: TravellerPaper;
  'casting-tag': TagsPaper;
  'bag-tag': TagsPaper;
  estimate: EstimatePaper;
  'added-work': AddedWorkPaper;
  'build-sheet': BuildSheetPaper;
  invoice: InvoicePaper;
  receipt: ReceiptPaper;
  release: ReleasePaper;
  'ready-label': ReadyLabelPaper;
  'drop-off': DropOffPaper;
}>;
export type PaperName = keyof Papers;
