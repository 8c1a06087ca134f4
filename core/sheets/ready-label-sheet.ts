/** The ready label: one on each staged piece, so that the person at the door finds and counts them. */
import { codeText } from '../kernel/codes.ts';
import { type Block, stack, text } from '../paper/block.ts';
import { CODE_SIZES, code } from '../paper/code.ts';
import type { Fonts } from '../paper/fonts.ts';
import { tag } from '../paper/marks.ts';
import { PRACTICE } from '../paper/page.ts';
import { drawStock, STOCK_SIZES, type StockFace } from '../paper/stock.ts';
import { type Ink, STYLES, type Style } from '../paper/styles.ts';
import { shrinkToFit, widthOfText } from '../paper/text.ts';
import type { ReadyLabelPaper } from './contract/papers.ts';

type Label = ReadyLabelPaper['labels'][number];

const figure = (size: number): Style => ({ face: 'figureBold', bold: 'figureBold', size, lead: 1 });

/** Draw ready labels, a page each or on a sheet with cut lines. */
export function drawReadyLabels(fonts: Fonts, paper: ReadyLabelPaper): Promise<Uint8Array> {
  return drawStock(fonts, { head: paper.head, layout: paper.layout, title: 'Ready labels' }, (ink) =>
    paper.labels.map((label) => faceOf(ink, paper, label)),
  );
}

function faceOf(ink: Ink, paper: ReadyLabelPaper, label: Label): StockFace {
  const [width, height] = STOCK_SIZES[paper.stock];
  return {
    stock: paper.stock,
    block: labelBlock(ink, paper, label, width, height),
    cutLine(x, y) {
      ink.doc.lineWidth(1).strokeColor('black').rect(x, y, width, height).stroke();
    },
  };
}

/** 5 mm from the edge. */
const EDGE = 14.2;

function labelBlock(ink: Ink, paper: ReadyLabelPaper, label: Label, width: number, height: number): Block {
  const tall = height > width;
  const big = tall ? 60 : 46;
  const inner = width - 2 * EDGE;
  const ready = text(ink, 'READY', figure(big), widthOfText(ink, 'READY', figure(big)) + 1);
  const placeWidth = tall ? inner : inner - ready.width - 12;
  const placeStyle = shrinkToFit(ink, label.place, figure(tall ? 54 : 40), placeWidth);
  const rack = stack([
    text(ink, 'place', { ...STYLES.body, size: 12 }, placeWidth, { align: tall ? 'start' : 'end' }),
    text(ink, label.place, placeStyle, placeWidth, { align: tall ? 'start' : 'end' }),
  ]);
  const square = code(ink, codeText(label.kind, label.number), tall ? 90 : CODE_SIZES.sheet);
  const foot = footBlock(ink, paper, label, inner - square.width - 10);
  return {
    width,
    height,
    draw(x, y) {
      ready.draw(x + EDGE, y + EDGE - 2);
      if (tall) rack.draw(x + EDGE, y + EDGE + ready.height + 14);
      else rack.draw(x + EDGE + ready.width + 12, y + EDGE - 1);
      foot.draw(x + EDGE, y + height - EDGE - foot.height);
      square.draw(x + width - EDGE - square.width, y + height - EDGE - square.height);
    },
  };
}

function footBlock(ink: Ink, paper: ReadyLabelPaper, label: Label, width: number): Block {
  const words: Style = { ...STYLES.body, size: 12, lead: 1.2 };
  const customer = shrinkToFit(ink, `${label.ticket} ${label.customer}`, words, width);
  return stack(
    [
      text(ink, [{ b: label.ticket }, ` ${label.customer}`], customer, width),
      text(ink, ['piece ', { b: label.piece }, label.weight === '' ? '' : `, ${label.weight}`], words, width),
      tag(ink, label.number, { thin: label.kind === 'container', width }),
      ...(paper.head.practice ? [text(ink, PRACTICE, { ...figure(8.5), lead: 1.1 }, width)] : []),
    ],
    2,
  );
}
