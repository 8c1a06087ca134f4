/** The plates of a drawing: the flat of each casting or bank on it, where a survey of the face is laid. */
import type { Frame } from './relief.ts';
import type { Drawing } from './shape.ts';

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
