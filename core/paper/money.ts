/** Lines with amounts, and sums, as several papers show them. */
import type { MoneyLine, TotalLine } from '../sheets/contract/papers.ts';
import { type Block, beside, RULES, strokeLine, text } from './block.ts';
import { leave, need, type Pen, place, widthOf } from './pen.ts';
import { type Ink, STYLES } from './styles.ts';
import { type Column, type Row, table } from './table.ts';

const hasUnits = (lines: readonly MoneyLine[]): boolean => lines.some(({ units, price }) => units || price);

/** Columns for lines: words, units and price where any line has them, amount. */
export const moneyColumns = (lines: readonly MoneyLine[]): Column[] => [
  { width: { share: 1 } },
  { width: hasUnits(lines) ? 84 : 34, align: 'end' },
  { width: 62, align: 'end' },
];

/** Lines, then totals; the first strong total names the currency. */
export function moneyRows(lines: readonly MoneyLine[], totals: readonly TotalLine[], currency: string): Row[] {
  const named = totals.findIndex(({ strong }) => strong);
  return [
    ...lines.map(({ words, units = '', price = '', amount, note }) => ({
      cells: [note ? `${words}\n${note}` : words, [units, price].filter(Boolean).join(' × '), amount],
    })),
    ...totals.map(({ words, amount, strong = false }, index) => ({
      cells: [words, index === named ? currency : '', amount],
      strong,
    })),
  ];
}

/** Lines over the whole width: words, units, price, amount. `column` heads the words. */
export function chargeTable(
  pen: Pen,
  column: string,
  lines: readonly MoneyLine[],
  currency: string,
  total?: TotalLine,
): void {
  const units = hasUnits(lines);
  const middle: Column[] = units
    ? [
        { title: 'Units', width: 84, align: 'end' },
        { title: 'Price', width: 96, align: 'end' },
      ]
    : [];
  const cells = (words: string, amount: string, between: readonly string[]) =>
    units ? [words, ...between, amount] : [words, amount];
  table(pen, {
    columns: [
      { title: column, width: { share: 1 } },
      ...middle,
      { title: `Amount ${currency}`, width: 92, align: 'end' },
    ],
    rows: [
      ...lines.map(({ words, units: count = '', price = '', amount, note }) => ({
        cells: cells(note ? `${words}\n${note}` : words, amount, [count, price]),
      })),
      ...(total ? [{ cells: cells(total.words, total.amount, ['', '']), strong: true }] : []),
    ],
    ...(total && { keepLast: 3 }),
    flush: true,
    padY: 2.2,
  });
  leave(pen, 6);
}

/** Sums at the lower right; the last, framed by heavy rules, is what the paper comes to. */
export function sums(pen: Pen, totals: readonly TotalLine[], owed?: TotalLine): void {
  const width = widthOf(pen);
  const rows = totals.map((line) => sumRow(pen, line, width, false));
  const all = owed ? [...rows, sumRow(pen, owed, width, true)] : rows;
  need(
    pen,
    all.slice(-3).reduce((height, row) => height + row.height, 0),
  );
  for (const row of all) place(pen, row);
}

function sumRow(ink: Ink, line: TotalLine, width: number, owed: boolean): Block {
  const face = line.strong ? 'textBold' : 'text';
  const words = text(ink, line.words, owed ? STYLES.owed : { ...STYLES.sum, face }, width - 88);
  const figure = line.strong ? ('figureBold' as const) : ('figure' as const);
  const amount = text(ink, line.amount, owed ? STYLES.owedFigure : { ...STYLES.sumFigure, face: figure }, 88, {
    align: 'end',
  });
  const row = beside([words, amount], 0, 'middle');
  const height = row.height + 3.6;
  return {
    width,
    height,
    draw(x, y) {
      row.draw(x, y + 1.8);
      if (line.strong) strokeLine(ink, x, y, x + width, y, owed ? 2 : RULES.strong);
      strokeLine(ink, x, y + height, x + width, y + height, owed ? 2 : RULES.hair);
    },
  };
}
