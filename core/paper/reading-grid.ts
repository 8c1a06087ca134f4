/** Readings across in the order the parts sit, quantities down, the limit at the end. */
import type { ReadingRow } from '../sheets/contract/papers.ts';
import { type Block, beside, RULES, stack, strokeLine, text } from './block.ts';
import type { Rich } from './lines.ts';
import { verdictMark } from './marks.ts';
import { need, type Pen, place, widthOf } from './pen.ts';
import { type Ink, STYLES, type Style } from './styles.ts';
import { shrinkToFit } from './text.ts';

type Group = Readonly<{ title: string; spots: readonly string[] }>;
export type Grid = Readonly<{ heading: Rich; groups: readonly Group[]; rows: readonly ReadingRow[] }>;

/** More columns than this do not fit beside each other; the groups then stand one under the other. */
const MOST_ACROSS = 16;

const LABEL = 98;
const LIMIT = 76;

/** Draw a grid; the heads stand again on a new page. */
export function readingGrid(pen: Pen, grid: Grid): void {
  const total = grid.groups.reduce((sum, group) => sum + group.spots.length, 0);
  if (total <= MOST_ACROSS) {
    drawPart(pen, grid, grid.groups, 0);
    return;
  }
  let from = 0;
  for (const group of grid.groups) {
    for (let start = 0; start < group.spots.length; start += MOST_ACROSS) {
      const part = { ...group, spots: group.spots.slice(start, start + MOST_ACROSS) };
      drawPart(pen, grid, [part], from + start);
    }
    from += group.spots.length;
  }
}

type Part = Readonly<{ groups: readonly Group[]; from: number; cell: number; width: number }>;

function drawPart(pen: Pen, grid: Grid, groups: readonly Group[], from: number): void {
  const width = widthOf(pen);
  const count = groups.reduce((sum, group) => sum + group.spots.length, 0);
  const part: Part = { groups, from, width, cell: Math.min(64, (width - LABEL - LIMIT) / Math.max(1, count)) };
  const heads = (again: boolean): Block =>
    stack(
      [
        text(pen, again ? [grid.heading, ', continued'].flat() : grid.heading, STYLES.heading, width),
        groupHeads(pen, part),
        spotHeads(pen, part),
      ],
      1,
    );
  const rows = grid.rows.map((row) => gridRow(pen, part, row));
  const head = heads(false);
  need(pen, head.height + (rows[0]?.height ?? 0));
  place(pen, head);
  for (const row of rows) {
    const page = pen.page;
    need(pen, row.height);
    if (pen.page !== page) place(pen, heads(true));
    place(pen, row);
  }
  pen.y += 4;
}

const gridWidth = (part: Part): number =>
  LABEL + LIMIT + part.cell * part.groups.reduce((sum, group) => sum + group.spots.length, 0);

function groupHeads(ink: Ink, part: Part): Block {
  const named = part.groups.some(({ title }) => title !== '');
  return {
    width: part.width,
    height: named ? 13 : 0,
    draw(x, y) {
      if (!named) return;
      let at = x + LABEL;
      for (const { title, spots } of part.groups) {
        text(ink, title, STYLES.column, spots.length * part.cell, { align: 'center' }).draw(at, y + 1);
        at += spots.length * part.cell;
      }
      strokeLine(ink, x, y + 13, x + gridWidth(part), y + 13, RULES.strong);
    },
  };
}

const spotStyle: Style = { face: 'figureSemi', bold: 'figureBold', size: 9, lead: 1.3 };

function spotHeads(ink: Ink, part: Part): Block {
  return {
    width: part.width,
    height: 16,
    draw(x, y) {
      let at = x + LABEL;
      for (const spot of part.groups.flatMap(({ spots }) => spots)) {
        text(ink, spot, spotStyle, part.cell, { align: 'center' }).draw(at, y + 2);
        at += part.cell;
      }
      text(ink, 'Limit', spotStyle, LIMIT, { align: 'center' }).draw(at, y + 2);
      strokeLine(ink, x, y + 16, x + gridWidth(part), y + 16, RULES.strong);
    },
  };
}

/** Left edges of cells where a group begins: ruled heavier. */
function starts(part: Part): Set<number> {
  const found = new Set<number>();
  let at = 0;
  for (const { spots } of part.groups) {
    if (at > 0) found.add(at);
    at += spots.length;
  }
  return found;
}

function gridRow(ink: Ink, part: Part, row: ReadingRow): Block {
  const count = part.groups.reduce((sum, group) => sum + group.spots.length, 0);
  const face = row.key ? ('figureBold' as const) : ('figure' as const);
  const label = text(
    ink,
    row.key ? [{ b: row.label }] : row.label,
    { ...STYLES.small, lead: 1.15, size: 9 },
    LABEL - 6,
  );
  const limit = text(ink, row.limit, { face: 'figureSemi', bold: 'figureBold', size: 9, lead: 1.15 }, LIMIT - 8, {
    align: 'center',
  });
  const cells = Array.from({ length: count }, (_, index) => cellOf(ink, row, part.from + index, part.cell, face));
  const height = Math.max(16, label.height + 4, limit.height + 4, ...cells.map((cell) => cell.height + 5));
  const heavy = starts(part);
  return {
    width: part.width,
    height,
    draw(x, y) {
      label.draw(x, y + (height - label.height) / 2);
      for (const [index, cell] of cells.entries()) {
        const left = x + LABEL + index * part.cell;
        cell.draw(left + (part.cell - cell.width) / 2, y + (height - cell.height) / 2);
        strokeLine(ink, left, y, left, y + height, heavy.has(index) ? 1.6 : RULES.hair);
      }
      const end = x + LABEL + count * part.cell;
      strokeLine(ink, end, y, end, y + height, RULES.strong);
      limit.draw(end + 4, y + (height - limit.height) / 2);
      strokeLine(ink, x, y + height, end + LIMIT, y + height, RULES.hair);
    },
  };
}

function cellOf(ink: Ink, row: ReadingRow, index: number, width: number, face: Style['face']): Block {
  const value = row.values[index] ?? '';
  const style = shrinkToFit(ink, value, { face, bold: 'figureBold', size: 9.6, lead: 1.1 }, width - 2);
  const figure = text(ink, value, style, width, { align: 'center' });
  const verdict = row.verdicts?.[index];
  if (!verdict || verdict === 'pass') return figure;
  const mark = verdictMark(ink, verdict, 8);
  return {
    width,
    height: figure.height + 10,
    draw(x, y) {
      beside([mark]).draw(x + (width - mark.width) / 2, y);
      figure.draw(x, y + 10);
    },
  };
}
