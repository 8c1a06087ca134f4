/** Drawing and measuring lines of text. */
import { FEATURES, fontName, MISSING_WIDTH } from './fonts.ts';
import { breakLines, type Line, type Rich } from './lines.ts';
import { type Ink, LEAST_SIZE, type Style } from './styles.ts';

/** Width of text on one line. */
export const widthOfText = (ink: Ink, rich: Rich, style: Style): number =>
  Math.max(...breakLines(ink, rich, style, Number.POSITIVE_INFINITY).map((line) => line.width));

/** Height of a line in points. */
export const lineHeight = (style: Style): number => style.size * style.lead;

/** Draw one line whose box begins at `x`, `top`. */
export function drawLine(ink: Ink, line: Line, style: Style, x: number, top: number): void {
  const { doc, fonts } = ink;
  const { ascent, descent } = fonts[style.face];
  const baseline = top + (style.size * (style.lead - ascent - descent)) / 2 + style.size * ascent;
  let at = x;
  for (const piece of line.pieces) {
    if (piece.missing) drawMissing(ink, at, baseline, style);
    else if (piece.text !== '') {
      const text = piece.text.replaceAll('\u00a0', ' ');
      const spacing = (style.spacing ?? 0) * style.size;
      doc
        .font(fontName(piece.face, piece.script))
        .fontSize(style.size)
        .fillColor(style.ink ?? 'black');
      doc.text(text, at, baseline, {
        lineBreak: false,
        baseline: 'alphabetic',
        features: FEATURES,
        characterSpacing: spacing,
      });
    }
    at += piece.width;
  }
}

/** An upright box with a stroke through it: a character stands here that our faces cannot show. */
function drawMissing(ink: Ink, x: number, baseline: number, style: Style): void {
  const [width, height] = [(MISSING_WIDTH - 0.12) * style.size, 0.66 * style.size];
  const left = x + 0.06 * style.size;
  ink.doc
    .lineWidth(0.6)
    .strokeColor(style.ink ?? 'black')
    .rect(left, baseline - height, width, height)
    .moveTo(left, baseline)
    .lineTo(left + width, baseline - height)
    .stroke();
}

/** The same style, as large as fits one line of `width`, but not under `least` points. */
export function shrinkToFit(ink: Ink, rich: Rich, style: Style, width: number, least: number = LEAST_SIZE): Style {
  const natural = widthOfText(ink, rich, style);
  if (natural <= width) return style;
  return { ...style, size: Math.max(least, Math.floor((style.size * width * 10) / natural) / 10) };
}
