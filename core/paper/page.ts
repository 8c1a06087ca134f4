/** Pages: size, title block, running head, foot with page n of m, and the finished file. */
import PDFDocument from 'pdfkit';
import type { PaperHead } from '../sheets/contract/papers.ts';
import { type Block, RULES, space, stack, strokeLine, strokeRect, text } from './block.ts';
import { CODE_SIZES, code } from './code.ts';
import { factsEntry } from './file-facts.ts';
import { FACE_NAMES, type Fonts, fontName, SCRIPTS } from './fonts.ts';
import { breakLines, type Rich } from './lines.ts';
import type { Pen } from './pen.ts';
import { type Ink, STYLES, type Style } from './styles.ts';
import { widthOfText } from './text.ts';

/** Letter and A4, in points. */
export const PAGE_SIZES = { letter: [612, 792], a4: [595.28, 841.89] } as const;

/** 0.5 in at the sides; the foot's base 0.28 in above the edge: nothing within 5 mm. */
const SIDE = 36;
const TOP = 31;
const FOOT = 20;

/** The words of the mark on all paper of the practice shop. */
export const PRACTICE = 'PRACTICE - not a real job';

export type SheetTitle = Readonly<{
  /** For example "Claim ticket". */
  title: string;
  number: string;
  /** Text of the code beside the number; empty for none. */
  code: string;
  /** More words in the foot, for example "No prices on this sheet". */
  footNote?: string;
  /** Stands in the running head of the further pages in place of the shop's name. */
  running?: string;
  /** A title block of its own kind in place of the ordinary one. */
  head?: (ink: Ink, width: number) => Block;
}>;

/** Open a file that carries nothing but what it is told: equal input and moment give equal bytes. */
export function openFile(
  fonts: Fonts,
  about: Readonly<{ title: string; author: string; printedAt: string; facts?: PaperHead['facts'] }>,
): Ink {
  const doc = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    margin: 0,
    lang: 'en',
    displayTitle: true,
    pdfVersion: '1.7',
    info: {
      Title: about.title,
      Author: about.author,
      Creator: 'Benchtag',
      Producer: 'Benchtag',
      CreationDate: new Date(about.printedAt),
      ...(about.facts && factsEntry(about.facts)),
    },
  });
  // pdfkit takes an opened face as it is; its types know only files and bytes.
  for (const name of FACE_NAMES) {
    for (const script of SCRIPTS) {
      doc.registerFont(fontName(name, script), fonts[name].fonts[script] as unknown as ArrayBuffer);
    }
  }
  return { doc, fonts };
}

/** The bytes of a file that is complete. */
export function closeFile({ doc }: Ink): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const parts: Uint8Array[] = [];
    doc.on('data', (part: Uint8Array) => parts.push(part));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    doc.on('error', reject);
    doc.end();
  });
}

/** Start a sheet: the pen stands under the title block of page 1. */
export function startSheet(fonts: Fonts, head: PaperHead, title: SheetTitle): Pen {
  const ink = openFile(fonts, {
    title: `${title.title} ${title.number}`,
    author: head.shop.name,
    printedAt: head.printedAt,
    facts: head.facts,
  });
  const [pageWidth, pageHeight] = PAGE_SIZES[head.paper];
  const width = pageWidth - 2 * SIDE;
  const running = runningHead(ink, head, title, width);
  const top = TOP + running.height + 6;
  let pages = 0;
  const add = () => {
    ink.doc.addPage({ size: [pageWidth, pageHeight], margin: 0 });
    if (head.practice) drawPractice(ink, width);
    pages += 1;
  };
  const pen: Pen = {
    ...ink,
    left: SIDE,
    right: pageWidth - SIDE,
    y: TOP,
    top,
    bottom: pageHeight - FOOT - 26,
    page: 0,
    turn() {
      pen.page += 1;
      if (pen.page < pages) ink.doc.switchToPage(pen.page);
      else {
        add();
        running.draw(SIDE, TOP);
      }
      pen.y = top;
    },
    turnTo(page) {
      pen.page = page;
      ink.doc.switchToPage(page);
    },
  };
  add();
  const block = title.head?.(ink, width) ?? titleHead(ink, head, title, width);
  block.draw(SIDE, TOP);
  pen.y = TOP + block.height + 8;
  return pen;
}

