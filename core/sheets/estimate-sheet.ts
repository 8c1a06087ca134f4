/** The estimate: lines in plain words, what it comes to, until when it stands, yes or no. */
import { codeText } from '../kernel/codes.ts';
import { answerStrip } from '../paper/answer.ts';
import { stack, text } from '../paper/block.ts';
import type { Fonts } from '../paper/fonts.ts';
import { tag, tick } from '../paper/marks.ts';
import { chargeTable, sums } from '../paper/money.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { framed, headed, paragraph, signatures, titleBlock } from '../paper/parts.ts';
import { columns, leave, need, type Pen, place, widthOf } from '../paper/pen.ts';
import { STYLES } from '../paper/styles.ts';
import type { EstimatePaper } from './contract/papers.ts';

/** Draw an estimate. */
export function drawEstimate(fonts: Fonts, paper: EstimatePaper): Promise<Uint8Array> {
  const title: SheetTitle = { title: 'Estimate', number: paper.number, code: codeText('estimate', paper.number) };
  const pen = startSheet(fonts, paper.head, title);
  const facts = [
    { label: 'For', value: [{ b: paper.to.name }, paper.to.more ? `, ${paper.to.more}` : ''], share: 1.8 },
    { label: 'Your order no.', value: paper.orderNumber || '-', share: 0.8 },
    { label: 'Ticket', value: paper.ticket, share: 0.6 },
    { label: 'Made', value: paper.made },
    { label: 'Good until', value: [{ b: paper.validUntil }] },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen)), 8);
  for (const group of paper.groups) {
    headed(pen, group.words, group.tag ? (ink) => tag(ink, group.tag?.number ?? '') : undefined);
    chargeTable(pen, 'Work and parts', group.lines, paper.currency);
  }
  columns(
    pen,
    0.5,
    20,
    (left) => drawPromise(left, paper),
    (right) => sums(right, paper.totals),
  );
  drawAnswer(pen, paper);
  return finishSheet(pen, paper.head, title);
}

function drawPromise(pen: Pen, paper: EstimatePaper): void {
  const width = widthOf(pen);
  const inner = stack([
    text(pen, 'Ready, if you say yes today', { ...STYLES.body, size: 9 }, width - 16),
    text(pen, paper.promise.when, { ...STYLES.promise, size: 15 }, width - 16),
    text(pen, paper.promise.condition, { ...STYLES.body, size: 9 }, width - 16),
  ]);
  place(pen, framed(pen, inner, width, 1.2), 4);
  paragraph(pen, paper.ceiling, STYLES.small, 2);
  for (const note of paper.notes) paragraph(pen, [{ b: note.label }, ' ', note.words], STYLES.small, 2);
}

function drawAnswer(pen: Pen, paper: EstimatePaper): void {
  need(pen, 116);
  leave(pen, 6);
  columns(
    pen,
    0.5,
    20,
    (left) => place(left, tick(left, 'Yes, do all of it', widthOf(left))),
    (right) => place(right, tick(right, 'No. I collect it as it is', widthOf(right))),
  );
  signatures(pen, [{ label: `Signed, who may approve for ${paper.signFor}`, share: 2.4 }, { label: 'Date, time' }], 14);
  place(pen, answerStrip(pen, widthOf(pen)));
}
