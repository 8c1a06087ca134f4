/** The release: what was counted out, to whom, by which proof, and what stays. */
import { codeText } from '../kernel/codes.ts';
import type { Fonts } from '../paper/fonts.ts';
import { bar, tag } from '../paper/marks.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { heading, paragraph, ruledParagraph, signatures, titleBlock } from '../paper/parts.ts';
import { leave, need, type Pen, place, widthOf } from '../paper/pen.ts';
import { STYLES } from '../paper/styles.ts';
import { table } from '../paper/table.ts';
import type { ReleasePaper } from './contract/papers.ts';

/** Draw a release. */
export function drawRelease(fonts: Fonts, paper: ReleasePaper): Promise<Uint8Array> {
  const title: SheetTitle = { title: 'Release', number: paper.number, code: codeText('release', paper.number) };
  const pen = startSheet(fonts, paper.head, title);
  const facts = [
    {
      label: 'Customer',
      value: [{ b: paper.customer.name }, paper.customer.more ? `, ${paper.customer.more}` : ''],
      share: 1.8,
    },
    { label: 'Ticket', value: paper.ticket, share: 0.7 },
    { label: 'Counted out', value: `${paper.when}\nby ${paper.by}`, share: 1.3 },
    { label: 'Taken by', value: [{ b: paper.takenBy }], share: 1.1 },
    { label: 'Proof', value: paper.proof },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen)), 6);
  drawItems(pen, paper);
  leave(pen, 4);
  for (const { label, words } of paper.notes) paragraph(pen, [{ b: label }, ' ', words], STYLES.body, 3);
  if (paper.staying.length > 0) drawStaying(pen, paper);
  if (paper.money !== '') place(pen, bar(pen, paper.money, widthOf(pen)), 6);
  ruledParagraph(pen, paper.care);
  need(pen, 50);
  signatures(
    pen,
    [
      { label: `Received, counted and looked at: ${paper.signFor}`, share: 2.4, drawn: paper.signature?.png },
      { label: 'Date, time', written: paper.signature?.when },
    ],
    14,
  );
  return finishSheet(pen, paper.head, title);
}

function drawItems(pen: Pen, paper: ReleasePaper): void {
  table(pen, {
    heading: 'What leaves the shop',
    columns: [
      { title: 'Tag', width: 92 },
      { title: 'Piece', width: { share: 1 } },
      { title: 'What is in it or on it', width: { share: 1.2 } },
      { title: 'Count', width: 56, align: 'end' },
    ],
    rows: [
      ...paper.items.map((item) => ({
        cells: [
          (width: number) => tag(pen, item.number, { thin: item.tag === undefined, width }),
          item.words,
          item.contents,
          item.count,
        ],
      })),
      { cells: [paper.total, '', '', ''], strong: true },
    ],
    keepLast: 3,
    flush: true,
  });
}

function drawStaying(pen: Pen, paper: ReleasePaper): void {
  heading(pen, 'What stays here, and why');
  for (const { label, words } of paper.staying) paragraph(pen, [{ b: label }, ' ', words], STYLES.body, 2);
}
