/**
 * A drawing of a casting as plain data. Renderers (SVG on screen, PDF on paper) draw the shapes in order and know nothing
 * about castings.
 *
 * Coordinates are whole units of one scale for both axes, so a circle stays round: x runs 0..10 000 from the left edge of
 * the plate to the right, y runs 0..`height` from the top down.
 */

/** Width of every plate in drawing units. */
export const PLATE_WIDTH = 10_000;

export const SHAPE_ROLES = ['body', 'chamber', 'valve', 'bolt', 'port', 'mark', 'label'] as const;
/** What a shape stands for; the renderer's line style follows from it alone (`LINE_STYLES`). */
export type ShapeRole = (typeof SHAPE_ROLES)[number];

type Common = Readonly<{
  role: ShapeRole;
  /** Thin line instead of the role's own: an inner edge, a hidden thing. */
  fine?: true;
  /** Dashed: expected, not there, or behind. */
  dashed?: true;
  /** Filled with the line colour (the dot at the end of a leader). */
  solid?: true;
  /** Key of the spot this shape belongs to (`spotKey`), so that a screen can mark and choose it. */
  spot?: string;
}>;

export type CircleShape = Common & Readonly<{ kind: 'circle'; x: number; y: number; r: number }>;
/** `d` is SVG path text with absolute M, L, Q, C and Z only, whole units. PDF kits read the same text. */
export type PathShape = Common & Readonly<{ kind: 'path'; d: string; closed: boolean }>;
export type LineShape = Common & Readonly<{ kind: 'line'; x1: number; y1: number; x2: number; y2: number }>;
/**
 * Words, always upright whatever way the casting is turned. `x`, `y` is the start, middle or end of the base line
 * (`anchor`); `size` is the letter height (em) in drawing units.
 */
export type TextShape = Common &
  Readonly<{
    kind: 'text';
    x: number;
    y: number;
    size: number;
    anchor: 'start' | 'middle' | 'end';
    words: string;
    bold?: true;
  }>;

export type Shape = CircleShape | PathShape | LineShape | TextShape;

/** Where a spot lies on the plate as drawn (centre and a radius that a finger may touch). */
export type SpotPlace = Readonly<{ key: string; label: string; kind: string; x: number; y: number; r: number }>;

/** A whole drawing. `spots` are in bench order as the plate lies now (left to right, then the next row). */
export type Drawing = Readonly<{
  width: typeof PLATE_WIDTH;
  height: number;
  shapes: readonly Shape[];
  spots: readonly SpotPlace[];
  /** Sentence under the drawing, for example "deck up, front is the left end". */
  caption: string;
}>;

/** How a role is drawn. Colours are names of roles of the palette; paper draws `paint` as white. */
export type LineStyle = Readonly<{
  /** Index into `LINE_WIDTHS`: 0 fine, 1 plain, 2 heavy. */
  weight: 0 | 1 | 2;
  fill: 'none' | 'sheet' | 'paint';
}>;

/** The one table of line styles, for screen and paper alike. A `fine` shape takes weight 0. */
export const LINE_STYLES: Readonly<Record<ShapeRole, LineStyle>> = {
  body: { weight: 2, fill: 'sheet' },
  chamber: { weight: 1, fill: 'none' },
  valve: { weight: 1, fill: 'none' },
  bolt: { weight: 1, fill: 'none' },
  port: { weight: 1, fill: 'none' },
  mark: { weight: 1, fill: 'paint' },
  label: { weight: 0, fill: 'none' },
};

/** Line widths by weight: CSS pixels on screen, points on paper. They do not scale with the drawing. */
export const LINE_WIDTHS = { px: [0.8, 1.4, 2], pt: [0.4, 0.7, 1.2] } as const;
/** Dash pattern of a `dashed` shape, in line widths' units (px or pt): stroke, gap. */
export const DASH = [3, 2] as const;
