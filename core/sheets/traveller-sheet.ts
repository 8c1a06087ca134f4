/** The traveller: one sheet that goes with a casting over the floor. No money, no telephone. */
import { codeText } from '../kernel/codes.ts';
import { type Block, beside, RULES, stack, strokeLine, strokeRect, text } from '../paper/block.ts';
import { CODE_SIZES, code } from '../paper/code.ts';
import { drawingBlock } from '../paper/drawing.ts';
import { faceGrid } from '../paper/face-grid.ts';
import type { Fonts } from '../paper/fonts.ts';
import { bar, blank, tag } from '../paper/marks.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { heading, paragraph, signatures } from '../paper/parts.ts';
import { columns, leave, need, type Part, type Pen, place, twoColumns, widthOf } from '../paper/pen.ts';
import { readingGrid } from '../paper/reading-grid.ts';
import { type Ink, STYLES, type Style } from '../paper/styles.ts';
import { table } from '../paper/table.ts';
import { widthOfText } from '../paper/text.ts';
import { METAL_BARS, type TravellerPaper } from './contract/papers.ts';

/** Rows tall enough to write in with a gloved hand. */
const WRITE_ROW = 28;
/** 8.5 mm: a figure is written in one line. */
const GRID_ROW = 24;
/** What is read, small, so that there is room to write. */
const READ: Style = { ...STYLES.small, lead: 1.1 };

const big: Style = { face: 'figureBold', bold: 'figureBold', size: 20, lead: 1 };

/** Draw a traveller; a blank grid for readings stands on a page of its own, the back. */
export function drawTraveller(fonts: Fonts, paper: TravellerPaper): Promise<Uint8Array> {
  const title: SheetTitle = {
    title: 'Traveller',
    number: paper.tag.number,
    code: codeText('casting', paper.tag.number),
    footNote: 'No prices on this sheet',
    running: `${METAL_BARS[paper.tag.metal]}. ${paper.position} ${paper.piece}`,
    head: (ink, width) => travellerHead(ink, paper, width),
  };
  const pen = startSheet(fonts, paper.head, title);
  place(pen, bar(pen, METAL_BARS[paper.tag.metal], widthOf(pen), { style: STYLES.hugeBar, center: true }), 6);
  drawChanged(pen, paper);
  columns(
    pen,
    0.52,
    14,
    (left) => drawPicture(left, paper),
    (right) => drawSpec(right, paper),
  );
  leave(pen, 4);
  drawWarnings(pen, paper.warnings);
  drawOperations(pen, paper);
  leave(pen, 4);
  for (const note of paper.notes) paragraph(pen, [{ b: note.label }, ' ', note.words], STYLES.small, 2);
  drawFoundAndSigned(pen);
  drawGrids(pen, paper.grids);
  return finishSheet(pen, paper.head, title);
}

function travellerHead(ink: Ink, paper: TravellerPaper, width: number): Block {
  const number = tag(ink, paper.tag.number, { size: 46, width: 190 });
  const square = code(ink, codeText('casting', paper.tag.number), CODE_SIZES.sheet);
  const promise = promiseBlock(ink, paper);
  const ticketWidth = width - number.width - square.width - promise.width - 92 - 42;
  const position = stack([text(ink, paper.position, big, 78), text(ink, paper.piece, { ...STYLES.body, size: 9 }, 78)]);
  const ticket = stack([
    text(ink, 'Ticket', { ...STYLES.body, size: 9 }, ticketWidth),
    text(ink, paper.ticket, big, ticketWidth),
    text(ink, paper.customer, { ...STYLES.body, size: 9 }, ticketWidth),
  ]);
  const row = beside([number, position, ticket, promise, square], 14, 'middle');
  return {
    width,
    height: row.height + 7,
    draw(x, y) {
      row.draw(x, y);
      strokeLine(ink, x, y + row.height + 6, x + width, y + row.height + 6, RULES.heavy);
    },
  };
}

function promiseBlock(ink: Ink, paper: TravellerPaper): Block {
  const style = { ...big, size: 21 };
  const width = Math.max(62, widthOfText(ink, paper.promise.day, style) + 1);
  const rush = paper.rush ? [rushMark(ink)] : [];
  return stack([
    text(ink, 'Promise', { ...STYLES.body, size: 9 }, width),
    text(ink, paper.promise.day, style, width),
    text(ink, paper.promise.time, style, width),
    ...rush,
  ]);
}

