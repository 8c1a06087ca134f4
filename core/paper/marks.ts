/** The signs of the house on paper: tag, metal lining, verdict marks, bars, boxes to tick, lines to write on. */
import type { TagWords } from '../sheets/contract/papers.ts';
import { type Block, beside, box, RULES, strokeLine, strokeRect, text } from './block.ts';
import type { Rich } from './lines.ts';
import { type Ink, STYLES, type Style } from './styles.ts';
import { widthOfText } from './text.ts';

type MetalWord = TagWords['metal'];

/** The outline of a tag: clipped corners at the wire end. */
export function tagPath(
  ink: Ink,
  x: number,
  y: number,
  width: number,
  height: number,
  clip: number,
): PDFKit.PDFDocument {
  return ink.doc
    .moveTo(x + clip, y)
    .lineTo(x + width, y)
    .lineTo(x + width, y + height)
    .lineTo(x + clip, y + height)
    .lineTo(x, y + height - clip)
    .lineTo(x, y + clip)
    .closePath();
}

/** A number in a tag. `thin` for bags, boxes and trays. */
export function tag(
  ink: Ink,
  number: string,
  options: Readonly<{ size?: number; thin?: boolean; width?: number }> = {},
): Block {
  const size = options.size ?? 12;
  const weight = options.thin ? 0.8 : Math.max(1.4, size / 15.5);
  const [before, after] = [size * 1.06 + 3, size * 0.26 + 2];
  const limit = options.width ?? Number.POSITIVE_INFINITY;
  let style: Style = {
    face: options.thin ? 'figureSemi' : 'figureBold',
    bold: 'figureBold',
    size,
    lead: 1.3,
    spacing: size > 20 ? -0.03 : 0,
  };
  const natural = widthOfText(ink, number, style);
  if (before + natural + after > limit)
    style = { ...style, size: Math.max(8.5, (size * (limit - before - after)) / natural) };
  const label = text(ink, number, style, widthOfText(ink, number, style) + 0.1);
  const width = before + label.width + after;
  const height = size * 1.38;
  const [clip, hole] = [size * 0.3, Math.max(2.5, size * 0.2)];
  return {
    width,
    height,
    draw(x, y) {
      const half = weight / 2;
      tagPath(ink, x + half, y + half, width - weight, height - weight, clip)
        .lineWidth(weight)
        .strokeColor('black')
        .stroke();
      ink.doc
        .lineWidth(Math.max(1, weight * 0.9))
        .circle(x + before * 0.52, y + height / 2, hole)
        .stroke();
      label.draw(x + before, y + (height - label.height) / 2);
    },
  };
}

/** White words on a black bar. A second line is begun when the words are too long for one. */
export function bar(
  ink: Ink,
  words: Rich,
  width: number,
  options: Readonly<{ style?: Style; center?: boolean; padY?: number }> = {},
): Block {
  const style = options.style ?? STYLES.bar;
  const inner = text(ink, words, style, width - 14, { align: options.center ? 'center' : 'start' });
  return box(ink, inner, { padX: 7, padY: options.padY ?? 4, fill: 'black', width });
}

/** Metal as section lining in a small box: even strokes iron, crossed strokes aluminium, empty another metal, dots not known. */
export function metalLining(ink: Ink, metal: MetalWord, size = 9): Block {
  return {
    width: size * 1.6,
    height: size,
    draw(x, y) {
      const width = size * 1.6;
      ink.doc.save().rect(x, y, width, size).clip();
      if (metal === 'iron' || metal === 'aluminium') lining(ink, x, y, width, size, 1);
      if (metal === 'aluminium') lining(ink, x, y, width, size, -1);
      ink.doc.restore();
      if (metal === 'not_known') ink.doc.dash(1.4, { space: 1.4 });
      strokeRect(ink, x, y, width, size, RULES.thin);
      ink.doc.undash();
    },
  };
}

function lining(ink: Ink, x: number, y: number, width: number, height: number, slope: 1 | -1): void {
  for (let at = -height; at < width + height; at += 3) {
    const [from, until] = slope === 1 ? [y + height, y] : [y, y + height];
    strokeLine(ink, x + at, from, x + at + height, until, 0.5);
  }
}

