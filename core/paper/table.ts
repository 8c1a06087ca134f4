/** Tables that break over pages: heads repeated, no head alone at a foot, a total that keeps its last lines. */
import { type Align, type Block, RULES, stack, strokeLine, text } from './block.ts';
import type { Rich } from './lines.ts';
import { need, type Pen, place, roomOf, widthOf } from './pen.ts';
import { type Ink, STYLES, type Style } from './styles.ts';

export type Column = Readonly<{
  title?: Rich;
  /** Points, or a share of what fixed columns leave. */
  width: number | Readonly<{ share: number }>;
  align?: Align;
  /** Of the cells; body words when left out, figures when aligned to the end. */
  style?: Style;
}>;

export type Row = Readonly<{
  /** One for each column: words, or a block made for the width given. */
  cells: readonly (Rich | ((width: number) => Block))[];
  /** Bold, with a strong rule above. */
  strong?: boolean;
  /** Height to write in. */
  height?: number;
}>;

export type Table = Readonly<{
  /** Stands above the heads, and again with "continued" on the next page. */
  heading?: Rich;
  columns: readonly Column[];
  rows: readonly Row[];
  /** This many last rows stay together: a total with its last two lines. */
  keepLast?: number;
  /** Upright hair lines between columns. */
  ruled?: boolean;
  padY?: number;
  padX?: number;
  /** No padding at the outer edges. */
  flush?: boolean;
}>;

type Placed = Readonly<{ table: Table; widths: readonly number[]; padX: number; padY: number }>;

function widthsOf(columns: readonly Column[], width: number): number[] {
  const fixed = columns.reduce((sum, column) => sum + (typeof column.width === 'number' ? column.width : 0), 0);
  const shares = columns.reduce((sum, column) => sum + (typeof column.width === 'number' ? 0 : column.width.share), 0);
  return columns.map((column) =>
    typeof column.width === 'number' ? column.width : ((width - fixed) * column.width.share) / shares,
  );
}

/** Left and right padding of a cell. */
function padsOf({ table, padX }: Placed, index: number): [number, number] {
  const last = index === table.columns.length - 1;
  return [table.flush && index === 0 ? 0 : padX, table.flush && last ? 0 : padX];
}

function cellBlock(ink: Ink, placed: Placed, row: Row, index: number): Block {
  const column = placed.table.columns[index];
  const cell = row.cells[index] ?? '';
  const [before, after] = padsOf(placed, index);
  const width = (placed.widths[index] ?? 0) - before - after;
  if (typeof cell === 'function') return cell(width);
  const align = column?.align ?? 'start';
  const plain = column?.style ?? (align === 'end' ? STYLES.figure : STYLES.body);
  return text(ink, cell, row.strong ? { ...plain, face: plain.bold } : plain, width, { align });
}

function rowBlock(ink: Ink, placed: Placed, cells: readonly Block[], row: Row): Block {
  const { padY } = placed;
  const width = placed.widths.reduce((sum, one) => sum + one, 0);
  const inner = Math.max(0, ...cells.map((cell) => cell.height));
  const height = Math.max(row.height ?? 0, inner + 2 * padY);
  return {
    width,
    height,
    draw(x, y) {
      let at = x;
      for (const [index, cell] of cells.entries()) {
        const offset = row.height === undefined ? padY : (height - cell.height) / 2;
        cell.draw(at + padsOf(placed, index)[0], y + offset);
        at += placed.widths[index] ?? 0;
        if (placed.table.ruled && index < cells.length - 1) strokeLine(ink, at, y, at, y + height, RULES.hair);
      }
      if (row.strong) strokeLine(ink, x, y, x + width, y, RULES.strong);
      strokeLine(ink, x, y + height, x + width, y + height, RULES.hair);
    },
    split(room) {
      const parts = cells.map((cell) => (cell.height + 2 * padY <= room ? undefined : cell.split?.(room - 2 * padY)));
      const stuck = cells.some((cell, index) => cell.height + 2 * padY > room && !parts[index]);
      if (stuck) return undefined;
      const heads = cells.map((cell, index) => parts[index]?.[0] ?? cell);
      const tails = cells.map((_, index) => parts[index]?.[1] ?? stack([]));
      const { height: _, ...free } = row;
      return [rowBlock(ink, placed, heads, free), rowBlock(ink, placed, tails, free)];
    },
  };
}

