/**
 * A survey of a face as the screen shows it: where its points lie on the drawing, in which order the hand takes them, and the
 * sheet that the bench's own typing fills. Computes no figure: every one comes from the host.
 */

import type { DrawnView } from '#core/drawing/drawn-type.ts';
import { type UnitCode, unitShape } from '#core/kernel/measure-units.ts';
import type { DeckSurvey, GridPoint, StageSurvey, StraightedgeLine } from '#core/readings/compute/deck-survey-model.ts';
import type { Cell, Column, LimitShown, Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';

/** What the hand fills: the grid of the dial, the lines of the straightedge, or the sizes beside them. */
export type DeckPart = 'grid' | 'edge' | 'sizes';

/**
 * The way through the grid. There and back: the dial slides on to a neighbour and never jumps across the face. Row by row: as
 * a paper form is filled.
 */
export type DeckWay = 'there' | 'rows';

/** How the face lies under the hand. Turning moves places; words stay upright. */
export type Lie = Readonly<{
  /** Turned end for end: the front is at the right. */
  turned: boolean;
  /** The face's second side is the upper one of the drawing. */
  second: boolean;
}>;

/** A place on the face as it lies: 0 at the left and the top, 1 at the right and the foot. */
export type Seen = Readonly<{ x: number; y: number }>;

type OnFace = Readonly<{ along: number; across: number }>;

export const seenAt = ({ along, across }: OnFace, { turned, second }: Lie): Seen => ({
  x: turned ? 1 - along : along,
  y: turned !== second ? 1 - across : across,
});

/** The points in the order the hand takes them, from the upper left. */
export function pointsInOrder(points: readonly GridPoint[], lie: Lie, way: DeckWay): GridPoint[] {
  const rows = [...new Set(points.map((point) => point.row))].sort((a, b) => a - b);
  const columns = (a: GridPoint, b: GridPoint) => a.column - b.column;
  if (lie.turned !== lie.second) rows.reverse();
  return rows.flatMap((row, n) => {
    const ofRow = points.filter((point) => point.row === row).sort(columns);
    const back = way === 'there' && n % 2 === 1;
    return lie.turned !== back ? ofRow.reverse() : ofRow;
  });
}

/** The point below (1) or above (-1) another as the face lies; undefined at the edge. */
export function pointBeside(
  points: readonly GridPoint[],
  code: string | null,
  { turned, second }: Lie,
  by: 1 | -1,
): GridPoint | undefined {
  const from = points.find((point) => point.code === code);
  const down = turned !== second ? -by : by;
  return from && points.find((point) => point.column === from.column && point.row === from.row + down);
}

/** Heights above the lower plane as they are seen, for the relief picture; empty while there is no plane. */
export function heightsSeen(points: readonly GridPoint[], lie: Lie): { columns: number; heights: (number | null)[] } {
  const seen = pointsInOrder(points, lie, 'rows');
  const columns = new Set(seen.map((point) => point.column)).size;
  if (seen.every((point) => point.height === null)) return { columns, heights: [] };
  return { columns, heights: seen.map((point) => point.height) };
}

/** Whether the drawing's upper side is the face's second one: sides are named in words, `intake side`. */
export function isSecondUp(sides: readonly [string, string], upper: 'I' | 'E' | 'none' | undefined): boolean {
  const word = upper === 'I' ? 'intake' : upper === 'E' ? 'exhaust' : null;
  return word !== null && !sides[0].includes(word) && sides[1].includes(word);
}

/** The one column of a survey: a face has no spots across. */
const COLUMN: Column = {
  spot: null,
  label: '',
  words: '',
  group: '',
  side: null,
  cylinder: null,
  bank: 'none',
  row: 1,
  benchOrder: 1,
  verdict: { name: 'no limit known', direction: null, cannotProve: false },
  word: '',
  because: null,
  shims: null,
};
export const ONCE = 'once';
export const ORDER: readonly string[] = [ONCE];

type Typed = Pick<SheetRow, 'quantity' | 'words' | 'point' | 'pointWords' | 'stage' | 'family' | 'unit' | 'unitMark'>;

const rowFor = (typed: Typed, cell: Cell, choices: readonly string[] = []): SheetRow => ({
  ...typed,
  key: rowKey(typed.quantity, typed.point, typed.stage),
  derived: false,
  decimals: 4,
  shown: true,
  entry: null,
  choices,
  limits: [],
  cells: [cell],
});

/** The name of a row, as every sheet writes it. */
export const rowKey = (quantity: string, point: string | null, stage: string): string =>
  `${quantity}|${point ?? ''}|${stage}`;

/** What one part of the survey lets the hand type, in the order it is typed. */
export function sheetFor(survey: DeckSurvey, rows: readonly SheetRow[]): Sheet {
  return {
    casting: survey.casting,
    table: { code: survey.face.table, words: survey.face.words, spotKind: null },
    columns: [COLUMN],
    rows,
    summary: '',
    counts: { pass: 0, fail: 0, 'too close to call': 0, 'not measured': 0, 'no limit known': 0 },
    toDo: [],
    picking: [],
    pickingText: '',
    spread: null,
    tools: survey.tools,
    notes: survey.notes,
    guard: survey.guard,
    locked: survey.locked,
  };
}

const lengthOf = ({ unit, unitMark }: DeckSurvey) => ({ family: 'length', unit, unitMark }) as const;

export const gridRows = (survey: DeckSurvey, stage: StageSurvey, lie: Lie, way: DeckWay): SheetRow[] =>
  pointsInOrder(stage.points, lie, way).map((point) =>
    rowFor(
      {
        quantity: survey.face.quantities.dial,
        words: 'dial',
        point: point.code,
        pointWords: point.words,
        stage: stage.stage,
        ...lengthOf(survey),
      },
      point.cell,
    ),
  );

/** Gaps first, line after line; where each is stands behind them and is touched, not stepped through. */
export function edgeRows(survey: DeckSurvey, stage: StageSurvey): SheetRow[] {
  const { gap, gapPlace } = survey.face.quantities;
  const common = (line: StraightedgeLine) => ({ point: line.code, pointWords: line.words, stage: stage.stage });
  return [
    ...stage.lines.map((line) =>
      rowFor({ quantity: gap, words: 'gap', ...common(line), ...lengthOf(survey) }, line.cell),
    ),
    ...stage.lines.map((line) => ({
      ...rowFor(
        { quantity: gapPlace, words: 'where', ...common(line), family: 'choice', unit: null, unitMark: '' },
        line.place,
        survey.placeChoices,
      ),
      shown: false,
    })),
  ];
}

export const sizeRows = (survey: DeckSurvey): SheetRow[] =>
  survey.fields.map((field) =>
    rowFor(
      {
        quantity: field.quantity,
        words: field.words,
        point: field.point,
        pointWords: null,
        stage: field.stage,
        family: field.unit === 'count' ? 'count' : 'length',
        unit: field.unit,
        unitMark: field.unitMark,
      },
      field.cell,
    ),
  );

/** True when nothing is left to read in these rows. */
export const isWhole = (rows: readonly SheetRow[]): boolean =>
  rows.filter((row) => row.shown).every((row) => row.cells[0]?.state !== 'not measured');

/** The stage a person comes for: the one after the work as soon as something of it was read. */
export const stageComeFor = ({ after }: DeckSurvey): 'before' | 'after' =>
  [...after.points, ...after.lines].some((one) => one.cell.state === 'read') ? 'after' : 'before';

/** The part a person comes for: the grid, unless only gaps were read. */
export function partComeFor(survey: DeckSurvey): DeckPart {
  const read = (one: Readonly<{ cell: Cell }>) => one.cell.state === 'read';
  const { points, lines } = survey[stageComeFor(survey)];
  return lines.some(read) && !points.some(read) ? 'edge' : 'grid';
}

/** A limit as its source gives it, with the unit where that is not the survey's own: `at most 0.0040 in`. */
export const limitWords = (limit: LimitShown | null, unit: UnitCode): string => {
  if (!limit?.text) return '';
  return limit.unit === unit ? limit.text : `${limit.text} ${unitShape(limit.unit).mark}`;
};

/** The finding in words, ready to be kept: what was measured, against what, and what comes first. */
export function foundWords({ face, unit, unitMark }: DeckSurvey, { flatness, pattern, advice }: StageSurvey): string {
  const shape = pattern && pattern.word !== 'flat' ? `, ${pattern.word}` : '';
  const limit = limitWords(flatness.limit, unit);
  const against = limit === '' ? '' : ` (${limit})`;
  const [first] = advice;
  return `${face.words} ${flatness.text} ${unitMark} out of flat${against}${shape}.${first ? ` ${first}` : ''}`;
}

const VIEWS: Readonly<Record<string, DrawnView>> = { 'intake-face': 'intake_face', 'exhaust-face': 'exhaust_face' };

/** Which picture of the casting shows this face; a manifold has one only. */
export const viewOfFace = (code: string): DrawnView => VIEWS[code] ?? 'deck';

/** Which plate of that picture, from the top: seen from above with the front at the left, the right bank lies on top. */
export const plateOfFace = (code: string): number => (code === 'left-deck' ? 1 : 0);