/** RUSH in white on a slanted black field. */
function rushMark(ink: Ink): Block {
  const style: Style = { face: 'figureBold', bold: 'figureBold', size: 13, lead: 1.2, spacing: 0.06, ink: 'white' };
  const words = text(ink, 'RUSH', style, widthOfText(ink, 'RUSH', style) + 1);
  return {
    width: words.width + 16,
    height: words.height + 2,
    draw(x, y) {
      const [right, low] = [x + words.width + 16, y + words.height + 2];
      ink.doc.polygon([x + 5, y], [right, y], [right - 5, low], [x, low]).fill('black');
      words.draw(x + 8, y + 1);
    },
  };
}

/** A later revision says what changed, so that the sheet on the casting can be mended by hand or thrown away. */
function drawChanged(pen: Pen, paper: TravellerPaper): void {
  if (paper.changed.length === 0) return;
  const width = widthOf(pen);
  const lines = [
    text(pen, [{ b: `Changed since ${paper.changedSince}` }], STYLES.body, width - 16),
    ...paper.changed.map((line) => text(pen, line, STYLES.body, width - 16)),
  ];
  const inner = stack(lines);
  const block: Block = {
    width,
    height: inner.height + 8,
    draw(x, y) {
      strokeRect(pen, x, y, width, inner.height + 8, RULES.strong);
      inner.draw(x + 8, y + 4);
    },
  };
  place(pen, block, 6);
}

function drawPicture(pen: Pen, paper: TravellerPaper): void {
  const width = widthOf(pen);
  if (paper.drawing) place(pen, drawingBlock(pen, paper.drawing, width, tallestOf(paper.drawing)), 3);
  if (paper.drawing) paragraph(pen, [{ b: `${paper.drawing.caption}. ` }, marksOf(paper)], STYLES.small, 2);
  else if (paper.marks.length > 0) paragraph(pen, marksOf(paper), STYLES.small, 2);
  paragraph(pen, paper.about, STYLES.small, 0);
}

/** Two banks one above the other need more height, or their labels run into each other. */
const tallestOf = ({ width, height }: NonNullable<TravellerPaper['drawing']>): number =>
  height > width * 0.6 ? 186 : 124;

const marksOf = (paper: TravellerPaper): string => paper.marks.map(({ no, words }) => `${no}\u00a0${words}.`).join(' ');

/** Sizes wanted: the chosen unit bold, the other beside it in plain. */
function drawSpec(pen: Pen, paper: TravellerPaper): void {
  table(pen, {
    columns: [{ width: 82, style: STYLES.small }, { width: { share: 1 } }],
    rows: paper.spec.map(({ label, chosen, other }) => ({
      cells: [label, [{ b: chosen }, other === '' ? '' : ` ${other}`]],
    })),
    flush: true,
    padY: 1.8,
  });
}

/** Warning bars, as many beside each other as fit. */
function drawWarnings(pen: Pen, warnings: readonly string[]): void {
  const width = widthOf(pen);
  let row: string[] = [];
  const natural = (words: string) => widthOfText(pen, words, STYLES.bar) + 15;
  const used = (words: readonly string[]) => words.reduce((sum, one) => sum + natural(one), 0) + 8 * (words.length - 1);
  const flush = () => {
    if (row.length === 0) return;
    const last = row.length === 1 ? width : width - used(row.slice(0, -1)) - 8;
    const blocks = row.map((words, index) => bar(pen, words, index === row.length - 1 ? last : natural(words)));
    place(pen, beside(blocks, 8), 5);
    row = [];
  };
  for (const warning of warnings) {
    if (row.length > 0 && used([...row, warning]) > width) flush();
    row.push(warning);
  }
  flush();
}

function drawOperations(pen: Pen, paper: TravellerPaper): void {
  const cell = (name: string, note: string) => (width: number) =>
    stack([
      text(pen, name, { ...STYLES.heading, lead: 1.15 }, width),
      ...(note === '' ? [] : [text(pen, note, { ...STYLES.small, lead: 1.15 }, width)]),
    ]);
  table(pen, {
    columns: [
      { width: 28, style: { ...STYLES.strongFigure, size: 12 } },
      { title: 'Operation, in this order', width: { share: 1 } },
      { title: 'Units', width: 40, align: 'end' },
      { title: 'Readings', width: 128 },
      { title: 'By', width: 36 },
      { title: 'Date', width: 36 },
      { title: 'Redo', width: 32 },
    ],
    rows: paper.operations.map(({ no, name, note, units, readings = '' }) => ({
      cells: [no, cell(name, note), units, (width: number) => text(pen, readings, READ, width)],
      height: WRITE_ROW,
    })),
    ruled: true,
    padY: 2,
  });
}

