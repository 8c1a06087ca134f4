/** The filled-in, judged table that screen, sign-off, paper and export share. Types only; values are base units. */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import type { Quantity, SpotKind } from '../../catalogue/compute/quantity.ts';
import type { Moment } from '../../kernel/days.ts';
import type { LimitId, ReadingId, SpotId } from '../../kernel/ids.ts';
import type { EntryRule, Typed } from '../../kernel/measure.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Facts, LimitFor, Reading, ReadOn, Tool, Verdict, VerdictName } from './model.ts';

/** A limit in words. */
export type LimitShown = Readonly<{
  id: LimitId;
  side: 'I' | 'E' | 'any';
  low: number | null;
  high: number | null;
  target: number | null;
  unit: UnitCode;
  /** `1.690 – 1.710`, `at least .050`, `at most .0040`; empty when there is a target only. */
  text: string;
  targetText: string | null;
  source: string;
  forWhat: LimitFor;
  checked: boolean;
  /** Sentences to print beside it: set aside, chosen by a lead, not checked. */
  notes: readonly string[];
}>;

export type ReadingShown = Readonly<{
  id: ReadingId;
  text: string;
  typed: string;
  unit: UnitCode | null;
  mark: Reading['mark'];
  readOn: ReadOn | null;
  tool: string | null;
  by: string;
  at: Moment;
  reason: string | null;
}>;

export type CellState = 'read' | 'computed' | 'planned' | 'not measured' | 'not applicable' | 'two readings';

export type Cell = Readonly<{
  state: CellState;
  /** As typed or with the quantity's decimals; empty when not measured; a dash when not applicable. */
  text: string;
  value: number | null;
  unit: UnitCode | null;
  /** Null where nothing is judged: words, counts without limit. */
  verdict: Verdict | null;
  /** `pass`, `too tall`, `too close`, `not measured`, `no limit known`; empty when nothing is judged. */
  word: string;
  limit: LimitId | null;
  /** What stands beside the figure in small print, for example "calculated, nominal spring". */
  marks: readonly string[];
  reading: ReadingShown | null;
  /** Superseded rows of this cell, newest first. */
  earlier: readonly ReadingShown[];
  /** The rows to choose between when two people read this cell and do not agree. */
  choose: readonly ReadingShown[];
  decision: Readonly<{ accepted: boolean; words: string; by: string }> | null;
}>;

export type SheetRow = Readonly<{
  /** `installed-height||before`; unique in the sheet. */
  key: string;
  quantity: string;
  words: string;
  point: string | null;
  pointWords: string | null;
  stage: Stage;
  derived: boolean;
  family: Quantity['family'];
  /** The unit of the row's head. */
  unit: UnitCode | null;
  unitMark: string;
  decimals: number;
  shown: boolean;
  /** How bare digits are read; null for computed rows and words. */
  entry: EntryRule | null;
  choices: readonly string[];
  /** One limit, or one for intake and one for exhaust. Empty: no limit known. */
  limits: readonly LimitShown[];
  /** One cell per column, in the same order. */
  cells: readonly Cell[];
}>;

/** The shims to put under one spring. */
export type ShimPlan = Readonly<{
  /** `none`, `0.5`, `0.5 + 1.0`. */
  text: string;
  /** What is kept when they are fitted so. */
  typed: string;
  thicknesses: readonly number[];
}>;

export type Column = Readonly<{
  /** Null in a table of figures read once. */
  spot: SpotId | null;
  label: string;
  /** `exhaust, cylinder 4`. */
  words: string;
  /** `INTAKE SIDE`, `LEFT BANK`; empty when the places stand in one line. */
  group: string;
  side: 'I' | 'E' | null;
  cylinder: number | null;
  bank: 'left' | 'right' | 'none';
  row: number;
  benchOrder: number;
  /** The worst of the column's judged rows. */
  verdict: Verdict;
  word: string;
  /** Words of the row that decides, when it is not the first judged one. */
  because: string | null;
  shims: ShimPlan | null;
}>;

export type ToDo = Readonly<{
  spot: SpotId | null;
  label: string;
  /** `too tall for 1.5 of shims: seat insert`. */
  words: string;
  /** What to try, in this order. */
  steps: readonly string[];
}>;

export type Pick = Readonly<{ thickness: number; text: string; count: number }>;

/** One bench table of one casting, filled in and judged. */
export type Sheet = Readonly<{
  casting: Facts['casting'];
  table: Readonly<{ code: string; words: string; spotKind: SpotKind | null }>;
  columns: readonly Column[];
  rows: readonly SheetRow[];
  /** `11 pass, 2 fail, 1 too close, 2 not measured`. */
  summary: string;
  counts: Readonly<Record<VerdictName, number>>;
  toDo: readonly ToDo[];
  /** Shims to fetch; valves that fail whatever is put under them are left out. */
  picking: readonly Pick[];
  /** `7 × 0.5, 7 × 1.0`; empty when none are wanted. */
  pickingText: string;
  /** Greatest less smallest height with shims, as text with its unit; null with fewer than two. */
  spread: string | null;
  tools: readonly Tool[];
  /** Sentences about the whole sheet: overdue gauges, a figure set aside. */
  notes: readonly string[];
  guard: boolean;
  locked: boolean;
}>;

/** What a half-typed figure would become. */
export type Preview = Readonly<{
  read: Typed;
  /** `= 0.3438 in`, shown beside the field before it is kept; empty when it is exactly what was typed. */
  becomes: string;
  /** The question about an unlikely figure, with what was probably meant; null when it looks right. */
  doubt: Readonly<{ question: string; meant: Readonly<{ typed: string; unit: string }> | null }> | null;
  /** The cell and its column as they would stand; null when nothing can be kept. */
  cell: Cell | null;
  column: Column | null;
  /** The figure that is judged: the height with these shims under it, else the cell itself. */
  judged: Cell | null;
  /** `1.0 under it makes 35.10 mm, load 241 N`; empty for other tables. */
  sentence: string;
}>;

/** Every stack of shims that could go under one spring, best first. */
export type ShimChoices = Readonly<{
  label: string;
  /** Null when the height is not measured or there is no target. */
  best: ShimPlan | null;
  candidates: readonly Readonly<{
    text: string;
    heightText: string;
    /** Height less target, with its sign. */
    errorText: string;
    loadText: string | null;
    within: boolean;
  }>[];
  advice: readonly string[];
}>;
