/** The invoice: by casting, labour and parts apart, who approved extras, what was paid, what is to pay. */
import { codeText } from '../kernel/codes.ts';
import type { Fonts } from '../paper/fonts.ts';
import { tag } from '../paper/marks.ts';
import { chargeTable, sums } from '../paper/money.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { headed, paragraph, signatures, titleBlock } from '../paper/parts.ts';
import { columns, leave, type Pen, place, widthOf } from '../paper/pen.ts';
import { STYLES } from '../paper/styles.ts';
import type { InvoicePaper } from './contract/papers.ts';

/** Draw an invoice. */
export function drawInvoice(fonts: Fonts, paper: InvoicePaper): Promise<Uint8Array> {
  const title: SheetTitle = {
    title: 'Invoice',
    number: paper.number,
    code: codeText('invoice', paper.number),
    footNote: 'Corrections by credit note',
  };
  const pen = startSheet(fonts, paper.head, title);
  const to = { label: 'To', value: [{ b: paper.to.name }, ...paper.to.lines.map((line) => `\n${line}`)], share: 1.7 };
  const facts = paper.facts.map(({ label, words }) => ({ label, value: words || '-' }));
  place(pen, titleBlock(pen, [to, ...facts.slice(0, 4)], widthOf(pen)), facts.length > 4 ? 0 : 8);
  if (facts.length > 4) place(pen, titleBlock(pen, facts.slice(4), widthOf(pen)), 8);
  for (const [index, group] of paper.groups.entries()) drawGroup(pen, paper, group, index);
  columns(
    pen,
    0.54,
    18,
    (left) => drawNotes(left, paper),
    (right) => drawTotals(right, paper),
  );
  leave(pen, 6);
  signatures(pen, [{ label: paper.pieces, share: 2.4 }, { label: 'Date' }], 12);
  return finishSheet(pen, paper.head, title);
}

function drawGroup(pen: Pen, paper: InvoicePaper, group: InvoicePaper['groups'][number], index: number): void {
  const before = paper.groups[index - 1];
  const sameCasting = before !== undefined && before.words === group.words && before.tag?.number === group.tag?.number;
  if (group.words !== '' && !sameCasting) {
    headed(pen, group.words, group.tag ? (ink) => tag(ink, group.tag?.number ?? '') : undefined);
  }
  chargeTable(pen, group.column, group.lines, paper.currency, group.total);
}

function drawNotes(pen: Pen, paper: InvoicePaper): void {
  for (const { label, words } of paper.notes) paragraph(pen, [{ b: label }, ' ', words], STYLES.small, 3);
}

function drawTotals(pen: Pen, paper: InvoicePaper): void {
  sums(pen, paper.totals, { words: `To pay ${paper.currency}`, amount: paper.toPay, strong: true });
}
