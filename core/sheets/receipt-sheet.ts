/** The receipt for money taken: how much, how, and what it pays. */
import { codeText } from '../kernel/codes.ts';
import { stack, text } from '../paper/block.ts';
import type { Fonts } from '../paper/fonts.ts';
import { chargeTable, sums } from '../paper/money.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { framed, paragraph, signatures, titleBlock } from '../paper/parts.ts';
import { columns, leave, place, widthOf } from '../paper/pen.ts';
import { STYLES } from '../paper/styles.ts';
import type { ReceiptPaper } from './contract/papers.ts';

/** Draw a receipt. */
export function drawReceipt(fonts: Fonts, paper: ReceiptPaper): Promise<Uint8Array> {
  const title: SheetTitle = { title: 'Receipt', number: paper.number, code: codeText('receipt', paper.number) };
  const pen = startSheet(fonts, paper.head, title);
  const facts = [
    { label: 'From', value: [{ b: paper.from.name }, paper.from.more ? `, ${paper.from.more}` : ''], share: 1.8 },
    { label: 'Received', value: paper.when },
    { label: 'How', value: paper.how },
    { label: 'Taken by', value: paper.by },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen)), 10);
  const width = widthOf(pen);
  const amount = stack([
    text(pen, 'Received', STYLES.body, width - 16),
    text(pen, `${paper.currency} ${paper.amount}`, { ...STYLES.number, spacing: 0 }, width - 16),
  ]);
  place(pen, framed(pen, amount, width), 10);
  if (paper.lines.length > 0) chargeTable(pen, 'For', paper.lines, paper.currency);
  columns(
    pen,
    0.5,
    18,
    (left) => paragraph(left, paper.note, STYLES.small),
    (right) => sums(right, paper.totals),
  );
  leave(pen, 6);
  signatures(pen, [{ label: 'For the shop', share: 2 }, { label: 'Date' }], 12);
  return finishSheet(pen, paper.head, title);
}