export type Verdict = 'pass' | 'over' | 'under' | 'close' | 'not_measured' | 'no_limit';

/** Two limit lines on a base line and where the reading fell; stands before a figure. */
export function verdictMark(ink: Ink, verdict: Verdict, size = 8): Block {
  return {
    width: size * 1.5,
    height: size,
    draw(x, y) {
      drawVerdict(ink, verdict, x, y, size);
      ink.doc.undash();
    },
  };
}

function drawVerdict(ink: Ink, verdict: Verdict, x: number, y: number, size: number): void {
  const { doc } = ink;
  const middle = y + size / 2;
  const [low, high] = [x + size * 0.4, x + size * 1.1];
  doc.lineWidth(0.9).strokeColor('black').fillColor('black');
  if (verdict === 'no_limit') {
    doc.circle(x + size * 0.75, middle, size * 0.28).stroke();
    return;
  }
  if (verdict === 'not_measured') doc.dash(1.2, { space: 1.2 });
  const broken = verdict === 'close';
  doc.moveTo(low, y).lineTo(low, y + size);
  if (broken)
    doc
      .moveTo(high, y)
      .lineTo(high, middle - size * 0.3)
      .moveTo(high, middle + size * 0.3)
      .lineTo(high, y + size);
  else doc.moveTo(high, y).lineTo(high, y + size);
  doc
    .moveTo(low - 1, y + size)
    .lineTo(high + 1, y + size)
    .stroke();
  const reach = size * 0.36;
  if (verdict === 'pass') doc.circle((low + high) / 2, middle, size * 0.2).fill();
  if (verdict === 'over')
    doc.polygon([high + 1, middle - reach], [high + 1 + reach, middle], [high + 1, middle + reach]).fill();
  if (verdict === 'under')
    doc.polygon([low - 1, middle - reach], [low - 1 - reach, middle], [low - 1, middle + reach]).fill();
  if (broken)
    doc
      .polygon(
        [high - reach * 0.7, middle],
        [high, middle - reach * 0.8],
        [high + reach * 0.7, middle],
        [high, middle + reach * 0.8],
      )
      .stroke();
}

/** An empty square to tick, with words. */
export function tick(ink: Ink, words: Rich, width: number, style: Style = { ...STYLES.strong, size: 12 }): Block {
  const square: Block = { width: 17, height: 17, draw: (x, y) => strokeRect(ink, x, y, 17, 17, 1.6) };
  return beside([square, text(ink, words, style, width - 25)], 8, 'middle');
}

/** What stands on a line already: words, a drawn signature, and the least height kept above the line. */
type Written = Readonly<{ words?: Rich | undefined; drawn?: Block | undefined; room?: number }>;

/** A line to write on, with a small word below and, where it is known, what is already written above it. */
export function writeLine(ink: Ink, label: Rich, width: number, { words = '', drawn, room = 16 }: Written = {}): Block {
  const below = text(ink, label, STYLES.small, width);
  const style = { ...STYLES.strong, size: 10.5 };
  const above = drawn
    ? beside([drawn, text(ink, words, style, width - drawn.width - 8)], 8, 'bottom')
    : text(ink, words, style, width);
  const up = Math.max(room, above.height);
  return {
    width,
    height: up + 3 + below.height,
    draw(x, y) {
      above.draw(x, y + up - above.height);
      strokeLine(ink, x, y + up + 1, x + width, y + up + 1, 1);
      below.draw(x, y + up + 3);
    },
  };
}

/** A short word and a line to write on after it. */
export function blank(ink: Ink, word: Rich, line: number): Block {
  const width = word === '' ? 0 : widthOfText(ink, word, STYLES.body) + 4;
  const label = text(ink, word, STYLES.body, width + 0.1);
  return {
    width: width + line,
    height: label.height + 4,
    draw(x, y) {
      label.draw(x, y);
      strokeLine(ink, x + width, y + label.height - 1.5, x + width + line, y + label.height - 1.5, RULES.thin);
    },
  };
}
