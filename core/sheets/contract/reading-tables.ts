/** Readings on paper: places across with quantities down, figures read once, gauges, and blank grids to write in. Words only. */

export type VerdictWord = 'pass' | 'over' | 'under' | 'close' | 'not_measured' | 'no_limit';

/** A bold word and what it says, in small print under a table. */
export type Said = Readonly<{ label: string; words: string }>;

export type ReadingRow = Readonly<{
  label: string;
  /** `found`, `first`, `after`: which of several rows of one quantity this is. Left out for the only one. */
  stage?: string;
  /** The row above has the same label; it stands once. */
  again?: boolean;
  values: readonly string[];
  limit: string;
  /** `±0.0003`: the greatest uncertainty of the row, on a certified sheet. */
  doubt?: string;
  /** The builder of the engine checks this row again. */
  key?: boolean;
  /** Marks for values that do not pass. */
  verdicts?: readonly (VerdictWord | null)[];
  /** Figures that stood here and were replaced, with the letter of their note: `1.531 a`. Drawn struck through. */
  struck?: readonly (string | null)[];
}>;

export type SpotGroup = Readonly<{ title: string; spots: readonly string[] }>;

export type ReadingTable = Readonly<{
  heading: string;
  groups: readonly SpotGroup[];
  rows: readonly ReadingRow[];
  verdict?: VerdictWord;
  verdictWords: string;
  notes: readonly Said[];
}>;

/** A figure read once. */
export type Figure = Readonly<{
  /** With its unit. */
  text: string;
  /** The same in the other unit; left out where there is none. */
  other?: string;
  doubt?: string;
  verdict?: VerdictWord;
  /** What the mark says: `too thin`. */
  word?: string;
  struck?: string;
}>;

export type FactRow = Readonly<{
  words: string;
  /** Limit, first run and small print, in this order. */
  small: string;
  found: Figure | null;
  after: Figure | null;
  strong?: boolean;
}>;

export type FactTable = Readonly<{ heading: string; rows: readonly FactRow[]; notes: readonly Said[] }>;

/** A face surveyed with a dial grid or a straightedge, seen from above, its front at the left. */
export type FaceSurvey = Readonly<{
  heading: string;
  /** What lies along the upper and the lower edge. */
  sides: readonly [string, string];
  columns: number;
  rows: number;
  /** Empty when no grid was read, or too few points of it. */
  points: readonly FacePoint[];
  /** What the figures at the points are. */
  scale: string;
  /** Straightedge lines that were read. */
  lines: readonly Readonly<{ words: string; text: string }>[];
  said: string;
}>;

export type FacePoint = Readonly<{
  /** From 1, from the front and from the upper edge. */
  column: number;
  row: number;
  /** Height above the lowest plane. */
  text: string;
  /** The same as a share of the greatest, 0 to 1; null where nothing was read. */
  share: number | null;
  /** Which of the two closest planes the point decides. */
  touches: 'upper' | 'lower' | null;
}>;

export type GaugeRow = Readonly<{
  name: string;
  kind: string;
  serial: string;
  /** `±0.0010 in`, `±3 %`; `not stated`. */
  doubt: string;
  checked: string;
  due: string;
}>;

/** What makes a sheet a certified one. */
export type Certified = Readonly<{ gauges: readonly GaugeRow[] }>;

/** Empty boxes to write readings in, the limits beside them; without places one box a row. */
export type BlankGrid = Readonly<{
  heading: string;
  /** Empty for figures read once. */
  groups: readonly SpotGroup[];
  rows: readonly BlankRow[];
  /** Cautions of this work. */
  note?: string;
  /** A face to write a dial grid on. */
  face?: Pick<FaceSurvey, 'sides' | 'columns' | 'rows'>;
}>;

export type BlankRow = Readonly<{
  label: string;
  /** The limit in its own unit, bold, and in the other. Empty: no limit known. */
  limit: string;
  other: string;
  /** Of a figure read once: which boxes it has. */
  found?: boolean;
  after?: boolean;
}>;
