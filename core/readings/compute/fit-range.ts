/** Fits from two bands of sizes: the tightest and the loosest that parts within them can make. Exact differences. */

/** Lowest and highest size, in nanometres. */
export type Band = Readonly<{ low: number; high: number }>;

export type FitRange = Readonly<{
  /** Positive: tight. */
  tightest: number;
  loosest: number;
  /** Tight whatever the parts are, loose whatever they are, or either. */
  kind: 'interference' | 'clearance' | 'transition';
}>;

/** The fit of every part of one band in every hole of the other. */
export function fitRangeOf(hole: Band, part: Band): FitRange {
  const tightest = part.high - hole.low;
  const loosest = part.low - hole.high;
  return { tightest, loosest, kind: loosest > 0 ? 'interference' : tightest < 0 ? 'clearance' : 'transition' };
}

/** The band of an oversize: both ends larger by as much; an undersize is negative. */
export const oversized = (band: Band, by: number): Band => ({ low: band.low + by, high: band.high + by });

/** How far a size lies outside a band: positive above, negative below, 0 within. */
export const outside = (size: number, band: Band): number =>
  size > band.high ? size - band.high : size < band.low ? size - band.low : 0;
