/** A face from above with a grid of boxes: figures in them, a disc the larger the higher the point stands; or empty ones. */
import type { FaceSurvey } from '../sheets/contract/reading-tables.ts';
import { type Block, RULES, stack, strokeLine, strokeRect, text } from './block.ts';
import { type Ink, STYLES, type Style } from './styles.ts';
import { shrinkToFit } from './text.ts';

type Face = Pick<FaceSurvey, 'sides' | 'columns' | 'rows'> & Partial<Pick<FaceSurvey, 'points'>>;

const figureStyle: Style = { face: 'figure', bold: 'figureBold', size: 9.6, lead: 1.1 };
/** Radius of the disc of the highest point. */
const DISC = 4;

/**
 * The face as a block.
 *
 * @param tall height of a row of boxes in points
 */
export function faceGrid(ink: Ink, face: Face, width: number, tall: number): Block {
  const [upper, lower] = face.sides;
  const side = (words: string) => text(ink, words, { ...STYLES.small, lead: 1.15 }, width, { align: 'center' });
  return stack([side(upper), boxes(ink, face, width, tall), side(lower)], 1);
}

function boxes(ink: Ink, { columns, rows, points = [] }: Face, width: number, tall: number): Block {
  const [cell, height] = [width / columns, tall * rows];
  return {
    width,
    height,
    draw(x, y) {
      strokeRect(ink, x, y, width, height, RULES.strong);
      for (let column = 1; column < columns; column += 1)
        strokeLine(ink, x + column * cell, y, x + column * cell, y + height, RULES.hair);
      for (let row = 1; row < rows; row += 1) strokeLine(ink, x, y + row * tall, x + width, y + row * tall, RULES.hair);
      for (const point of points)
        drawPoint(ink, point, x + (point.column - 1) * cell, y + (point.row - 1) * tall, cell, tall);
    },
  };
}

/** Upper half: the disc, and a triangle towards the plane the point touches. Lower half: the figure, bold where it touches. */
function drawPoint(
  ink: Ink,
  { text: words, share, touches }: FaceSurvey['points'][number],
  x: number,
  y: number,
  width: number,
  height: number,
): void {
  const middle = x + width / 2;
  const top = y + height * 0.3;
  ink.doc.fillColor('black').strokeColor('black').lineWidth(RULES.thin);
  if (share !== null) ink.doc.circle(middle, top, 0.7 + DISC * share).fill();
  const at = middle + DISC + 5;
  if (touches === 'upper') ink.doc.polygon([at - 3, top + 2.5], [at + 3, top + 2.5], [at, top - 2.5]).fill();
  if (touches === 'lower') ink.doc.polygon([at - 3, top - 2.5], [at + 3, top - 2.5], [at, top + 2.5]).stroke();
  const style = touches === null ? figureStyle : { ...figureStyle, face: 'figureBold' as const };
  const figure = text(ink, words, shrinkToFit(ink, words, style, width - 4), width, { align: 'center' });
  figure.draw(x, y + height * 0.52);
}
