/**
 * What a bench table is: which quantities stand below each other for one kind of casting. Data only.
 *
 * A row that is not shown at first can be switched on for one casting. Order follows the hand: what is read first stands
 * first. Common practice, no source.
 */
import type { SpotKind } from './quantity.ts';

export type Stage = 'before' | 'after';

export type BenchRow = Readonly<{ quantity: string; point: string | null; stage: Stage; shown: boolean }>;

export type BenchTable = Readonly<{
  code: string;
  words: string;
  castingKind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  /** The places across; null for a list of figures read once. */
  spotKind: SpotKind | null;
  /** Code of the operation whose screen opens with this table; null when it has none of its own. */
  operation: string | null;
  /** Cautions and the like, said on screen and paper. In code only, found by the table's code. */
  notes?: readonly string[];
  /** Kept off papers and out of what a signature freezes: plans, and rows that stand in other tables too. In code only. */
  offPaper?: true;
  rows: readonly BenchRow[];
}>;

const at =
  (stage: Stage, shown = true) =>
  (quantity: string, point: string | null = null): BenchRow => ({ quantity, point, stage, shown });
export const before = at('before');
export const after = at('after');
export const hiddenBefore = at('before', false);
export const hiddenAfter = at('after', false);
