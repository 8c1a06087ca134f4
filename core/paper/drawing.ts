/** Draws a casting (core/drawing) on paper. It knows shapes and roles, nothing about castings. */
import { DASH, type Drawing, LINE_STYLES, LINE_WIDTHS, type Shape } from '../drawing/shape.ts';
import type { Block } from './block.ts';
import { breakLines } from './lines.ts';
import { type Ink, LEAST_SIZE, type Style } from './styles.ts';
import { drawLine } from './text.ts';

/** The drawing as a block, as large as fits `width` and `mostHeight`. */
export function drawingBlock(ink: Ink, drawing: Drawing, width: number, mostHeight = Number.POSITIVE_INFINITY): Block {
  const scale = Math.min(width / drawing.width, mostHeight / drawing.height);
  return {
    width: drawing.width * scale,
    height: drawing.height * scale,
    draw(x, y) {
      for (const shape of drawing.shapes) drawShape(ink, shape, x, y, scale);
    },
  };
}

function drawShape(ink: Ink, shape: Shape, x: number, y: number, scale: number): void {
  if (shape.kind === 'text') {
    const style: Style = {
      face: shape.bold ? 'figureBold' : 'figureSemi',
      bold: 'figureBold',
      size: Math.max(LEAST_SIZE, shape.size * scale),
      lead: 1,
    };
    for (const line of breakLines(ink, shape.words, style, Number.POSITIVE_INFINITY)) {
      const shift = { start: 0, middle: 0.5, end: 1 }[shape.anchor];
      const { ascent, descent } = ink.fonts[style.face];
      const base = y + shape.y * scale;
      const top = base - (style.size * (1 - ascent - descent)) / 2 - style.size * ascent;
      drawLine(ink, line, style, x + shape.x * scale - line.width * shift, top);
    }
    return;
  }
  const look = LINE_STYLES[shape.role];
  ink.doc.save().translate(x, y).scale(scale);
  outline(ink, shape);
  const weight = LINE_WIDTHS.pt[shape.fine ? 0 : look.weight] / scale;
  ink.doc.lineWidth(weight).strokeColor('black');
  if (shape.dashed) ink.doc.dash(DASH[0] / scale, { space: DASH[1] / scale });
  // Paper is black on white: a filled role covers what lies under it, in white.
  if (shape.solid) ink.doc.fillAndStroke('black', 'black');
  else if (look.fill !== 'none' && shape.kind !== 'line') ink.doc.fillAndStroke('white', 'black');
  else ink.doc.stroke();
  ink.doc.restore();
}

function outline(ink: Ink, shape: Exclude<Shape, { kind: 'text' }>): void {
  if (shape.kind === 'circle') ink.doc.circle(shape.x, shape.y, shape.r);
  else if (shape.kind === 'line') ink.doc.moveTo(shape.x1, shape.y1).lineTo(shape.x2, shape.y2);
  else {
    ink.doc.path(shape.d);
    if (shape.closed) ink.doc.closePath();
  }
}
