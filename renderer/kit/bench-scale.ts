/** Where things stand on a limit scale. Whole base units (nanometres, micronewtons ...) in, shares of its width out. */

export type ScaleInput = Readonly<{
  low: number | null;
  high: number | null;
  target: number | null;
  value: number | null;
  /** Base units in one unit shown: 1 000 000 for mm, 25 400 000 for in. */
  perUnit: number;
}>;

export type Tick = Readonly<{ at: number; size: 'label' | 'mid' | 'small'; value: number }>;
export type Scale = Readonly<{
  from: number;
  to: number;
  ticks: readonly Tick[];
  /** Digits after the point that the labels need. */
  decimals: number;
  /** Share of the width, 0 to 1; beyond the ends it is held at the end. */
  place: (value: number) => number;
}>;

/** Graduations a scale of 700 px can carry without running together. */
const MOST_TICKS = 70;

/**
 * Lay out a scale that shows both limits with room outside, and the value where it is not absurdly far.
 *
 * @returns null when there is no limit, target or value to show
 */
export function layScale({ low, high, target, value, perUnit }: ScaleInput): Scale | null {
  const known = [low, high, target].filter((n): n is number => n !== null);
  const [first] = known;
  if (first === undefined) return null;
  const least = Math.min(...known);
  const most = Math.max(...known);
  const span = most > least ? most - least : oneSided(first, value, low === null);
  // What may be at most a little is read from nought.
  const fromNought = low === null && target === null && high !== null && high > 0 && (value === null || value >= 0);
  let from = fromNought ? 0 : least - span * 0.7;
  let to = most + span * 0.7;
  if (value !== null && value < from && value > from - 2 * span) from = value - span * 0.15;
  if (value !== null && value > to && value < to + 2 * span) to = value + span * 0.15;
  const step = stepOf((to - from) / MOST_TICKS, perUnit);
  from = Math.floor(from / (step.size * 5)) * step.size * 5;
  to = Math.ceil(to / (step.size * 5)) * step.size * 5;
  const place = (at: number): number => Math.min(1, Math.max(0, (at - from) / (to - from)));
  return { from, to, place, decimals: step.decimals, ticks: ticksOf(from, to, step.size, place) };
}

/** Room around a single limit: enough to see the value and the limit apart, or a little of the size itself. */
const oneSided = (limit: number, value: number | null, upper: boolean): number =>
  Math.max(value === null ? 0 : Math.abs(value - limit), Math.abs(limit) / (upper ? 1.5 : 200), 1);

/** The smallest step of 1, 2 or 5 times a power of ten of the shown unit that is at least `least`. */
function stepOf(least: number, perUnit: number): { size: number; decimals: number } {
  for (let decimals = 6; decimals >= -6; decimals -= 1) {
    for (const digit of [1, 2, 5]) {
      const size = (perUnit * digit) / 10 ** decimals;
      // Labels stand on every tenth step, one digit coarser.
      if (size >= least) return { size, decimals: Math.max(0, digit === 5 ? decimals - 1 : decimals - 1) };
    }
  }
  return { size: least, decimals: 0 };
}

function ticksOf(from: number, to: number, step: number, place: (at: number) => number): Tick[] {
  const first = Math.round(from / step);
  const last = Math.round(to / step);
  const ticks: Tick[] = [];
  for (let n = first; n <= last; n += 1) {
    const size = n % 10 === 0 ? 'label' : n % 5 === 0 ? 'mid' : 'small';
    ticks.push({ at: place(n * step), size, value: n * step });
  }
  return ticks;
}
