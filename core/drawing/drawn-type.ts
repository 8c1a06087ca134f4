/** What the drawing needs to know of a casting type: plain facts, no sizes in millimetres, so any type can be drawn. */

export const DRAWN_KINDS = [
  'head',
  'block',
  'intake_manifold',
  'exhaust_manifold',
  'crank',
  'rod_set',
  'flywheel',
  'cover',
] as const;
export type DrawnKind = (typeof DRAWN_KINDS)[number];

/** A place on the type, as the catalogue keeps it. `cylinder` is counted on the casting from its front. */
export type DrawnSpot = Readonly<{
  kind: string;
  label: string;
  benchOrder: number;
  row: number;
  bank: 'left' | 'right' | 'none';
  cylinder: number | null;
  side: 'I' | 'E' | 'none';
}>;

/** Counts that change the picture; a missing one reads as 0. Other counts of the type may stand in the record. */
export type DrawnCounts = Readonly<{
  cylinders?: number | undefined;
  mains?: number | undefined;
  pins?: number | undefined;
  rods?: number | undefined;
  sleeves?: number | undefined;
  camshafts?: number | undefined;
  cam_journals?: number | undefined;
}>;

export type DrawnType = Readonly<{
  kind: DrawnKind;
  counts: DrawnCounts;
  spots: readonly DrawnSpot[];
  /** False draws cooling fins instead of water ports. Default true. */
  waterJacket?: boolean | undefined;
  /** Valve head over bore in thousandths (1.940 in over 3.950 in = 491). Default 440 intake, 380 exhaust. */
  valvePerBore?: Readonly<{ intake: number; exhaust: number }> | undefined;
  /** A block with a liner in each cylinder shows its rim. */
  liners?: boolean | undefined;
}>;

export const DRAWN_VIEWS = ['deck', 'top', 'intake_face', 'exhaust_face', 'mains', 'side', 'face'] as const;
/** Which picture of the casting: the name kept with a condition mark. */
export type DrawnView = (typeof DRAWN_VIEWS)[number];

const VIEW_WORDS: Readonly<Record<DrawnView, string>> = {
  deck: 'deck up',
  top: 'other side up',
  intake_face: 'intake face',
  exhaust_face: 'exhaust face',
  mains: 'mains up',
  side: 'side',
  face: 'face',
};

/** The view in words, as captions and choices write it. */
export const viewWords = (view: DrawnView): string => VIEW_WORDS[view];

/** The views a kind of casting has, the usual one first; never empty. */
export function viewsOf(kind: DrawnKind): readonly [DrawnView, ...DrawnView[]] {
  if (kind === 'head') return ['deck', 'top', 'intake_face', 'exhaust_face'];
  if (kind === 'block') return ['deck', 'mains'];
  if (kind === 'crank') return ['side'];
  return ['face'];
}

/** A condition mark: place in ten thousandths of the whole picture as it lies unturned, and what its ring says. */
export type Balloon = Readonly<{ label: string; x: number; y: number; key?: string | undefined }>;

/** One key for one spot of a type: labels are unique per kind only. */
export const spotKey = (spot: Readonly<{ kind: string; label: string }>): string => `${spot.kind}:${spot.label}`;

/**
 * Spots of one kind in bench order (row by row, front to back as it lies).
 *
 * @returns a new list, empty when the type has none.
 */
export const spotsOf = (spots: readonly DrawnSpot[], kind: string): DrawnSpot[] =>
  spots.filter((spot) => spot.kind === kind).sort((a, b) => a.row - b.row || a.benchOrder - b.benchOrder);
