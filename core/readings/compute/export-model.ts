/** One row of the export of a casting's readings, and the file it goes into. Types only. */

/**
 * How a row stands: it counts; a later one took its place; an earlier operation read it, the first run of a redo too; somebody
 * read the same again; two people disagree; nothing was measured.
 */
export type ExportStatus =
  | 'stands'
  | 'planned'
  | 'replaced'
  | 'earlier operation'
  | 'read again'
  | 'two readings'
  | 'not applicable'
  | 'not measured';

/** Figures are decimal texts with a point and an ASCII minus, so that no program reads them as floats by accident; null: none. */
export type ExportRow = Readonly<{
  tag: number;
  ticket: number;
  castingNumber: string | null;
  /** Code of the table the row stands in; null for what is in none. */
  table: string | null;
  /** Label of the place, for example `1E`; null for what is read once for the casting. */
  place: string | null;
  placeWords: string | null;
  quantity: string;
  words: string;
  point: string | null;
  stage: 'before' | 'after';
  status: ExportStatus;
  /** False for a figure worked out from others. */
  measured: boolean;
  /** As the fingers typed it; null for computed figures. */
  typed: string | null;
  /** The figure in its own unit; null for words and for what is not known. */
  value: string | null;
  unit: string | null;
  otherValue: string | null;
  otherUnit: string | null;
  /** The figure as kept: a whole number of `baseUnit`. */
  base: number | null;
  baseUnit: string | null;
  /** A word in place of a figure: `none found`. */
  said: string | null;
  low: string | null;
  high: string | null;
  target: string | null;
  limitUnit: string | null;
  source: string | null;
  /** `pass`, `fail`, `too close to call`, `not measured`, `no limit known`; null where nothing is judged. */
  verdict: string | null;
  /** `over` or `under` which limit; null when it lies between. */
  direction: string | null;
  marks: readonly string[];
  /** `accepted by DK: ...`. */
  decision: string | null;
  gauge: string | null;
  gaugeSerial: string | null;
  /** U (k = 2) in `unit`; null when a gauge was not named. */
  uncertainty: string | null;
  by: string | null;
  /** UTC, ISO 8601. */
  at: string | null;
  /** Why, by whom and when a later row took its place. */
  replacedWhy: string | null;
  replacedBy: string | null;
  replacedAt: string | null;
}>;

/** Everything a person keeps beside the program, as data. `version` grows when a field changes its meaning or goes. */
export type ReadingsExport = Readonly<{
  format: 'benchtag-readings';
  version: 1;
  made: string;
  casting: Readonly<{
    tag: number;
    ticket: number;
    castingNumber: string | null;
    words: string;
    kind: string;
    material: string;
    position: string;
    guardBand: boolean;
    certified: boolean;
    customer: string;
  }>;
  rows: readonly ExportRow[];
}>;