/** Write the feet and give the file. */
export function finishSheet(pen: Pen, head: PaperHead, title: SheetTitle): Promise<Uint8Array> {
  const [pageWidth, pageHeight] = PAGE_SIZES[head.paper];
  const { count } = pen.doc.bufferedPageRange();
  const width = pageWidth - 2 * SIDE;
  const named = title.number === '' ? title.title : `${title.title} ${title.number}`;
  const first = `${named}, ${head.revision}${title.footNote ? `. ${title.footNote}` : ''}`;
  for (let index = 0; index < count; index += 1) {
    pen.doc.switchToPage(index);
    const y = pageHeight - FOOT - 16;
    strokeLine(pen, SIDE, y, SIDE + width, y, RULES.thin);
    const place = text(pen, `Page ${index + 1} of ${count}`, STYLES.small, 70, { align: 'end' });
    const printed = text(pen, `Printed ${head.printed}`, STYLES.small, width * 0.4, { align: 'center' });
    oneLine(pen, first, width * 0.6 - 74).draw(SIDE, y + 3);
    printed.draw(SIDE + width - 70 - printed.width, y + 3);
    place.draw(SIDE + width - 70, y + 3);
  }
  return closeFile(pen);
}

/** Words that must stay on one line: what does not fit ends in three dots (it stands in full elsewhere on the sheet). */
function oneLine(ink: Ink, words: string, width: number, style: Style = STYLES.small): Block {
  if (widthOfText(ink, words, style) <= width) return text(ink, words, style, width);
  let kept = Array.from(words);
  while (kept.length > 0 && widthOfText(ink, `${kept.join('')}...`, style) > width) kept = kept.slice(0, -1);
  return text(ink, `${kept.join('')}...`, style, width);
}

/** In the upper margin of every page, so that no line of the sheet moves. */
function drawPractice(ink: Ink, width: number): void {
  const style: Style = { face: 'figureBold', bold: 'figureBold', size: 9, lead: 1, spacing: 0.06 };
  const [y, height] = [15, 12.5];
  text(ink, PRACTICE, style, width, { align: 'center' }).draw(SIDE, y + (height - 9) / 2);
  strokeRect(ink, SIDE, y, width, height, RULES.strong);
}

/** The shop's name: large, smaller when it is long, over several lines when it is very long. Never cut. */
function shopName(ink: Ink, name: string, width: number): Block {
  const sizes = [17, 15, 13, 11.5];
  const fitting = sizes.find(
    (size) => breakLines(ink, name, { ...STYLES.shop, size }, width).length <= (size > 12 ? 2 : 3),
  );
  return text(ink, name, { ...STYLES.shop, size: fitting ?? 10 }, width);
}

function titleHead(ink: Ink, head: PaperHead, title: SheetTitle, width: number): Block {
  const named = namedBlock(ink, title);
  const shopWidth = width - named.width - CODE_SIZES.sheet - 30;
  const shop = stack([shopName(ink, head.shop.name, shopWidth), text(ink, head.shop.line, STYLES.body, shopWidth)]);
  const square = title.code === '' ? space(0) : code(ink, title.code, CODE_SIZES.sheet);
  const height = Math.max(shop.height, named.height, square.height);
  return {
    width,
    height: height + 7,
    draw(x, y) {
      shop.draw(x, y + height - shop.height);
      named.draw(x + shopWidth + 14, y + height - named.height);
      square.draw(x + width - square.width, y + height - square.height);
      strokeLine(ink, x, y + height + 6, x + width, y + height + 6, RULES.heavy);
    },
  };
}

/** What kind of sheet, and its number; a sheet without a number shows its kind large. */
function namedBlock(ink: Ink, title: SheetTitle): Block {
  if (title.number === '') {
    const large: Style = { ...STYLES.number, size: 22 };
    return text(ink, title.title, large, widthOfText(ink, title.title, large) + 1, { align: 'end' });
  }
  const number: Style = title.number.length > 12 ? { ...STYLES.number, size: 22 } : STYLES.number;
  const width = Math.max(widthOfText(ink, title.number, number), widthOfText(ink, title.title, STYLES.title)) + 1;
  return stack([
    text(ink, title.title, STYLES.title, width, { align: 'end' }),
    text(ink, title.number, number, width, { align: 'end' }),
  ]);
}

/** Head of page 2 and on: which sheet this page belongs to. */
function runningHead(ink: Ink, head: PaperHead, title: SheetTitle, width: number): Block {
  const number: Rich = [{ b: title.number }];
  const words = `${title.title} `;
  const right = text(ink, [words, ...number, ', continued'], { ...STYLES.value, size: 12 }, width * 0.45, {
    align: 'end',
  });
  const left = oneLine(ink, title.running ?? head.shop.name, width * 0.55 - 10, STYLES.body);
  const height = Math.max(left.height, right.height);
  return {
    width,
    height: height + 4,
    draw(x, y) {
      left.draw(x, y + height - left.height);
      right.draw(x + width - right.width, y + height - right.height);
      strokeLine(ink, x, y + height + 3, x + width, y + height + 3, RULES.strong);
    },
  };
}
