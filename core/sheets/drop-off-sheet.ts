/** The drop-off sheet: what to take off and bring along, and what we will ask. Given out before the castings come. */
import { codeText } from '../kernel/codes.ts';
import { strokeLine, text } from '../paper/block.ts';
import type { Fonts } from '../paper/fonts.ts';
import { blank } from '../paper/marks.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { heading, ruledParagraph, signatures } from '../paper/parts.ts';
import { leave, need, type Pen, place, widthOf } from '../paper/pen.ts';
import { STYLES } from '../paper/styles.ts';
import { table } from '../paper/table.ts';
import type { DropOffPaper } from './contract/papers.ts';

/** Draw a drop-off sheet; without a ticket number it carries no code. */
export function drawDropOff(fonts: Fonts, paper: DropOffPaper): Promise<Uint8Array> {
  const title: SheetTitle = {
    title: 'Drop-off sheet',
    number: paper.number,
    code: paper.number === '' ? '' : codeText('ticket', paper.number),
  };
  const pen = startSheet(fonts, paper.head, title);
  place(pen, blank(pen, 'Name and telephone', widthOf(pen) - 96), 6);
  if (paper.customer !== '') place(pen, text(pen, [{ b: paper.customer }], STYLES.value, widthOf(pen)), 4);
  table(pen, {
    heading: 'Before you bring it',
    columns: [{ width: 150, style: STYLES.strong }, { width: { share: 1 } }, { width: 40 }],
    rows: paper.before.map(({ label, words }) => ({
      cells: [
        label,
        words,
        () => ({
          width: 14,
          height: 14,
          draw: (x, y) =>
            pen.doc
              .lineWidth(1)
              .rect(x + 20, y, 12, 12)
              .stroke(),
        }),
      ],
    })),
    flush: true,
    padY: 4,
  });
  leave(pen, 6);
  drawQuestions(pen, paper);
  ruledParagraph(pen, paper.terms);
  signatures(pen, [{ label: 'Left by', share: 2 }, { label: 'Date, time' }, { label: 'Taken in by' }], 14);
  return finishSheet(pen, paper.head, title);
}

/** What the counter asks, with room for the answer. */
function drawQuestions(pen: Pen, paper: DropOffPaper): void {
  heading(pen, 'Tell us', 40);
  for (const question of paper.questions) {
    const width = widthOf(pen);
    need(pen, 22);
    const label = text(pen, question, STYLES.body, width * 0.46);
    label.draw(pen.left, pen.y + 4);
    const y = pen.y + label.height + 3;
    strokeLine(pen, pen.left + width * 0.48, y, pen.right, y, 0.6);
    pen.y += label.height + 9;
  }
  leave(pen, 4);
}
