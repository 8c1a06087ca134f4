/**
 * What a survey of a face is: the dial grid, the straightedge lines, what both say of its flatness, and what a cut would take.
 * Types only. Lengths are nanometres; along runs from the front of the casting to its rear, across from the face's first side to
 * its second. `text` is always the figure as the bench reads it, without its unit and with a real minus.
 */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Facts, Tool, Verdict } from './model.ts';
import type { Cell, LimitShown } from './sheet-model.ts';

/** A figure that is only shown. `text` is empty and `value` null while it is not known. */
export type Figure = Readonly<{
  value: number | null;
  /** U (k = 2); null when a gauge was not named. */
  uncertainty: number | null;
  text: string;
  /** Small print: "length from the sheet". */
  marks: readonly string[];
}>;

/** A figure that is judged. */
export type JudgedFigure = Figure &
  Readonly<{
    /** Quantity whose limits judge it; a lead's decision is about this one. */
    quantity: string;
    words: string;
    limit: LimitShown | null;
    verdict: Verdict;
    /** `pass`, `too much`, `too close`, `not measured`, `no limit known`. */
    word: string;
    decision: Cell['decision'];
  }>;

/** One of the faces this casting has. */
export type FaceListed = Readonly<{
  /** `deck`, `left-deck`, `right-deck`, `intake-face`, `exhaust-face`. */
  code: string;
  words: string;
  /** `over .0040`, `pass`, `not measured`: for the row of buttons. */
  summary: string;
}>;

/** A field beside the grid. Kept like every reading. */
export type SurveyField = Readonly<{
  quantity: string;
  point: string | null;
  words: string;
  /** The stage it is kept at; what stands there counts for before and after. */
  stage: Stage;
  /** What a person typed here. */
  cell: Cell;
  /** What counts: typed, else of the sheet. */
  figure: Figure;
  unit: UnitCode | null;
  unitMark: string;
  fromSheet: boolean;
}>;

/** Why a point stands out in the drawing. */
export type Touch = 'upper' | 'lower';

/** A point of the dial grid. */
export type GridPoint = Readonly<{
  /** `c3r2`: column 3 from the front, row 2 from the first side. */
  code: string;
  words: string;
  column: number;
  row: number;
  /** Place on the face, 0 at the front and the first side, 1 at the rear and the second side. */
  along: number;
  across: number;
  cell: Cell;
  /** The reading in the steps of the dial: `−28`, `0`, `+6`; with a decimal where it is no whole step; empty: not read. */
  steps: string;
  /** Height above the lower of the two closest planes, for the relief picture; null: not read, or too few points. */
  height: number | null;
  /** The same in steps, without sign. */
  heightSteps: string;
  /** Which of the two closest planes it decides. */
  touches: Touch | null;
}>;

/** A section through grid points that lie on one straight line, from front to rear or from the first side to the second. */
export type GridSection = Readonly<{
  /** `row-2`, `column-3`, `diagonal-1`. */
  code: string;
  words: string;
  kind: 'along' | 'across' | 'diagonal';
  /** Whether it is the one to draw when nobody chose another: along the middle. */
  isMiddle: boolean;
  /** At least two. `height`: less the straight line from the first to the last point; `at`: 0 at the first, 1 at the far end of the grid. */
  points: readonly Readonly<{ code: string; at: number; height: number }>[];
  /** Greatest gap under a straightedge laid on it (middle low); 0 for none. */
  gap: Figure;
  /** How far it stands above the chord of its ends (middle high, the straightedge rocks); 0 for none. */
  rock: Figure;
  /** The worse of both, with its word and the point where it is. */
  worst: Figure;
  word: 'hollow' | 'crowned' | 'flat';
  worstAt: string | null;
}>;

/** A line where the straightedge is laid. Typed like every reading: quantity `gap` of the survey, `code` as point. */
export type StraightedgeLine = Readonly<{
  /** `along-1`, `along-2`, `along-3`, `diagonal-1`, `diagonal-2`, `across-1` ... */
  code: string;
  words: string;
  kind: 'along' | 'across' | 'diagonal';
  /** Ends on the face, as `along` and `across` of a grid point. */
  from: Readonly<{ along: number; across: number }>;
  to: Readonly<{ along: number; across: number }>;
  /** The thickest feeler that went under. */
  cell: Cell;
  /** Where: one of `placeChoices`. */
  place: Cell;
  /** The same line through the grid, where three of its points lie on it. */
  section: GridSection | null;
}>;

export type PatternWord =
  | 'flat'
  | 'hollow'
  | 'crowned'
  | 'twisted'
  | 'low corner'
  | 'step'
  | 'local dip'
  | 'high spot'
  | 'uneven';

/** What the shape is called, why, and what hands do first. */
export type Pattern = Readonly<{ word: PatternWord; because: string; steps: readonly string[] }>;

