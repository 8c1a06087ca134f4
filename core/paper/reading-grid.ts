/** Readings across in the order the parts sit, quantities down, the limit at the end. */
import type { ReadingRow, SpotGroup } from '../sheets/contract/reading-tables.ts';
import { type Block, RULES, stack, strokeLine, text } from './block.ts';
import type { Rich } from './lines.ts';
import { verdictMark } from './marks.ts';
import { need, type Pen, place, widthOf } from './pen.ts';
import { type Ink, LEAST_SIZE, STYLES, type Style } from './styles.ts';
import { shrinkToFit, widthOfText } from './text.ts';

export type Grid = Readonly<{ heading: Rich; groups: readonly SpotGroup[]; rows: readonly ReadingRow[] }>;

/** More columns than this do not fit beside each other; the groups then stand one under the other. */
const MOST_ACROSS = 16;

/** A table no taller than this is not broken. */
const SHORT = 110;

const STAGE = 34;

/** Draw a grid; the heads stand again on a new page. @param least height of a row in points, more to write in */
export function readingGrid(pen: Pen, grid: Grid, least = 16): void {
  const total = grid.groups.reduce((sum, group) => sum + group.spots.length, 0);
  if (total <= MOST_ACROSS) {
    drawPart(pen, grid, { groups: grid.groups, from: 0, least });
    return;
  }
  let from = 0;
  for (const group of grid.groups) {
    const across = Math.ceil(group.spots.length / Math.ceil(group.spots.length / MOST_ACROSS));
    for (let start = 0; start < group.spots.length; start += across) {
      const part = { ...group, spots: group.spots.slice(start, start + across) };
      drawPart(pen, grid, { groups: [part], from: from + start, least });
    }
    from += group.spots.length;
  }
}

/** `label` and `stage`: widths of the two columns before the places; `limit`: of the one after them. */
type Part = Readonly<{
  groups: readonly SpotGroup[];
  from: number;
  least: number;
  count: number;
  label: number;
  stage: number;
  limit: number;
  cell: number;
  width: number;
}>;

const lead = (part: Part): number => part.label + part.stage;

function drawPart(pen: Pen, grid: Grid, wanted: Pick<Part, 'groups' | 'from' | 'least'>): void {
  const { groups } = wanted;
  const width = widthOf(pen);
  const count = Math.max(
    1,
    groups.reduce((sum, group) => sum + group.spots.length, 0),
  );
  const stage = grid.rows.some((row) => row.stage) ? STAGE : 0;
  const label = count > 12 ? 98 - stage / 1.6 : 102;
  const limit = count > 8 ? 78 : 92;
  const cell = Math.min(64, (width - label - stage - limit) / count);
  const part: Part = { ...wanted, count, label, stage, limit, cell, width };
  const heads = (more: string): Block =>
    stack(
      [
        text(pen, more === '' ? grid.heading : [grid.heading, more].flat(), STYLES.heading, width),
        groupHeads(pen, part),
        spotHeads(pen, part),
      ],
      1,
    );
  const rows = grid.rows.map((row) => gridRow(pen, part, row));
  const head = heads(wanted.from > 0 ? ', further' : '');
  const whole = rows.reduce((sum, row) => sum + row.height, 0);
  need(pen, head.height + (whole <= SHORT ? whole : heightOf(rows, grid.rows, 0)));
  place(pen, head);
  for (const [index, row] of rows.entries()) {
    const page = pen.page;
    // Found and after are read together.
    need(pen, grid.rows[index]?.again ? row.height : heightOf(rows, grid.rows, index));
    if (pen.page !== page) place(pen, heads(', continued'));
    place(pen, row);
  }
  pen.y += 4;
}

/** Height of a row with those below it that go on with the same quantity. */
function heightOf(blocks: readonly Block[], rows: readonly ReadingRow[], index: number): number {
  let height = blocks[index]?.height ?? 0;
  for (let next = index + 1; rows[next]?.again; next += 1) height += blocks[next]?.height ?? 0;
  return height;
}

const gridWidth = (part: Part): number => lead(part) + part.limit + part.cell * part.count;

