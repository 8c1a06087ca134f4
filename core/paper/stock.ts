/** Tag and label stock: a page per piece in its own size, or many on a sheet with cut lines. */
import type { PaperHead, TagStock } from '../sheets/contract/papers.ts';
import type { Block } from './block.ts';
import type { Fonts } from './fonts.ts';
import { closeFile, openFile, PAGE_SIZES } from './page.ts';
import type { Ink } from './styles.ts';

type StockName = TagStock | 'label-100x50';

const INCH = 72;
const MM = 72 / 25.4;

/** Width and height in points. Tag sizes: a published list of wired tag sizes (#1, #3, #5); labels: common practice, no source. */
export const STOCK_SIZES: Readonly<Record<StockName, readonly [number, number]>> = {
  'tag-5': [4.75 * INCH, 2.375 * INCH],
  'tag-3': [3.75 * INCH, 1.875 * INCH],
  'tag-1': [2.75 * INCH, 1.375 * INCH],
  'label-3x2': [3 * INCH, 2 * INCH],
  'label-4x6': [4 * INCH, 6 * INCH],
  'label-100x50': [100 * MM, 50 * MM],
};

/** One face of a piece of stock, drawn from its upper left corner. */
export type StockFace = Readonly<{ stock: StockName; block: Block; cutLine(x: number, y: number): void }>;

export type StockSheet = Readonly<{ head: PaperHead; layout: 'single' | 'sheet'; title: string }>;

/** Open a file, make the faces with its ink, and lay them out in their order. */
export function drawStock(
  fonts: Fonts,
  sheet: StockSheet,
  faces: (ink: Ink) => readonly StockFace[],
): Promise<Uint8Array> {
  const ink = openFile(fonts, { title: sheet.title, author: sheet.head.shop.name, printedAt: sheet.head.printedAt });
  if (sheet.layout === 'single') drawSingles(ink, faces(ink));
  else drawSheets(ink, sheet, faces(ink));
  return closeFile(ink);
}

function drawSingles(ink: Ink, faces: readonly StockFace[]): void {
  for (const { stock, block } of faces) {
    const [width, height] = STOCK_SIZES[stock];
    ink.doc.addPage({ size: [width, height], margin: 0 });
    block.draw(0, 0);
  }
}

/** Free paper round and between pieces: nothing within 5 mm of the edge. */
const EDGE = 22;
const GAP = 10;

/** Left to right, then down, then the next page; the order of the pile is the order of the list. */
function drawSheets(ink: Ink, { head }: StockSheet, faces: readonly StockFace[]): void {
  const [pageWidth, pageHeight] = PAGE_SIZES[head.paper];
  let [x, y, row] = [EDGE, EDGE, 0];
  let pages = 0;
  const add = () => {
    ink.doc.addPage({ size: [pageWidth, pageHeight], margin: 0 });
    pages += 1;
    [x, y, row] = [EDGE, EDGE, 0];
  };
  for (const { stock, block, cutLine } of faces) {
    const [width, height] = STOCK_SIZES[stock];
    if (pages === 0) add();
    if (x + width > pageWidth - EDGE) [x, y, row] = [EDGE, y + row + GAP, 0];
    if (y + height > pageHeight - EDGE && y > EDGE) add();
    cutLine(x, y);
    block.draw(x, y);
    x += width + GAP;
    row = Math.max(row, height);
  }
}
