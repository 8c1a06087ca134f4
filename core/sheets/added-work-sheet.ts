/** Added work: what was found, the ways to go side by side, what each costs, what happens without an answer. */
import { codeText } from '../kernel/codes.ts';
import { answerStrip } from '../paper/answer.ts';
import { type Block, beside, RULES, space, stack, strokeLine, strokeRect, text } from '../paper/block.ts';
import { drawingBlock } from '../paper/drawing.ts';
import type { Fonts } from '../paper/fonts.ts';
import { tag, tick } from '../paper/marks.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { heading, paragraph, signatures, titleBlock } from '../paper/parts.ts';
import { columns, leave, need, type Pen, place, widthOf } from '../paper/pen.ts';
import { picture } from '../paper/picture.ts';
import { type Ink, STYLES } from '../paper/styles.ts';
import { table } from '../paper/table.ts';
import { shrinkToFit } from '../paper/text.ts';
import type { AddedWorkPaper } from './contract/papers.ts';

type Way = AddedWorkPaper['ways'][number];

/** Draw an added-work request. */
export function drawAddedWork(fonts: Fonts, paper: AddedWorkPaper): Promise<Uint8Array> {
  const title: SheetTitle = { title: 'Added work', number: paper.number, code: codeText('added-work', paper.number) };
  const pen = startSheet(fonts, paper.head, title);
  const facts = [
    { label: 'For', value: [{ b: paper.to.name }, paper.to.more ? `, ${paper.to.more}` : ''], share: 1.6 },
    { label: 'Your answer by', value: [{ b: paper.answerBy }] },
    { label: 'Agreed so far', value: paper.agreed },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen)), 3);
  heading(pen, 'What we found', 60);
  columns(
    pen,
    0.57,
    16,
    (left) => drawFound(left, paper),
    (right) => drawPicture(right, paper),
  );
  leave(pen, 4);
  heading(pen, 'Ways to go', 160);
  drawWays(pen, paper.ways);
  columns(
    pen,
    0.5,
    18,
    (left) => drawSoFar(left, paper),
    (right) => drawAnswer(right, paper),
  );
  place(pen, answerStrip(pen, widthOf(pen)));
  return finishSheet(pen, paper.head, title);
}

function drawFound(pen: Pen, paper: AddedWorkPaper): void {
  const mark = tag(pen, paper.tag.number);
  const words = text(pen, paper.found, STYLES.lead, widthOf(pen), { indent: mark.width + 6 });
  const block: Block = {
    ...words,
    draw(x, y) {
      mark.draw(x, y + 1);
      words.draw(x, y);
    },
  };
  place(pen, block, 6);
  if (paper.reading) drawReading(pen, paper.reading);
  for (const more of paper.foundMore) paragraph(pen, more, STYLES.body, 3);
}

/** The reading beside its limit, so that anybody sees how far it is out. */
function drawReading(pen: Pen, reading: NonNullable<AddedWorkPaper['reading']>): void {
  const facts = [
    { label: reading.what, value: [{ b: reading.value }] },
    { label: 'Limit', value: reading.limit },
    { label: 'So', value: [{ b: reading.verdict }] },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen), RULES.thin), 6);
}

function drawPicture(pen: Pen, paper: AddedWorkPaper): void {
  const width = widthOf(pen);
  if (paper.photo) place(pen, picture(pen, paper.photo, width, 150, { align: 'center' }), 4);
  if (paper.drawing) place(pen, drawingBlock(pen, paper.drawing, width, paper.photo ? 90 : 130), 2);
}

/** Up to four ways side by side, so that the same lines can be compared; more stand in rows of three. */
function drawWays(pen: Pen, ways: readonly Way[]): void {
  const across = ways.length === 4 ? 4 : Math.min(3, Math.max(1, ways.length));
  for (let from = 0; from < ways.length; from += across) {
    const row = ways.slice(from, from + across);
    place(pen, waysRow(pen, row, widthOf(pen), across), 4);
  }
}

function waysRow(ink: Ink, ways: readonly Way[], width: number, across: number): Block {
  const cell = width / across;
  const inner = cell - 18;
  const words = ways.map((way) => stack([wayTitle(ink, way, inner), text(ink, way.words, STYLES.body, inner)], 5));
  const tallest = Math.max(...words.map((block) => block.height));
  const rows = ways.map((way) => wayRows(ink, way, inner));
  const small = ways.map((way) =>
    stack(
      way.small.map((line) => text(ink, line, STYLES.small, inner)),
      2,
    ),
  );
  const smallest = Math.max(...small.map((block) => block.height));
  const rowsHeight = Math.max(...rows.map((block) => block.height));
  const ticks = ways.map((way) => tick(ink, `Yes to ${way.letter}`, inner));
  const height = 7 + tallest + 6 + rowsHeight + 5 + smallest + 8 + 17 + 8;
  return {
    width,
    height,
    draw(x, y) {
      for (const [index] of ways.entries()) {
        const left = x + index * cell + 9;
        words[index]?.draw(left, y + 7);
        rows[index]?.draw(left, y + 13 + tallest);
        small[index]?.draw(left, y + 18 + tallest + rowsHeight);
        const foot = y + height - 8 - 17;
        strokeLine(ink, left, foot - 6, left + inner, foot - 6, RULES.strong);
        ticks[index]?.draw(left, foot);
        if (index > 0) strokeLine(ink, x + index * cell, y, x + index * cell, y + height, RULES.thin);
      }
      strokeRect(ink, x, y, cell * ways.length, height, RULES.strong);
    },
  };
}

function wayTitle(ink: Ink, way: Way, width: number): Block {
  const letter = text(ink, way.letter, { face: 'figureBold', bold: 'figureBold', size: 13, lead: 1.2 }, 16, {
    align: 'center',
  });
  const boxed: Block = {
    width: 16,
    height: letter.height,
    draw(x, y) {
      strokeRect(ink, x, y, 16, letter.height, RULES.strong);
      letter.draw(x, y);
    },
  };
  return beside([boxed, text(ink, way.title, STYLES.option, width - 21)], 5);
}

function wayRows(ink: Ink, way: Way, width: number): Block {
  return stack(
    way.rows.flatMap(({ label, value }) => [
      { width, height: 3, draw: (x: number, y: number) => strokeLine(ink, x, y, x + width, y, RULES.thin) },
      text(ink, label, STYLES.label, width),
      text(ink, value, shrinkToFit(ink, value, { ...STYLES.amount, size: 14 }, width, 11), width),
      space(2),
    ]),
  );
}

function drawAnswer(pen: Pen, paper: AddedWorkPaper): void {
  need(pen, 100);
  paragraph(pen, [{ b: 'If we hear nothing, ' }, paper.silence], STYLES.body, 0);
  signatures(pen, [{ label: `Signed, who may approve for ${paper.signFor}`, share: 1.9 }, { label: 'Date, time' }], 12);
}

function drawSoFar(pen: Pen, paper: AddedWorkPaper): void {
  if (paper.soFar.length === 0) return;
  table(pen, {
    heading: `Done and ordered so far, ${paper.currency}`,
    columns: [{ width: { share: 1 } }, { width: 54, align: 'end' }],
    rows: [...paper.soFar, ...paper.soFarTotal].map((line) => ({
      cells: [line.words, line.amount],
      strong: 'strong' in line && line.strong === true,
    })),
    keepLast: paper.soFarTotal.length + 2,
    flush: true,
    padY: 1.2,
  });
  leave(pen, 2);
}