function groupHeads(ink: Ink, part: Part): Block {
  const named = part.groups.some(({ title }) => title !== '');
  return {
    width: part.width,
    height: named ? 13 : 0,
    draw(x, y) {
      if (!named) return;
      let at = x + lead(part);
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
  const labels = part.groups
    .flatMap(({ spots }) => spots)
    .map((spot) => text(ink, spot, shrinkToFit(ink, spot, spotStyle, part.cell - 2), part.cell, { align: 'center' }));
  const height = Math.max(12, ...labels.map((label) => label.height)) + 4;
  return {
    width: part.width,
    height,
    draw(x, y) {
      let at = x + lead(part);
      for (const label of labels) {
        label.draw(at, y + height - 2 - label.height);
        at += part.cell;
      }
      const limit = text(ink, 'Limit', spotStyle, part.limit, { align: 'center' });
      limit.draw(at, y + height - 2 - limit.height);
      strokeLine(ink, x, y + height, x + gridWidth(part), y + height, RULES.strong);
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

const limitStyle: Style = { face: 'figureSemi', bold: 'figureBold', size: 9, lead: 1.15 };

function gridRow(ink: Ink, part: Part, row: ReadingRow): Block {
  const face = row.key ? ('figureBold' as const) : ('figure' as const);
  const words = { ...STYLES.small, lead: 1.15, size: 9 };
  const label = text(ink, row.again ? '' : row.key ? [{ b: row.label }] : row.label, words, part.label - 6);
  const stage = text(ink, row.key ? [{ b: row.stage ?? '' }] : (row.stage ?? ''), words, Math.max(1, part.stage - 2));
  const limit = stack([
    ...(row.limit ? [text(ink, row.limit, limitStyle, part.limit - 8, { align: 'center' })] : []),
    ...(row.doubt
      ? [text(ink, row.doubt, { ...limitStyle, face: 'figure' }, part.limit - 8, { align: 'center' })]
      : []),
  ]);
  const cells = Array.from({ length: part.count }, (_, index) => cellOf(ink, row, part.from + index, part.cell, face));
  const height = Math.max(
    part.least,
    label.height + 4,
    stage.height + 4,
    limit.height + 4,
    ...cells.map((cell) => cell.height + 5),
  );
  const heavy = starts(part);
  return {
    width: part.width,
    height,
    draw(x, y) {
      label.draw(x, y + (height - label.height) / 2);
      stage.draw(x + part.label, y + (height - stage.height) / 2);
      for (const [index, cell] of cells.entries()) {
        const left = x + lead(part) + index * part.cell;
        cell.draw(left + (part.cell - cell.width) / 2, y + (height - cell.height) / 2);
        strokeLine(ink, left, y, left, y + height, heavy.has(index) ? 1.6 : RULES.hair);
      }
      const end = x + lead(part) + part.count * part.cell;
      strokeLine(ink, end, y, end, y + height, RULES.strong);
      limit.draw(end + 4, y + (height - limit.height) / 2);
      strokeLine(ink, x, y + height, end + part.limit, y + height, RULES.hair);
    },
  };
}

/** From above: what was replaced, struck through; the mark of what does not pass; the figure. */
function cellOf(ink: Ink, row: ReadingRow, index: number, width: number, face: Style['face']): Block {
  const value = row.values[index] ?? '';
  const style = shrinkToFit(ink, value, { face, bold: 'figureBold', size: 9.6, lead: 1.1 }, width - 2);
  const figure = text(ink, value, style, width, { align: 'center' });
  const struck = row.struck?.[index];
  const verdict = row.verdicts?.[index];
  const marks = [
    ...(struck ? [struckBlock(ink, struck, width)] : []),
    ...(verdict && verdict !== 'pass' ? [centred(verdictMark(ink, verdict, 8), width)] : []),
  ];
  return marks.length === 0 ? figure : stack([...marks, figure], 2);
}

const centred = (block: Block, width: number): Block => ({
  width,
  height: block.height,
  draw: (x, y) => block.draw(x + (width - block.width) / 2, y),
});

/** `1.531 a`: the figure with a line through it, its letter free. */
export function struckBlock(ink: Ink, words: string, width: number): Block {
  const style: Style = { face: 'figure', bold: 'figureBold', size: LEAST_SIZE, lead: 1.1 };
  const lines = words.split(/(?<= [a-z]{1,2}) /).map((line) => {
    const [, figure = line, letter = ''] = /^(.*) ([a-z]{1,2})$/.exec(line) ?? [];
    return { figure, all: letter === '' ? figure : `${figure}\u00a0${letter}` };
  });
  const height = style.size * style.lead;
  return {
    width,
    height: height * lines.length,
    draw(x, y) {
      for (const [index, { figure, all }] of lines.entries()) {
        const [wide, whole] = [widthOfText(ink, figure, style), widthOfText(ink, all, style)];
        const left = x + Math.max(0, (width - whole) / 2);
        const top = y + index * height;
        text(ink, all, style, whole + 1).draw(left, top);
        strokeLine(ink, left - 1, top + height * 0.52, left + wide + 1, top + height * 0.52, RULES.thin);
      }
    },
  };
}
