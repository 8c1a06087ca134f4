/**
 * The faces of a casting that a straightedge or a dial is taken over, as data: which castings have them, what their two long
 * sides are called, and by which quantities they are read. Words and habits are common practice, no source.
 */
import type { BenchTable } from './bench-table.ts';

/** A grid is read column by column from the front, each from the first side to the second. */
export const MOST_COLUMNS = 15;
export const MOST_ROWS = 9;
/** What is laid out where nobody says otherwise. */
export const USUAL_COLUMNS = 5;
export const USUAL_ROWS = 3;
/** Chambers in one row that a face may stand over. */
const MOST_CHAMBERS = 8;

export const gridCode = (column: number, row: number): string => `c${column}r${row}`;

/** Every point a grid may have, in reading order. */
export const GRID_POINTS: readonly (readonly [string, string])[] = Array.from({ length: MOST_COLUMNS }, (_, c) =>
  Array.from({ length: MOST_ROWS }, (__, r): readonly [string, string] => [
    gridCode(c + 1, r + 1),
    `column ${c + 1}, row ${r + 1}`,
  ]),
).flat();

/** Across the face before, between and behind the chambers. */
export const acrossCode = (n: number): string => `across-${n}`;

/** Every line a straightedge may be laid on: three along, two from corner to corner, and across. */
export const LINE_POINTS: readonly (readonly [string, string])[] = [
  ['along-1', 'along the first side'],
  ['along-2', 'along the middle'],
  ['along-3', 'along the second side'],
  ['diagonal-1', 'corner to corner'],
  ['diagonal-2', 'the other corners'],
  ...Array.from({ length: MOST_CHAMBERS + 1 }, (_, n): readonly [string, string] => [
    acrossCode(n + 1),
    `across, line ${n + 1}`,
  ]),
];

/** Where the thickest feeler went under. */
export const GAP_PLACES = ['middle', 'both ends, it rocks', 'one end', 'at the edge', 'one spot'] as const;
export type GapPlace = (typeof GAP_PLACES)[number];

export type Face = Readonly<{
  code: string;
  words: string;
  castingKinds: readonly BenchTable['castingKind'][];
  /** Bank of a V or flat block; null where the face is of the whole casting. */
  bank: 'left' | 'right' | null;
  /** The side at y = 0 and the side at y = 1. */
  sides: readonly [string, string];
  /** Head decks and block decks: the face that the other takes its limits from where it has none. */
  judgedLike: string | null;
  /** What is left after a cut, by kind of casting: thickness of a head, least deck height of a bank; else nothing is kept. */
  heights: Readonly<Partial<Record<BenchTable['castingKind'], 'thickness' | 'deck-height'>>>;
  /** Bench table of its figures, by kind of casting. */
  tables: Readonly<Partial<Record<BenchTable['castingKind'], string>>>;
}>;

const block = { castingKinds: ['block'], heights: { block: 'deck-height' }, tables: { block: 'block-faces' } } as const;
const port = {
  bank: null,
  sides: ['upper edge', 'lower edge'],
  judgedLike: null,
  heights: {},
} as const;

/** In the order a casting lists them. */
export const FACES: readonly Face[] = [
  {
    code: 'deck',
    words: 'Deck',
    castingKinds: ['head', 'block'],
    bank: null,
    sides: ['intake side', 'exhaust side'],
    judgedLike: null,
    heights: { head: 'thickness', block: 'deck-height' },
    tables: { head: 'surface', block: 'block-faces' },
  },
  {
    ...block,
    code: 'left-deck',
    words: 'Left deck',
    bank: 'left',
    sides: ['valley side', 'outer side'],
    judgedLike: 'deck',
  },
  {
    ...block,
    code: 'right-deck',
    words: 'Right deck',
    bank: 'right',
    sides: ['valley side', 'outer side'],
    judgedLike: 'deck',
  },
  {
    ...port,
    code: 'intake-face',
    words: 'Intake face',
    castingKinds: ['head', 'intake_manifold'],
    tables: { head: 'head-faces', intake_manifold: 'intake-faces' },
  },
  {
    ...port,
    code: 'exhaust-face',
    words: 'Exhaust face',
    castingKinds: ['head', 'exhaust_manifold'],
    tables: { head: 'head-faces', exhaust_manifold: 'exhaust-faces' },
  },
];

export type FaceCode = Pick<Face, 'code'>;

/** The quantities of a face. */
export const faceQuantities = ({ code }: FaceCode) =>
  ({
    dial: `${code}-dial`,
    gap: `${code}-gap`,
    gapPlace: `${code}-gap-place`,
    flatness: `${code}-flatness`,
    along: `${code}-along`,
    across: `${code}-across`,
    span: `${code}-span`,
    columns: `${code}-columns`,
    rows: `${code}-rows`,
    length: `${code}-length`,
    width: `${code}-width`,
    spanLength: `${code}-span-length`,
    pit: `${code}-pit`,
    cut: `${code}-cut-best`,
  }) as const;

/** The faces of a casting. A V or flat block has a deck for each bank, any other one deck. */
export function facesOf(kind: string, hasBanks: boolean): readonly Face[] {
  return FACES.filter((face) => {
    if (!face.castingKinds.some((it) => it === kind)) return false;
    if (kind !== 'block') return true;
    return (face.bank !== null) === hasBanks;
  });
}
