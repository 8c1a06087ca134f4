/** Where the parts of a section stand in its picture. A scale for looking, no figure of the face. */
import type { GridFrame, GridSection } from '#core/readings/compute/deck-survey-model.ts';

const [WIDTH, HEIGHT] = [700, 108];
const [LEFT, RIGHT] = [40, 660];
/** The straightedge lies here while the face sags, and room is kept on both sides of it. */
const [TOP, FOOT] = [30, 80];

export type LaidSection = Readonly<{
  width: number;
  height: number;
  left: number;
  right: number;
  chord: string;
  line: string;
  points: readonly Readonly<{ code: string; x: number; y: number }>[];
  /** From the straightedge to the point that is worst; null where all lies on it. */
  worst: Readonly<{ x: number; from: number; to: number }> | null;
  said: Readonly<{ x: number; anchor: 'start' | 'end' }>;
  /** How many times the heights are enlarged over the lengths, in two figures; null while the length is not known. */
  times: number | null;
}>;

/**
 * @param turned the front lies at the right
 * @param length of the line, in the unit of the heights
 */
export function laySection(
  { points, worstAt }: Pick<GridSection, 'points' | 'worstAt'>,
  turned: boolean,
  length: number | null,
): LaidSection {
  const heights = points.map((point) => point.height);
  const [low, high] = [Math.min(0, ...heights), Math.max(0, ...heights)];
  const perHeight = (FOOT - TOP) / Math.max(high - low, 1);
  const chordY = round(TOP + high * perHeight);
  const placed = points.map((point) => {
    const share = turned ? 1 - point.at : point.at;
    return {
      code: point.code,
      x: round(LEFT + (RIGHT - LEFT) * share),
      y: round(TOP + (high - point.height) * perHeight),
    };
  });
  const deepest = placed.find((point) => point.code === worstAt);
  const x = deepest?.x ?? WIDTH / 2;
  const atRight = x > WIDTH * 0.6;
  return {
    width: WIDTH,
    height: HEIGHT,
    left: LEFT,
    right: RIGHT,
    chord: `M${LEFT} ${chordY}H${RIGHT}`,
    line: `M${placed.map((point) => `${point.x} ${point.y}`).join('L')}`,
    points: placed,
    worst: deepest && deepest.y !== chordY ? { x, from: chordY, to: deepest.y } : null,
    said: { x: x + (atRight ? -12 : 12), anchor: atRight ? 'end' : 'start' },
    times: length === null ? null : twoFigures((perHeight * length) / (RIGHT - LEFT)),
  };
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** How long the line of a section is on the face; null while the face's sizes are not known. */
export function lengthOf({ kind }: Pick<GridSection, 'kind'>, { length, width }: GridFrame): number | null {
  if (kind === 'along') return length;
  if (kind === 'across') return width;
  return length === null || width === null ? null : Math.hypot(length, width);
}

/** 283 is `280`, 7.3 is `7`. */
function twoFigures(value: number): number {
  const zeros = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(value, 1))) - 1);
  return Math.round(value / zeros) * zeros;
}
