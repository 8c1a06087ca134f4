/**
 * The answer to "which oversize": every size on the list with what each rule says of it. Types only.
 * Values are nanometres; texts are in the unit of the answer unless they carry a mark.
 */
import type { SpotId } from '../../kernel/ids.ts';
import type { Direction, VerdictName } from './model.ts';

/** The bar centred on the worn hole, or kept on the centre the bore was made on. */
export type OversizeRule = 'centred' | 'original';

/** A size as printed: `3.9700` in the unit of the answer, and in the other unit with its mark, `100.838 mm`. */
export type SizeShown = Readonly<{ value: number; text: string; other: string | null }>;

/** A figure the choice stands on. `size` is null when nobody typed it and no sheet has it. */
export type OversizeFigure = Readonly<{
  quantity: string;
  /** `standard bore`, `hone allowance`. */
  words: string;
  size: SizeShown | null;
  /** `measured`, or where the figure comes from; `not known` when there is none. */
  source: string;
}>;

/** What one rule says of one oversize. */
export type OversizeVerdict = Readonly<{
  /** pass: cleans up and nothing is against it; fail: it must not be taken; else nobody can say yet. */
  name: VerdictName;
  /** under: the size is not enough, or too little would be left; over: the bore would be too big. Null where nothing fails. */
  direction: Direction | null;
  /** In two or three words: `cleans up`, `not enough`, `bore too big`, `wall too thin`, `not all read`, `too close`. */
  words: string;
  /** A whole sentence with the figures that decide. */
  reason: string;
  /** Boring size less what is needed, with its sign in the text; null when one of them is not known. */
  spare: SizeShown | null;
  /** Thinnest wall that would be left; null when no wall was measured. */
  wallLeft: SizeShown | null;
}>;

/** One size of the list. */
export type OversizeCandidate = Readonly<{
  /** Point of `piston-offered` and the code to send: `+.020in`, `+0.50mm`, `std`. */
  code: string;
  /** `.020`, `0.50`; `standard` for none. */
  over: string;
  /** `.020 in over`, `standard size`. */
  words: string;
  /** Measured size of the set; the nominal one where no set was measured; null when no set of this size is made. */
  piston: SizeShown | null;
  /** True when the size comes from pistons in the hand. */
  measured: boolean;
  /** `measured`, `largest of the set, measured`, `not measured`, `not made`. */
  pistonWords: string;
  /** Hone to this; null while the clearance or the standard size is not known. */
  finished: SizeShown | null;
  /** Bore to this; null while the hone allowance is not known. */
  boring: SizeShown | null;
  centred: OversizeVerdict;
  original: OversizeVerdict;
  /** What a person must say yes to before this size is used; null when nothing is open. */
  ask: string | null;
}>;

/** What `bore-wanted` says now. */
export type OversizeChosen = Readonly<{
  /** Code of the size on the list; null for a size that a person typed. */
  code: string | null;
  finished: SizeShown;
  /** `.020 in over`, or the size itself. */
  words: string;
  /** Cylinders that have it: `all 8`, `cylinder 3`. */
  where: string;
  /** The note kept with it, for example the rule and the boring size; empty when none. */
  note: string;
}>;

/** The largest reading of the cylinders that are to be bored. */
export type LargestBore = Readonly<{
  spot: SpotId;
  label: string;
  /** `cylinder 3, thrust, top`. */
  words: string;
  size: SizeShown;
  /** Depth of a score or pit there, counted twice; null when none was typed. */
  score: SizeShown | null;
  /** Reading and twice the score. */
  reach: SizeShown;
}>;

export type OversizeChoice = Readonly<{
  unit: 'in' | 'mm';
  decimals: number;
  /** Cylinders to be bored, sleeved ones left out; in bench order. */
  cylinders: readonly Readonly<{ spot: SpotId; label: string }>[];
  /** `all 8`, `all but cylinder 3`, `cylinder 3`. */
  which: string;
  sleeves: readonly Readonly<{ spot: SpotId; label: string }>[];
  /** Standard size, clearance wanted, hone allowance, clean-up, greatest bore, least wall: in this order, always six. */
  figures: readonly OversizeFigure[];
  /** `here, measured`, `not measured`: of the sets of pistons. */
  pistons: string;
  /** Where the three depths lie: `top .5, middle 2.0, bottom 4.5 in`; in words where nobody typed them. */
  depths: string;
  /** Null while nothing is read. */
  largest: LargestBore | null;
  /** Bores with readings missing, and which: `cylinder 5: pin axis, bottom`. */
  unread: readonly Readonly<{ spot: SpotId; label: string; words: string }>[];
  /** Both rules, centred first. */
  rules: readonly Readonly<{
    rule: OversizeRule;
    /** `Centred on wear`, `Kept on centre`. */
    words: string;
    /** Smallest boring size that cleans up everywhere. */
    need: SizeShown | null;
    /** Code of the smallest size that passes by this rule and whose pistons are measured; null for none. */
    best: string | null;
    /** Why there is none; empty when there is one. */
    why: string;
  }>[];
  /** Smallest first. Empty when the standard size is not known. */
  candidates: readonly OversizeCandidate[];
  chosen: readonly OversizeChosen[];
  /** Sentences: odd sizes, pistons not measured, wall not measured, a sleeve's exception. */
  warnings: readonly string[];
  /** What must be measured or typed before anything can be chosen; empty when nothing is missing. */
  missing: readonly string[];
}>;
