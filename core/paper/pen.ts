/** Where the next block goes: a column of the current page, turned to the next page when it is full. */
import { type Block, space } from './block.ts';
import type { Ink } from './styles.ts';

/** A document being drawn. `doc` and `fonts` are given on to every block. */
export type Pen = Ink & {
  left: number;
  right: number;
  /** Where the next block begins. */
  y: number;
  /** First usable point under the running head, last one above the foot. */
  readonly top: number;
  readonly bottom: number;
  /** Index of the page being drawn, from 0. */
  page: number;
  /** Turn to the next page, which is made when it is not there yet, and stand at its top. */
  turn(): void;
  /** Turn back (or on) to a page that is there. */
  turnTo(page: number): void;
};

export const widthOf = (pen: Pen): number => pen.right - pen.left;

/** Height left on this page. */
export const roomOf = (pen: Pen): number => pen.bottom - pen.y;

/** Turn the page unless this much fits, or the page is still empty. */
export function need(pen: Pen, height: number): void {
  if (height > roomOf(pen) + 0.01 && pen.y > pen.top) pen.turn();
}

/**
 * Place a block and move down. One that does not fit goes to the next page whole; one that is taller than a page, or may be
 * cut (`cut`), is cut where it can be.
 */
export function place(pen: Pen, block: Block, after = 0, cut = false): void {
  let rest: Block | undefined = block;
  while (rest) {
    const tooTall: boolean = rest.height > pen.bottom - pen.top;
    if (rest.height <= roomOf(pen) + 0.01) break;
    const parts: readonly [Block, Block] | undefined = tooTall || cut ? rest.split?.(roomOf(pen)) : undefined;
    if (parts) {
      parts[0].draw(pen.left, pen.y);
      rest = parts[1];
      pen.turn();
    } else if (pen.y > pen.top) pen.turn();
    else break;
  }
  rest.draw(pen.left, pen.y);
  pen.y += rest.height + after;
}

/** Leave space, unless the page has just begun. */
export function leave(pen: Pen, height: number): void {
  if (pen.y > pen.top) place(pen, space(Math.min(height, Math.max(0, roomOf(pen)))));
}

/**
 * Draw two columns side by side, each free to run over pages, and go on below the one that ends last.
 *
 * @param share of the width for the first column, 0 to 1
 */
export function columns(
  pen: Pen,
  share: number,
  gap: number,
  first: (pen: Pen) => void,
  second: (pen: Pen) => void,
): void {
  const { left, right, y, page } = pen;
  const width = (right - left - gap) * share;
  pen.right = left + width;
  first(pen);
  const ended = { page: pen.page, y: pen.y };
  pen.turnTo(page);
  pen.left = left + width + gap;
  pen.right = right;
  pen.y = y;
  second(pen);
  if (ended.page === pen.page) pen.y = Math.max(pen.y, ended.y);
  else if (ended.page > pen.page) {
    pen.turnTo(ended.page);
    pen.y = ended.y;
  }
  pen.left = left;
  pen.right = right;
}

/** What stands in one of two columns, with about how tall it is in points. */
export type Part = Readonly<{ tall: number; draw(pen: Pen): void }>;

/** Two columns as even as their parts allow; in each they keep their order, and the first part stands on the left. */
export function twoColumns(pen: Pen, parts: readonly Part[]): void {
  if (parts.length === 0) return;
  const [left, right] = allot(parts);
  need(pen, 90);
  const draw = (side: readonly Part[]) => (at: Pen) => {
    for (const part of side) part.draw(at);
  };
  columns(pen, 0.5, 16, draw(left), draw(right));
}

/** The tallest first, each to the side where less stands so far. */
function allot(parts: readonly Part[]): readonly [Part[], Part[]] {
  const sides = [new Set<Part>(), new Set<Part>()] as const;
  const tall = [0, 0] as [number, number];
  for (const part of parts.toSorted((a, b) => b.tall - a.tall)) {
    const side = tall[0] <= tall[1] ? 0 : 1;
    sides[side].add(part);
    tall[side] += part.tall;
  }
  const [one, other] = sides.map((side) => parts.filter((part) => side.has(part))) as [Part[], Part[]];
  return one[0] === parts[0] ? [one, other] : [other, one];
}
