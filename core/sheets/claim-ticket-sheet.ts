/** The claim ticket: the customer's copy of the check-in. */

import { codeText } from '../kernel/codes.ts';
import { type Block, beside, stack, text } from '../paper/block.ts';
import type { Fonts } from '../paper/fonts.ts';
import type { Rich } from '../paper/lines.ts';
import { bar, blank, metalLining, tag } from '../paper/marks.ts';
import { moneyColumns, moneyRows } from '../paper/money.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { framed, paragraph, ruledParagraph, signatures, titleBlock } from '../paper/parts.ts';
import { columns, leave, need, type Pen, place, widthOf } from '../paper/pen.ts';
import { STYLES } from '../paper/styles.ts';
import { type Row, table } from '../paper/table.ts';
import type { ClaimTicketPaper, Marked } from './contract/papers.ts';

type Casting = ClaimTicketPaper['castings'][number];

/** Draw a claim ticket. The condition stands above the signature. */
export function drawClaimTicket(fonts: Fonts, paper: ClaimTicketPaper): Promise<Uint8Array> {
  const title: SheetTitle = { title: 'Claim ticket', number: paper.number, code: codeText('ticket', paper.number) };
  const pen = startSheet(fonts, paper.head, title);
  drawParties(pen, paper);
  drawPieces(pen, paper);
  leave(pen, 3);
  columns(
    pen,
    0.5,
    16,
    (left) => drawAsked(left, paper),
    (right) => drawAgreement(right, paper),
  );
  leave(pen, 1);
  ruledParagraph(pen, paper.terms);
  drawSignature(pen, paper);
  return finishSheet(pen, paper.head, title);
}

function drawParties(pen: Pen, paper: ClaimTicketPaper): void {
  const { leftBy, takenIn } = paper;
  const facts = [
    { label: 'Left by', value: [{ b: leftBy.name }, leftBy.more ? `, ${leftBy.more}` : ''], share: 1.7 },
    { label: 'Your order no.', value: paper.orderNumber || '-', share: 0.9 },
    { label: 'Taken in', value: `${takenIn.when}\nby ${takenIn.by}`, share: 1.25 },
    { label: 'Account', value: paper.account, share: 0.8 },
  ];
  place(pen, titleBlock(pen, facts, widthOf(pen)), 4);
}

function drawPieces(pen: Pen, paper: ClaimTicketPaper): void {
  table(pen, {
    heading: 'What you left with us',
    columns: [
      { title: 'Tag', width: 80 },
      { title: 'Casting', width: { share: 1 } },
      { title: 'Came with it', width: { share: 1 } },
      { title: 'Condition seen at arrival', width: { share: 1 } },
    ],
    rows: [...paper.castings.map((casting) => castingRow(pen, casting)), ...containerRows(pen, paper)],
    flush: true,
    padY: 2,
  });
}

function castingRow(pen: Pen, casting: Casting): Row {
  const words = (width: number): Block =>
    stack([
      text(pen, [{ b: casting.words }, `, ${casting.piece}`], STYLES.body, width),
      ...casting.lines.map((line) => text(pen, line, STYLES.body, width)),
    ]);
  const tagged = (width: number): Block =>
    stack(
      [
        tag(pen, casting.tag.number, { width }),
        beside(
          [metalLining(pen, casting.tag.metal), text(pen, METAL[casting.tag.metal], STYLES.column, width - 19)],
          4,
        ),
      ],
      3,
    );
  const came: Rich = [casting.came, ...casting.short.flatMap((item) => [', ', { b: item }])];
  return { cells: [tagged, words, came, conditions(casting.conditions)] };
}

const METAL = { iron: 'IRON', aluminium: 'ALUMINIUM', other: 'OTHER METAL', not_known: 'NOT KNOWN' } as const;

const conditions = (marks: readonly Marked[]): Rich =>
  marks.length === 0 ? 'nothing seen' : marks.flatMap(({ no, words }) => [{ b: no }, `${no && '\u00a0'}${words} `]);

const containerRows = (pen: Pen, paper: ClaimTicketPaper): Row[] =>
  paper.containers.map((container) => ({
    cells: [
      (width: number) =>
        stack(
          container.numbers.map((number) => tag(pen, number, { thin: true, size: 10.5, width })),
          2,
        ),
      container.words,
      container.contents,
      container.condition || '-',
    ],
  }));

function drawAsked(pen: Pen, paper: ClaimTicketPaper): void {
  table(pen, {
    heading: 'What you asked for',
    columns: moneyColumns(paper.asked),
    rows: moneyRows(paper.asked, paper.totals, paper.currency),
    keepLast: paper.totals.length + 2,
    flush: true,
    padY: 1.5,
  });
  leave(pen, 3);
  for (const note of paper.askedNotes) paragraph(pen, note, STYLES.small, 2);
}

function drawAgreement(pen: Pen, paper: ClaimTicketPaper): void {
  const width = widthOf(pen);
  const promise = stack([
    text(pen, 'Promised', { ...STYLES.body, size: 9 }, width - 16),
    text(pen, paper.promise.when, STYLES.promise, width - 16),
    text(pen, paper.promise.condition, { ...STYLES.body, size: 9 }, width - 16),
  ]);
  const pairs = [
    [
      {
        label: 'Without a call, up to',
        value: [{ b: paper.ceiling.amount }, ` ${paper.ceiling.basis}`],
        style: STYLES.ceilingValue,
      },
      { label: 'Old parts', value: paper.oldParts },
    ],
    [
      { label: 'Ring', value: paper.contact },
      { label: 'Deposit', value: paper.deposit },
    ],
  ];
  const said = paper.said === '' ? [] : [text(pen, [{ b: 'You said: ' }, paper.said], STYLES.small, width)];
  const block = stack([framed(pen, promise, width), ...pairs.map((pair) => titleBlock(pen, pair, width)), ...said], 5);
  place(pen, block, 4, true);
  for (const note of paper.notes) paragraph(pen, [{ b: note.label }, ' ', note.words], STYLES.small, 2);
}

function drawSignature(pen: Pen, paper: ClaimTicketPaper): void {
  const { signature } = paper;
  // The blank line, the signature and the bar belong together at the end of the last page.
  need(pen, signature.png ? 94 : 78);
  place(pen, blank(pen, 'Anything else left:', 300));
  signatures(
    pen,
    [
      { label: signature.label, share: 2.4, written: signature.written, drawn: signature.png },
      { label: 'Date', written: signature.date },
    ],
    4,
  );
  place(pen, bar(pen, 'Bring this ticket or identification to collect', widthOf(pen)));
}
