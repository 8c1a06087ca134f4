/** The build sheet: every reading after work beside what was found, in the order the parts sit; kept for ever. */
import { codeText } from '../kernel/codes.ts';
import { type Block, beside, text } from '../paper/block.ts';
import type { Fonts } from '../paper/fonts.ts';
import { tag, verdictMark } from '../paper/marks.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { heading, paragraph, ruledParagraph, signatures, titleBlock } from '../paper/parts.ts';
import { columns, leave, type Pen, place, widthOf } from '../paper/pen.ts';
import { readingGrid } from '../paper/reading-grid.ts';
import { type Ink, STYLES } from '../paper/styles.ts';
import { table } from '../paper/table.ts';
import type { BuildSheetPaper } from './contract/papers.ts';

type Facts = BuildSheetPaper['facts'][number];
type Words = BuildSheetPaper['texts'][number];

/** Draw a build sheet. */
export function drawBuildSheet(fonts: Fonts, paper: BuildSheetPaper): Promise<Uint8Array> {
  const title: SheetTitle = { title: 'Build sheet', number: paper.number, code: codeText('ticket', paper.number) };
  const pen = startSheet(fonts, paper.head, title);
  const facts = [
    {
      label: 'Customer',
      value: [{ b: paper.customer.name }, paper.customer.more ? `, ${paper.customer.more}` : ''],
      share: 1.3,
    },
    { label: 'Casting', value: paper.casting, share: 2.2, lead: (ink: Ink) => tag(ink, paper.tag.number) },
    { label: 'Finished', value: paper.finished },
    { label: 'Units', value: paper.units, share: 0.7 },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen)), 3);
  for (const [index, grid] of paper.tables.entries()) {
    readingGrid(pen, grid);
    leave(pen, 2);
    place(pen, tableNote(pen, grid, widthOf(pen), index === 0), 4);
  }
  inPairs(pen, paper.facts, drawFacts);
  inPairs(pen, paper.texts, drawWords);
  signatures(
    pen,
    paper.signatures.map(({ label, written }) => ({ label, written })),
    4,
  );
  ruledParagraph(pen, paper.disclaimer);
  return finishSheet(pen, paper.head, title);
}

function tableNote(ink: Ink, grid: BuildSheetPaper['tables'][number], width: number, first: boolean): Block {
  const bold =
    first && grid.rows.some(({ key }) => key) ? 'Bold rows: check these again before you bolt it down. ' : '';
  const words = text(ink, [{ b: bold }, `${grid.verdictWords ?? ''} ${grid.note}`.trim()], STYLES.small, width - 16);
  return grid.verdict ? beside([verdictMark(ink, grid.verdict), words], 4) : words;
}

/** Two side by side, row after row. */
function inPairs<T>(pen: Pen, items: readonly T[], draw: (pen: Pen, item: T) => void): void {
  for (let index = 0; index < items.length; index += 2) {
    const [first, second] = items.slice(index, index + 2);
    columns(
      pen,
      0.54,
      16,
      (left) => first && draw(left, first),
      (right) => second && draw(right, second),
    );
  }
}

function drawFacts(pen: Pen, { heading: title, rows, note }: Facts): void {
  table(pen, {
    heading: title,
    columns: [{ width: { share: 1 } }, { width: 92, align: 'end' }],
    rows: rows.map(({ words, amount, strong = false }) => ({ cells: [words, amount], strong })),
    flush: true,
    padY: 2,
  });
  leave(pen, 2);
  paragraph(pen, note, STYLES.small, 2);
}

function drawWords(pen: Pen, { heading: title, words, named = [] }: Words): void {
  heading(pen, title, 16);
  paragraph(pen, words, STYLES.body, 2);
  for (const { label, words: said } of named) paragraph(pen, [{ b: label }, ' ', said], STYLES.body, 2);
}
