/** Casting tags and bag tags, front and back, in the order of the pile. */
import { codeText } from '../kernel/codes.ts';
import { type Block, stack, text } from '../paper/block.ts';
import { CODE_SIZES, code } from '../paper/code.ts';
import type { Fonts } from '../paper/fonts.ts';
import type { Rich } from '../paper/lines.ts';
import { bar, tagPath } from '../paper/marks.ts';
import { PRACTICE } from '../paper/page.ts';
import { drawStock, STOCK_SIZES, type StockFace } from '../paper/stock.ts';
import { type Ink, LEAST_SIZE, STYLES, type Style } from '../paper/styles.ts';
import { widthOfText } from '../paper/text.ts';
import type { TagPaper, TagStock, TagsPaper } from './contract/papers.ts';

type Look = Readonly<{
  number: number;
  title: number;
  words: number;
  corner: number;
  bar: number;
  /** Clip of the corners and middle of the wire hole from the wire end; 0 for a label without a hole. */
  clip: number;
  hole: number;
  code: number;
}>;

const LOOKS: Readonly<Record<TagStock, Look>> = {
  'tag-5': { number: 46, title: 13, words: 10, corner: 11, bar: 17, clip: 29, hole: 26, code: 60 },
  'tag-3': { number: 31, title: 10.5, words: 10, corner: 11, bar: 12, clip: 23, hole: 21, code: CODE_SIZES.sheet },
  'tag-1': { number: 22, title: 9, words: 9, corner: 9, bar: 10, clip: 17, hole: 16.5, code: CODE_SIZES.small },
  'label-3x2': { number: 30, title: 10.5, words: 10, corner: 11, bar: 12, clip: 0, hole: 0, code: CODE_SIZES.sheet },
  'label-4x6': { number: 56, title: 16, words: 13, corner: 14, bar: 22, clip: 0, hole: 0, code: 90 },
};

const figure = (size: number): Style => ({ face: 'figureBold', bold: 'figureBold', size, lead: 0.95, spacing: -0.02 });
const wording = (size: number): Style => ({ ...STYLES.body, size: Math.max(LEAST_SIZE, size), lead: 1.2 });

/** Draw casting tags or bag tags: fronts with their backs after them. */
export function drawTags(fonts: Fonts, paper: TagsPaper): Promise<Uint8Array> {
  return drawStock(fonts, { head: paper.head, layout: paper.layout, title: 'Tags' }, (ink) =>
    paper.tags.flatMap((tag) => facesOf(ink, tag, paper.head.practice)),
  );
}

function facesOf(ink: Ink, tag: TagPaper, practice: boolean): StockFace[] {
  const cutLine = (x: number, y: number) => drawCutLine(ink, tag, x, y);
  const front: StockFace = { stock: tag.stock, block: frontBlock(ink, tag, practice), cutLine };
  return tag.back ? [front, { stock: tag.stock, block: backBlock(ink, tag, tag.back, practice), cutLine }] : [front];
}

/** The outline of the tag; dashed for a spare, which is nothing yet. */
function drawCutLine(ink: Ink, tag: TagPaper, x: number, y: number): void {
  const [width, height] = STOCK_SIZES[tag.stock];
  const { clip, hole } = LOOKS[tag.stock];
  if (tag.number === null) ink.doc.dash(3, { space: 2 });
  tagPath(ink, x + 0.6, y + 0.6, width - 1.2, height - 1.2, clip)
    .lineWidth(1.2)
    .strokeColor('black')
    .stroke();
  ink.doc.undash();
  if (hole > 0)
    ink.doc
      .lineWidth(1.2)
      .circle(x + hole, y + height / 2, hole > 20 ? 8 : 7)
      .stroke();
}

/** Left edge of the words: past the wire hole, and 5 mm from the edge. */
const leftOf = (look: Look): number => (look.hole === 0 ? 15 : look.hole + 19);
const RIGHT = 12;
const TOP = 10;

