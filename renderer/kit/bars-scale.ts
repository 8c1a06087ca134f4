/** Where figures stand in a picture of bars, and where its limit lines lie. Base units in, shares of the height out. */

export type BarFigure = Readonly<{
  value: number | null;
  low: number | null;
  high: number | null;
  target: number | null;
}>;

export type BarsScale = Readonly<{
  from: number;
  to: number;
  /** Labels at the side, from below. `text` in the unit shown. */
  ticks: readonly Readonly<{ at: number; text: string }>[];
  /** Share of the height from below, 0 to 1; what lies beyond is held at the edge. */
  place: (value: number) => number;
  /** True for a figure that is held at the edge. */
  beyond: (value: number) => boolean;
}>;

/** Labels a picture of 200 px carries. */
const MOST_LABELS = 5;
/** Figures further outside than this many times the room between the limits are held at the edge. */
const FARTHEST = 1.2;
const MARGIN = 0.18;

const known = (numbers: readonly (number | null)[]): number[] => numbers.filter((one): one is number => one !== null);

/** Lay out the height so that all limits and all figures not absurdly far are in it. Null with nothing to show. */
export function layBars(figures: readonly BarFigure[], perUnit: number): BarsScale | null {
  const lines = known(figures.flatMap(({ low, high, target }) => [low, high, target]));
  const values = known(figures.map(({ value }) => value));
  if (lines.length + values.length === 0) return null;
  // What may be at most a little is read from nought.
  const fromNought =
    lines.length > 0 &&
    figures.every(({ low, target }) => low === null && target === null) &&
    Math.min(...values, 0) >= 0;
  // A target alone says nothing about how far is far.
  const base = new Set(lines).size > 1 || fromNought ? [...lines, ...(fromNought ? [0] : [])] : [...lines, ...values];
  const [least, most] = [Math.min(...base), Math.max(...base)];
  const span = most > least ? most - least : Math.max(Math.abs(most) / 50, 1);
  const within = values.filter((value) => value > least - FARTHEST * span && value < most + FARTHEST * span);
  const low = Math.min(least, ...within);
  const high = Math.max(most, ...within);
  const margin = Math.max(high - low, span) * MARGIN;
  const from = fromNought ? 0 : low - margin;
  const to = high + margin;
  const place = (value: number): number => Math.min(1, Math.max(0, (value - from) / (to - from)));
  const beyond = (value: number): boolean => value < from || value > to;
  return { from, to, place, beyond, ticks: ticksOf(from, to, perUnit, place) };
}

function ticksOf(from: number, to: number, perUnit: number, place: (value: number) => number): BarsScale['ticks'] {
  const { size, decimals } = stepOf((to - from) / MOST_LABELS, perUnit);
  const first = Math.ceil(from / size);
  const last = Math.floor(to / size);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, n) => {
    const value = (first + n) * size;
    return { at: place(value), text: (value / perUnit).toFixed(decimals) };
  });
}

/** The smallest step of 1, 2 or 5 times a power of ten of the shown unit that is at least `least`. */
function stepOf(least: number, perUnit: number): { size: number; decimals: number } {
  for (let decimals = 7; decimals >= -6; decimals -= 1) {
    for (const digit of [1, 2, 5]) {
      const size = (perUnit * digit) / 10 ** decimals;
      if (size >= least) return { size, decimals: Math.max(0, decimals) };
    }
  }
  return { size: least, decimals: 0 };
}