function drawFoundAndSigned(pen: Pen): void {
  need(pen, 66);
  columns(
    pen,
    0.54,
    16,
    (left) => {
      place(left, blank(left, [{ b: 'Found' }], widthOf(left) - 40), 10);
      place(left, blank(left, '', widthOf(left)), 0);
    },
    (right) => signatures(right, [{ label: 'Machinist' }, { label: 'Sign-off, a second person', share: 1.3 }], 8),
  );
}

/** The back: places across in bench order, quantities down, empty cells to write in, the limits beside them. */
function drawGrids(pen: Pen, grids: TravellerPaper['grids']): void {
  if (grids.length === 0) return;
  if (pen.page === 0) pen.turn();
  else leave(pen, 10);
  const words = 'Readings, places in the order they lie on the bench. Write them here and type them row by row.';
  paragraph(pen, words, STYLES.small, 4);
  for (const grid of grids.filter(({ groups }) => groups.length > 0)) {
    const rows = grid.rows.map(({ label, limit, other }) => ({ label, values: [], limit, doubt: other }));
    readingGrid(pen, { ...grid, rows }, GRID_ROW);
    if (grid.note) paragraph(pen, grid.note, STYLES.small, 2);
    leave(pen, 8);
  }
  twoColumns(pen, grids.filter(({ groups }) => groups.length === 0).flatMap(partsOf));
}

type Blank = TravellerPaper['grids'][number];

/** Figures read once; a face and the lines of its straightedge apart, so that each finds its room. */
function partsOf(grid: Blank): Part[] {
  const { face, rows, note = '' } = grid;
  const boxes: Part = {
    tall: 40 + rows.length * (GRID_ROW + 4) + note.length / 5,
    draw(pen) {
      drawBoxes(pen, face ? { ...grid, heading: `${grid.heading}: thickest feeler` } : grid);
      if (note !== '') paragraph(pen, note, STYLES.small, 2);
      leave(pen, 8);
    },
  };
  return [...(face ? [facePart(grid.heading, face)] : []), ...(rows.length > 0 ? [boxes] : [])];
}

/** A face to write dial readings on. */
const facePart = (title: string, face: NonNullable<Blank['face']>): Part => ({
  tall: face.rows * GRID_ROW + 56,
  draw(pen) {
    const block = faceGrid(pen, face, widthOf(pen), GRID_ROW);
    heading(pen, `${title}: dial, front at the left`, block.height + 4);
    place(pen, block, 8);
  },
});

/** A box for what was found and one for what stands after work, the limit at the end. */
function drawBoxes(pen: Pen, { heading: title, rows }: Blank): void {
  const limit = (words: string, other: string) => (width: number) =>
    stack([text(pen, [{ b: words }], READ, width), ...(other === '' ? [] : [text(pen, other, READ, width)])]);
  const hasFound = rows.some(({ found = true }) => found);
  const hasAfter = rows.some(({ after = true }) => after);
  const hasLimit = rows.some((row) => row.limit !== '');
  table(pen, {
    heading: title,
    columns: [
      { title: '', width: { share: 1 }, style: READ },
      ...(hasFound ? [{ title: 'Found', width: 52 }] : []),
      ...(hasAfter ? [{ title: 'After', width: 52 }] : []),
      ...(hasLimit ? [{ title: 'Limit', width: 88 }] : []),
    ],
    rows: rows.map(({ label, limit: chosen, other, found = true, after = true }) => ({
      cells: [
        label,
        ...(hasFound ? [found ? '' : NO_BOX] : []),
        ...(hasAfter ? [after ? '' : NO_BOX] : []),
        ...(hasLimit ? [limit(chosen, other)] : []),
      ],
      height: GRID_ROW,
    })),
    ruled: true,
    padX: 3,
  });
}

/** Nothing to write here. */
const NO_BOX = '\u2013';
