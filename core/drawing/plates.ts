/** The plates of a drawing: the flat of each casting or bank on it, where a survey of the face is laid. */
import type { Frame } from './relief.ts';
import type { Drawing, Shape } from './shape.ts';

/** Frames of the closed body outlines, from the top of the picture down; empty for round things. */
export function platesOf(drawing: Pick<Drawing, 'shapes'>): Frame[] {
  return drawing.shapes
    .flatMap((shape) => (shape.kind === 'path' && shape.role === 'body' && shape.closed ? [frameOf(shape.d)] : []))
    .sort((a, b) => a.top - b.top);
}

/** Path text of ours holds absolute points only. */
function frameOf(d: string): Frame {
  const figures = (d.match(/-?\d+/g) ?? []).map(Number);
  const xs = figures.filter((_, n) => n % 2 === 0);
  const ys = figures.filter((_, n) => n % 2 === 1);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

/** What every drawing writes at the front end. */
export const FRONT = 'FRONT';
const [HIGH, SIZE] = [260, 340] as const;

/** Says above a plate shown alone where its front is: at its left end, at the right one when it lies turned. */
export function frontAbove({ left, top, width }: Frame, turned: boolean): Shape[] {
  const [x, way] = turned ? [left + width, -1] : [left, 1];
  const y = top - HIGH;
  const tip = `M${x} ${y}L${x + 240 * way} ${y - 110}L${x + 240 * way} ${y + 110}Z`;
  return [
    { kind: 'path', role: 'label', d: tip, closed: true, solid: true },
    {
      kind: 'text',
      role: 'label',
      x: x + 330 * way,
      y: y + Math.round(SIZE / 3),
      size: SIZE,
      anchor: turned ? 'end' : 'start',
      words: FRONT,
    },
  ];
}