function frontBlock(ink: Ink, tag: TagPaper, practice: boolean): Block {
  const [width, height] = STOCK_SIZES[tag.stock];
  const look = LOOKS[tag.stock];
  const left = leftOf(look);
  const square = tag.number === null ? undefined : code(ink, codeText(tag.kind, tag.number), look.code);
  const words = width - left - RIGHT - look.code - 14;
  const lines = (scale: number) =>
    stack(
      [
        numberBlock(ink, tag, look, words),
        ...(tag.title === '' ? [] : [text(ink, [{ b: tag.title }], wording(look.title * scale), words)]),
        ...tag.lines.map((line) => text(ink, strongLine(line), wording(look.words * scale), words)),
      ],
      1,
    );
  const foot = barAt(ink, tag.bar, look, width, height);
  const mark = practiceMark(ink, practice);
  const body = fitInto(lines, height - TOP - foot.height - mark.height - 4);
  return {
    width,
    height,
    draw(x, y) {
      body.draw(x + left, y + TOP);
      square?.draw(x + width - RIGHT - look.code, y + TOP);
      drawCorner(ink, tag.corner, look, x + width - RIGHT, y + height - foot.height - 5);
      mark.draw(x + left, y + height - foot.height - mark.height - 2);
      foot.draw(x, y);
    },
  };
}

/** Stands above the bar, whatever else is left out. */
function practiceMark(ink: Ink, practice: boolean): Block {
  const style: Style = { face: 'figureBold', bold: 'figureBold', size: 8.5, lead: 1.2 };
  return practice
    ? text(ink, PRACTICE, style, widthOfText(ink, PRACTICE, style) + 1)
    : { width: 0, height: 0, draw() {} };
}

const strongLine = ({ words, strong }: TagPaper['lines'][number]): Rich =>
  strong ? [words, ' ', { b: strong }] : words;

function numberBlock(ink: Ink, tag: TagPaper, look: Look, width: number): Block {
  if (tag.number === null) return text(ink, 'spare', wording(look.words), width);
  const natural = widthOfText(ink, tag.number, figure(look.number));
  const size = natural > width ? (look.number * width) / natural : look.number;
  return text(ink, tag.number, figure(size), width + 1);
}

/** As large as fits; words that do not fit even at the smallest size are cut. They stand in full on the traveller. */
function fitInto(make: (scale: number) => Block, height: number): Block {
  const fitting = [1, 0.92, 0.85].map(make).find((block) => block.height <= height);
  if (fitting) return fitting;
  const smallest = make(0.85);
  return smallest.split?.(height)?.[0] ?? smallest;
}

function drawCorner(ink: Ink, words: string, look: Look, right: number, bottom: number): void {
  if (words === '') return;
  const style: Style = { face: 'figureBold', bold: 'figureBold', size: look.corner, lead: 1.1 };
  const width = widthOfText(ink, words, style) + 1;
  const block = text(ink, words, style, width, { align: 'end' });
  block.draw(right - width, bottom - block.height);
}

/** The bar at the foot, from past the wire hole to the edge. Its height is 0 when there is none. */
function barAt(ink: Ink, words: string, look: Look, width: number, height: number): Block {
  if (words === '') return { width, height: 4, draw() {} };
  const left = look.hole === 0 ? 0 : look.clip + 8;
  const natural = widthOfText(ink, words, { ...STYLES.bar, size: look.bar });
  const size = Math.max(8.5, Math.min(look.bar, (look.bar * (width - left - 16)) / natural));
  const block = bar(ink, words, width - left - 0.6, {
    style: { ...STYLES.bar, size },
    center: true,
    padY: size > 15 ? 5 : 3.5,
  });
  return { width, height: block.height, draw: (x, y) => block.draw(x + left, y + height - block.height - 0.6) };
}

function backBlock(ink: Ink, tag: TagPaper, back: NonNullable<TagPaper['back']>, practice: boolean): Block {
  const [width, height] = STOCK_SIZES[tag.stock];
  const look = LOOKS[tag.stock];
  const left = leftOf(look);
  const number = tag.number ?? '';
  const style = figure(Math.min(26, look.number * 0.6));
  const numberWidth = widthOfText(ink, number, style) + 1;
  const size = look.words + 1;
  const words = width - left - RIGHT - numberWidth - 12;
  const lines = (scale: number) =>
    stack(
      back.lines.map(({ words: plain, strong }) =>
        text(
          ink,
          strong ? [{ b: strong }, plain === '' ? '' : `, ${plain}`] : plain,
          { ...wording(size * scale), lead: 1.35 },
          words,
        ),
      ),
      1,
    );
  const foot = barAt(ink, back.bar, look, width, height);
  const mark = practiceMark(ink, practice);
  const body = fitInto(lines, height - TOP - foot.height - mark.height - 4);
  return {
    width,
    height,
    draw(x, y) {
      body.draw(x + left, y + TOP);
      text(ink, number, style, numberWidth).draw(x + width - RIGHT - numberWidth, y + TOP);
      mark.draw(x + left, y + height - foot.height - mark.height - 2);
      foot.draw(x, y);
    },
  };
}
