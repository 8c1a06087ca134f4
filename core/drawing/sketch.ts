/** A sketch pad the generators draw on, always unturned; `finish` turns places, keeps words upright and rounds. */
import { type Drawing, PLATE_WIDTH, type Shape, type ShapeRole, type SpotPlace } from './shape.ts';

type Style = Readonly<{ fine?: true; dashed?: true; solid?: true; spot?: string }>;
type Point = readonly [number, number];
type Step = readonly ['M' | 'L' | 'Q' | 'C', ...Point[]] | readonly ['Z'];

type Draft =
  | Readonly<{ kind: 'circle'; role: ShapeRole; at: Point; r: number; style: Style }>
  | Readonly<{ kind: 'path'; role: ShapeRole; steps: readonly Step[]; closed: boolean; style: Style }>
  | Readonly<{ kind: 'line'; role: ShapeRole; from: Point; to: Point; style: Style }>
  | Readonly<{ kind: 'words'; role: ShapeRole; at: Point; size: number; anchor: Anchor; words: string; style: Style }>;
type Anchor = 'start' | 'middle' | 'end';

export type Sketch = Readonly<{
  height: number;
  circle: (role: ShapeRole, x: number, y: number, r: number, style?: Style) => void;
  path: (role: ShapeRole, steps: readonly Step[], style?: Style) => void;
  line: (role: ShapeRole, x1: number, y1: number, x2: number, y2: number, style?: Style) => void;
  /** Words centred on the height of (x, y). `anchor` is meant unturned; turning swaps start and end. */
  words: (x: number, y: number, size: number, words: string, anchor?: Anchor) => void;
  /** Register a spot that can be touched. */
  spot: (place: SpotPlace) => void;
  finish: (turned: boolean) => Omit<Drawing, 'caption'>;
}>;

/** Half of a capital's height in this type face, as a share of its size, to centre words on a point. */
const HALF_CAPITAL = 0.33;
const round = (value: number): number => Math.round(value);

/** A new empty pad of the plate's width and this height in drawing units. */
export function sketch(height: number): Sketch {
  const drafts: Draft[] = [];
  const spots: SpotPlace[] = [];
  return {
    height,
    circle: (role, x, y, r, style = {}) => drafts.push({ kind: 'circle', role, at: [x, y], r, style }),
    path: (role, steps, style = {}) =>
      drafts.push({ kind: 'path', role, steps, closed: steps.some((step) => step[0] === 'Z'), style }),
    line: (role, x1, y1, x2, y2, style = {}) =>
      drafts.push({ kind: 'line', role, from: [x1, y1], to: [x2, y2], style }),
    words: (x, y, size, words, anchor = 'middle') =>
      drafts.push({ kind: 'words', role: 'label', at: [x, y], size, anchor, words, style: {} }),
    spot: (place) => spots.push(place),
    finish: (turned) => {
      const put = ([x, y]: Point): Point => (turned ? [PLATE_WIDTH - x, height - y] : [x, y]);
      return {
        width: PLATE_WIDTH,
        height: round(height),
        shapes: drafts.map((draft) => shapeOf(draft, put, turned)),
        spots: spots.map((spot) => spotOf(spot, put)),
      };
    },
  };
}

function spotOf(spot: SpotPlace, put: (point: Point) => Point): SpotPlace {
  const [x, y] = put([spot.x, spot.y]);
  return { ...spot, x: round(x), y: round(y), r: round(spot.r) };
}

function shapeOf(draft: Draft, put: (point: Point) => Point, turned: boolean): Shape {
  const common = { role: draft.role, ...draft.style };
  if (draft.kind === 'circle') {
    const [x, y] = put(draft.at);
    return { ...common, kind: 'circle', x: round(x), y: round(y), r: round(draft.r) };
  }
  if (draft.kind === 'line') {
    const [[x1, y1], [x2, y2]] = [put(draft.from), put(draft.to)];
    return { ...common, kind: 'line', x1: round(x1), y1: round(y1), x2: round(x2), y2: round(y2) };
  }
  if (draft.kind === 'path') {
    return {
      ...common,
      kind: 'path',
      d: draft.steps.map((step) => stepText(step, put)).join(''),
      closed: draft.closed,
    };
  }
  const [x, y] = put(draft.at);
  return {
    ...common,
    kind: 'text',
    x: round(x),
    y: round(y + draft.size * HALF_CAPITAL),
    size: round(draft.size),
    anchor: turned ? OTHER_END[draft.anchor] : draft.anchor,
    words: draft.words,
  };
}

const OTHER_END = { start: 'end', middle: 'middle', end: 'start' } as const;

function stepText(step: Step, put: (point: Point) => Point): string {
  const [letter, ...points] = step;
  return `${letter}${points.map((point) => put(point).map(round).join(' ')).join(' ')}`;
}

/** Steps of a rectangle with its corners cut by `cut` (0 for square corners). */
export function plateSteps(x: number, y: number, width: number, height: number, cut: number): Step[] {
  const [right, foot] = [x + width, y + height];
  return [
    ['M', [x + cut, y]],
    ['L', [right - cut, y]],
    ['L', [right, y + cut]],
    ['L', [right, foot - cut]],
    ['L', [right - cut, foot]],
    ['L', [x + cut, foot]],
    ['L', [x, foot - cut]],
    ['L', [x, y + cut]],
    ['Z'],
  ];
}

/** Room above and below the casting for the words INTAKE, EXHAUST, FRONT. */
export const STRIP = 560;
/** Letter size of those words and of cylinder numbers. */
export const WORD_SIZE = 340;
/** Room left and right of the casting. */
export const MARGIN = 120;

/** The word at the front end with a small arrow that points to it; always at the front, wherever that lies now. */
export function drawFront(pad: Sketch, words: string, x: number, y: number): void {
  pad.path('label', [['M', [x, y]], ['L', [x + 240, y - 110]], ['L', [x + 240, y + 110]], ['Z']], { solid: true });
  pad.words(x + 330, y, WORD_SIZE, words, 'start');
}

/** A label as large as fits in a circle of radius `r`, at most `most`; 0 when it would be smaller than `least`. */
export function fittingSize(label: string, r: number, most: number, least: number): number {
  // A condensed bold figure of Sofia Sans is about 0.46 em wide (measured from the font); 0.9 keeps off the line.
  const size = Math.min(most, (2 * r * 0.86) / (0.46 * Math.max(label.length, 1)));
  return size >= least ? size : 0;
}
