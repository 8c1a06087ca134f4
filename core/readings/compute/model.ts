/**
 * The shapes of measuring: what was read, by what it is judged, and by whom it was decided.
 * Types only. All values are base units of the quantity's family (core/kernel/measure-units.ts).
 */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import type { Quantity, SpotKind } from '../../catalogue/compute/quantity.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import type { CastingId, LimitId, OperationId, ReadingId, SpotId, TicketId, ToolId } from '../../kernel/ids.ts';
import type { FitMark } from '../../kernel/measure.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';

/** A place on the casting, in bench order. */
export type Spot = Readonly<{
  id: SpotId;
  kind: SpotKind;
  label: string;
  benchOrder: number;
  row: number;
  bank: 'left' | 'right' | 'none';
  cylinder: number | null;
  side: 'I' | 'E' | null;
}>;

/** What the height was read on: an old shim or a cup must not be counted twice. */
export type ReadOn = 'bare_pocket' | 'cup' | 'cup_and_shim';

export type ReadingKind = 'number' | 'choice' | 'text' | 'not_applicable' | 'taken_back';

/** One row a person made. Never changed. */
export type Reading = Readonly<{
  id: ReadingId;
  quantity: string;
  spot: SpotId | null;
  point: string | null;
  stage: Stage;
  operation: OperationId | null;
  kind: ReadingKind;
  typed: string;
  unit: UnitCode | null;
  value: number | null;
  mark: FitMark | 'compared' | 'from_tool';
  readOn: ReadOn | null;
  tool: ToolId | null;
  at: Moment;
  /** Initials. */
  by: string;
  supersedes: ReadingId | null;
  reason: string | null;
  note: string | null;
}>;

/** A gauge with what it is worth. `uncertainty` is U (k = 2) in base units, `uncertaintyBp` a share of the reading. */
export type Tool = Readonly<{
  id: ToolId;
  name: string;
  kind: string;
  serial: string | null;
  workCentre: string | null;
  unit: UnitCode;
  uncertainty: number | null;
  uncertaintyBp: number | null;
  nextDue: Day | null;
  overdue: boolean;
  retired: boolean;
}>;

export type LimitFor = 'shop' | 'customer_instruction' | 'engine_type' | 'casting_type' | 'this_job';

/** One limit as kept. `low`, `high`, `target` in base units; what the unit was is in `unit`, as printed in the typed texts. */
export type Limit = Readonly<{
  id: LimitId;
  quantity: string;
  stage: Stage;
  forWhat: LimitFor;
  /** A customer's instruction for one casting goes before one for the whole ticket. */
  casting: CastingId | null;
  side: 'I' | 'E' | 'any';
  material: string | null;
  low: number | null;
  high: number | null;
  target: number | null;
  unit: UnitCode;
  typedLow: string | null;
  typedHigh: string | null;
  typedTarget: string | null;
  secondUnitText: string | null;
  sourceTag: string | null;
  sourceWords: string;
  checked: boolean;
  from: Day;
  replaces: LimitId | null;
  /** The word it counts for (the gasket, the method, the metal); left out: for any. */
  forWord?: string;
}>;

/** A lead's choice of another limit for one casting. The last one stands. */
export type LimitChoice = Readonly<{
  quantity: string;
  stage: Stage;
  side: 'I' | 'E' | 'any';
  limit: LimitId;
  reason: string;
  by: string;
}>;

/** The limit that is used, and what it sets aside. */
export type ResolvedLimit = Readonly<{
  limit: Limit;
  /** A customer's written figure that gives way, to be said on screen and sheet. */
  setAside: Limit | null;
  /** A lead's reason where the limit was chosen. */
  chosen: Readonly<{ reason: string; by: string }> | null;
}>;

export type VerdictName = 'pass' | 'fail' | 'too close to call' | 'not measured' | 'no limit known';
export type Direction = 'over' | 'under';

/** Five answers, never fewer: empty and unknown are not pass. */
export type Verdict = Readonly<{
  name: VerdictName;
  /** Which way it fails, or which limit it lies at. */
  direction: Direction | null;
  /** True when limits stand closer than twice the uncertainty: this gauge cannot prove this tolerance. */
  cannotProve: boolean;
  /** Said instead of "too close" where not the gauge is in doubt: `ask gasket maker`. */
  word?: string;
}>;

/** A decision of a lead on a failed or close figure; void when the value changes. */
export type Decision = Readonly<{
  quantity: string;
  spot: SpotId | null;
  point: string | null;
  stage: Stage;
  value: number | null;
  accepted: boolean;
  words: string;
  by: string;
}>;

/** Shims the shop has, in one unit. */
export type ShimStock = Readonly<{
  unit: 'in' | 'mm';
  thicknesses: readonly Readonly<{ thickness: number; text: string }>[];
  maxStack: number;
}>;

/** The engine a casting belongs to, as its sheet says. Lengths in nanometres, leans in millionths of a degree. */
export type Engine = Readonly<{
  words: string;
  cylinders: number;
  layout: 'inline' | 'v' | 'flat' | 'single';
  bankLean: number | null;
  faceLean: number | null;
  bore: number | null;
  stroke: number | null;
}>;

/** What was taken off another casting: the other one of a pair, or this one on an earlier visit. */
export type OtherCut = Readonly<{
  tag: number;
  position: string;
  /** Null: not measured before and after. */
  removed: number | null;
}>;

/** Everything known of one casting that its sheets are made from. */
export type Facts = Readonly<{
  casting: Readonly<{
    id: CastingId;
    ticket: TicketId;
    tag: number;
    kind: string;
    words: string;
    material: string;
    position: string;
    typeCode: string;
    camLayout: 'none' | 'side' | 'ohv' | 'sohc' | 'dohc';
    fuel: 'petrol' | 'diesel' | 'gas' | 'other';
    /** On the scale or of its type; null when neither is known. */
    weight: number | null;
  }>;
  /** Null for a casting whose engine nobody named. */
  engine: Engine | null;
  /** The other castings of its pair on this ticket. */
  pair: readonly OtherCut[];
  /** The same casting on earlier visits, the last one first. */
  earlier: readonly OtherCut[];
  quantities: readonly Quantity[];
  spots: readonly Spot[];
  readings: readonly Reading[];
  limits: readonly Limit[];
  choices: readonly LimitChoice[];
  decisions: readonly Decision[];
  tools: readonly Tool[];
  shims: readonly ShimStock[];
  /** The customer's cam, when the ticket says one. */
  valveLift: number | null;
  system: 'inch' | 'metric';
  guard: boolean;
  /** Words given at check-in that answer a choice of the bench, by its quantity; left out: none. */
  said?: Readonly<Record<string, string>>;
  /** When it was signed off; null while readings may be taken. */
  lockedSince: Moment | null;
}>;