/** The planes laid through the grid. Null in the survey while fewer than four points are read. */
export type GridPlanes = Readonly<{
  read: number;
  wanted: number;
  /** Greatest less smallest reading, tilt and all. */
  rawSpread: Figure;
  /** Two closest parallel planes that hold every point: what a flatness tolerance means. */
  zone: Figure;
  leastSquares: Figure;
  /** How it stood on the jacks: "rear 0.0085 in higher, exhaust side 0.0060 in lower". It says nothing of the face. */
  tiltWords: string;
  /** Points that decide the zone. */
  upper: readonly string[];
  lower: readonly string[];
  /** All four choices of three corners; the first is what a hand does. Empty where a corner is not read. */
  corners: readonly Readonly<{ words: string; points: readonly string[]; flatness: Figure }>[];
  /** What a cut to the lower plane takes off on the average. */
  meanStock: Figure;
  /** The worst unevenness in any span along or across; null while span, length or width is not known. */
  span: Readonly<{ length: Figure; worst: Figure; words: string; points: readonly string[] }> | null;
  sections: readonly GridSection[];
}>;

/** One way to level the casting on the machine. */
export type CutWay = Readonly<{
  code: 'best' | 'corners' | 'cam' | 'straightedge';
  /** `Levelled best`, `Levelled on three corners`, `Parallel to the cam line`. */
  words: string;
  /** What cleans the face up everywhere, without the finish. */
  cleanUp: Figure;
  /** Clean-up or the deepest pit, whichever is more, plus finish. */
  cut: Figure;
  /** `pit` when the pit, groove or weld decides and not the flatness. */
  decidedBy: 'flatness' | 'pit';
  /** Thickness after it, judged against the least; null where no thickness is known. */
  left: JudgedFigure | null;
  /** Taken off from new, earlier skims counted, judged against what may go in all; null where that is not known. */
  total: JudgedFigure | null;
}>;

export type CutPlan = Readonly<{
  finish: Figure;
  /** The deepest pit, groove or weld typed; null: none typed. */
  pit: Figure | null;
  /** Best first; `cam` only where the direction is known. */
  ways: readonly CutWay[];
  /** Why a way is left out: "Parallel to the cam line: measure deck to cam line at both ends". */
  leftOut: readonly string[];
  thickness: Figure | null;
  thicknessWords: string;
  /** Earlier skims of the same casting, in words, the last one first; a stamp typed is among them. */
  earlier: readonly string[];
}>;

/** Everything of one stage. */
export type StageSurvey = Readonly<{
  stage: Stage;
  points: readonly GridPoint[];
  lines: readonly StraightedgeLine[];
  planes: GridPlanes | null;
  /** `too few points`, `12 of 15 points, dial 4`; always a sentence. */
  readWords: string;
  /** What the figure of the whole face was made from. */
  basis: 'typed' | 'grid' | 'straightedge' | 'none';
  flatness: JudgedFigure;
  along: JudgedFigure;
  across: JudgedFigure;
  span: JudgedFigure;
  pattern: Pattern | null;
  cut: CutPlan | null;
  /** Said above everything: straighten first, measure cam line, surface it. Most urgent first. */
  advice: readonly string[];
  /** Bench table to read before anybody decides: `cam-line` of a bowed overhead cam head; null: nothing is missing. */
  measureFirst: string | null;
}>;

/** How the grid is laid out. Length or width is null while nobody typed it and the sheet does not say; spans need both. */
export type GridFrame = Readonly<{ columns: number; rows: number; length: number | null; width: number | null }>;

/** The survey of one face, as the screen gets it: the answer of `readings/get-deck-survey`. */
export type DeckSurvey = Readonly<{
  casting: Facts['casting'];
  faces: readonly FaceListed[];
  face: Readonly<{
    code: string;
    words: string;
    /** Words of across = 0 and of across = 1: `intake side`, `exhaust side`. */
    sides: readonly [string, string];
    /** The bench table that the face belongs to, for `readings/get-preview`. */
    table: string;
    /** Quantities to write with `readings/add-readings`, spot null: the point is that of the grid point or of the line. */
    quantities: Readonly<{ dial: string; gap: string; gapPlace: string }>;
  }>;
  /** Unit of all lengths that are shown. */
  unit: UnitCode;
  unitMark: string;
  /** What a bare whole number on the dial counts: 2540 nm and `tenths of a thou`, or 1000 nm and `micrometres`. */
  step: Readonly<{ value: number; words: string }>;
  grid: GridFrame;
  mostColumns: number;
  mostRows: number;
  /**
   * Columns, rows, length, width, span length, finish, deepest pit, taken off before, deck to cam line front and rear: those
   * this face has, in this order. Written with `readings/add-readings`: quantity, point and stage of the field.
   */
  fields: readonly SurveyField[];
  /** Words for where the feeler went. */
  placeChoices: readonly string[];
  before: StageSurvey;
  after: StageSurvey;
  tools: readonly Tool[];
  notes: readonly string[];
  guard: boolean;
  locked: boolean;
}>;