function headBlock(ink: Ink, placed: Placed): Block | undefined {
  if (placed.table.columns.every(({ title }) => title === undefined)) return undefined;
  const cells = placed.table.columns.map((column, index) => {
    const [before, after] = padsOf(placed, index);
    const style =
      column.style === STYLES.figure || column.align === 'end'
        ? { ...STYLES.column, face: 'figureSemi' as const, size: 10 }
        : STYLES.column;
    return text(ink, column.title ?? '', style, (placed.widths[index] ?? 0) - before - after, {
      align: column.align ?? 'start',
    });
  });
  const width = placed.widths.reduce((sum, one) => sum + one, 0);
  const height = Math.max(...cells.map((cell) => cell.height)) + 2 * placed.padY;
  return {
    width,
    height,
    draw(x, y) {
      let at = x;
      for (const [index, cell] of cells.entries()) {
        cell.draw(at + padsOf(placed, index)[0], y + height - placed.padY - cell.height);
        at += placed.widths[index] ?? 0;
      }
      strokeLine(ink, x, y + height, x + width, y + height, RULES.strong);
    },
  };
}

const headingBlock = (pen: Pen, heading: Rich, again: boolean): Block =>
  text(
    pen,
    again ? [...(typeof heading === 'string' ? [heading] : heading), ', continued'] : heading,
    STYLES.heading,
    widthOf(pen),
  );

/** Draw a table at the pen. */
export function table(pen: Pen, wanted: Table): void {
  const placed: Placed = {
    table: wanted,
    widths: widthsOf(wanted.columns, widthOf(pen)),
    padX: wanted.padX ?? 5,
    padY: wanted.padY ?? 2.6,
  };
  const rows = wanted.rows.map((row) =>
    rowBlock(
      pen,
      placed,
      wanted.columns.map((_, index) => cellBlock(pen, placed, row, index)),
      row,
    ),
  );
  const head = (again: boolean): Block =>
    stack([
      ...(wanted.heading === undefined ? [] : [headingBlock(pen, wanted.heading, again)]),
      ...[headBlock(pen, placed)].filter((block) => block !== undefined),
    ]);
  const kept = Math.max(0, rows.length - (wanted.keepLast ?? 0));
  const first = head(false);
  need(pen, first.height + (kept === 0 && wanted.keepLast ? sumOf(rows) : Math.min(rows[0]?.height ?? 0, 120)));
  place(pen, first);
  for (const [index, row] of rows.entries()) {
    const together = index === kept && wanted.keepLast ? sumOf(rows.slice(index)) : row.height;
    placeRow(pen, row, Math.min(together, pen.bottom - pen.top - first.height), () => place(pen, head(true)));
  }
}

const sumOf = (blocks: readonly Block[]): number => blocks.reduce((sum, block) => sum + block.height, 0);

/** A row goes whole to the next page; only one taller than a page is cut, line by line. */
function placeRow(pen: Pen, row: Block, together: number, repeatHead: () => void): void {
  let rest = row;
  if (together > roomOf(pen) + 0.01 && row.height <= together + 0.01) {
    pen.turn();
    repeatHead();
  }
  while (rest.height > roomOf(pen) + 0.01) {
    const parts = rest.split?.(roomOf(pen));
    if (parts) {
      place(pen, parts[0]);
      rest = parts[1];
    }
    pen.turn();
    repeatHead();
    if (!parts && rest.height > roomOf(pen) && !rest.split?.(roomOf(pen))) break;
  }
  place(pen, rest);
}
