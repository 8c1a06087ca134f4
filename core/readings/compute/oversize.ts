/**
 * One oversize for all bores: exact arithmetic of whole nanometres. What each rule needs, what each size gives.
 *
 * Source: common practice, no source; a car-maker writes "size to be rebored = piston + clearance - hone allowance"
 * (engine-maker data, name withheld).
 */
import { halfUp } from './formulas/bores.ts';
import type { OversizeRule } from './oversize-model.ts';

/** What every size of the list has in common. Null: nobody typed it and no sheet has it. */
export type BoreFacts = Readonly<{
  /** The size the bores were made to, or last bored to. */
  start: number;
  clearance: number | null;
  hone: number | null;
  cleanUp: number | null;
  greatest: number | null;
  leastWall: number | null;
}>;

/** A cylinder that is to be bored. */
export type WornBore = Readonly<{
  label: string;
  /** Largest reading and twice the depth of a score; null when nothing was read. */
  reach: number | null;
  /** Thinnest wall as measured; null when it was not. */
  wall: number | null;
  /** Typed distance of the bar from the first centre; null: none was typed. */
  shift: number | null;
}>;

/** Hone to this. The piston is measured, and wants its clearance. */
export const finishedSize = (piston: number, clearance: number): number => piston + clearance;

/** Bore to this: the hone takes the rest. */
export const boringSize = (finished: number, hone: number): number => finished - hone;

/**
 * The smallest boring size that takes out the worst of the wear.
 *
 * Centred on wear, the bar follows the worn hole. On the first centre all of the wear may lie on one side, so that it counts
 * twice. A score is in `reach` with twice its depth, which by the second rule errs on the safe side.
 */
export function neededSize(
  rule: OversizeRule,
  reach: number,
  { start, cleanUp }: Pick<BoreFacts, 'start' | 'cleanUp'>,
): number {
  const worn = rule === 'centred' ? reach : start + 2 * (reach - start);
  return worn + (cleanUp ?? 0);
}

/**
 * How far the bar may stand off the first centre: what was typed; else nothing on the first centre, and half of the wear
 * when it follows a hole that is worn on one side.
 */
export function shiftOf(rule: OversizeRule, bore: WornBore, start: number): number {
  if (bore.shift !== null) return bore.shift;
  return rule === 'original' || bore.reach === null ? 0 : halfUp(Math.max(0, bore.reach - start));
}

export type WallLeft = Readonly<{ label: string; left: number }>;

/** The thinnest wall left at a finished size; null when no wall was measured. */
export function thinnestWall(
  rule: OversizeRule,
  finished: number,
  bores: readonly WornBore[],
  start: number,
): WallLeft | null {
  return bores
    .flatMap((bore) =>
      bore.wall === null
        ? []
        : [{ label: bore.label, left: bore.wall - halfUp(finished - start) - shiftOf(rule, bore, start) }],
    )
    .reduce<WallLeft | null>((thin, it) => (thin === null || it.left < thin.left ? it : thin), null);
}

/** The bore that must be cut deepest; undefined when none was read. */
export const deepest = (bores: readonly WornBore[]): WornBore | undefined =>
  bores
    .filter((it) => it.reach !== null)
    .reduce<WornBore | undefined>(
      (top, it) => (top === undefined || (it.reach ?? 0) > (top.reach ?? 0) ? it : top),
      undefined,
    );
