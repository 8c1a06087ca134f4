/**
 * Blocks: measured first, placed and drawn later. Everything on paper is a block, so nothing is drawn before it is known to
 * have room. Sizes in points.
 */
import { breakLines, type Line, type Rich } from './lines.ts';
import type { Ink, Style } from './styles.ts';
import { drawLine, lineHeight } from './text.ts';

export type Block = Readonly<{
  width: number;
  height: number;
  /** Draw with the upper left corner at `x`, `y`. */
  draw(x: number, y: number): void;
  /** The part that fits into `height` and the rest; undefined when not even one line fits or it cannot be cut. */
  split?(height: number): readonly [Block, Block] | undefined;
}>;

export type Align = 'start' | 'end' | 'center';

/** Ruling on paper, in points. */
export const RULES = { hair: 0.4, thin: 0.6, strong: 1.2, heavy: 2.2 } as const;

type TextOptions = Readonly<{ align?: Align; indent?: number }>;

/** Words broken into lines of `width`. */
export function text(ink: Ink, rich: Rich, style: Style, width: number, options: TextOptions = {}): Block {
  return linesBlock(ink, breakLines(ink, rich, style, width, options.indent), style, width, options);
}

function linesBlock(ink: Ink, lines: readonly Line[], style: Style, width: number, options: TextOptions): Block {
  const step = lineHeight(style);
  const { align = 'start', indent = 0 } = options;
  const offset = (line: Line, index: number): number => {
    if (align === 'end') return width - line.width;
    if (align === 'center') return (width - line.width) / 2;
    return index === 0 ? indent : 0;
  };
  return {
    width,
    height: lines.length * step,
    draw(x, y) {
      for (const [index, line] of lines.entries())
        drawLine(ink, line, style, x + offset(line, index), y + index * step);
    },
    split(height) {
      const fit = Math.floor((height + 0.01) / step);
      if (fit < 1 || fit >= lines.length) return undefined;
      const rest = { ...options, indent: 0 };
      return [
        linesBlock(ink, lines.slice(0, fit), style, width, options),
        linesBlock(ink, lines.slice(fit), style, width, rest),
      ];
    },
  };
}

/** Empty space. */
export const space = (height: number, width = 0): Block => ({ width, height, draw() {} });

/** One under the other; may be cut between blocks or inside one that can be cut. */
export function stack(blocks: readonly Block[], gap = 0): Block {
  const height = blocks.reduce((sum, block) => sum + block.height, 0) + gap * Math.max(0, blocks.length - 1);
  return {
    width: Math.max(0, ...blocks.map((block) => block.width)),
    height,
    draw(x, y) {
      let at = y;
      for (const block of blocks) {
        block.draw(x, at);
        at += block.height + gap;
      }
    },
    split: (room) => splitStack(blocks, gap, room),
  };
}

function splitStack(blocks: readonly Block[], gap: number, room: number): readonly [Block, Block] | undefined {
  let used = 0;
  for (const [index, block] of blocks.entries()) {
    if (used + block.height > room + 0.01) {
      const cut = block.split?.(room - used);
      const head = [...blocks.slice(0, index), ...(cut ? [cut[0]] : [])];
      const tail = [...(cut ? [cut[1]] : [block]), ...blocks.slice(index + 1)];
      return head.length === 0 ? undefined : [stack(head, gap), stack(tail, gap)];
    }
    used += block.height + gap;
  }
  return undefined;
}

/** Side by side. `valign` places lower ones in the height of the tallest. */
export function beside(blocks: readonly Block[], gap = 0, valign: 'top' | 'middle' | 'bottom' = 'top'): Block {
  const height = Math.max(0, ...blocks.map((block) => block.height));
  const share = { top: 0, middle: 0.5, bottom: 1 }[valign];
  return {
    width: blocks.reduce((sum, block) => sum + block.width, 0) + gap * Math.max(0, blocks.length - 1),
    height,
    draw(x, y) {
      let at = x;
      for (const block of blocks) {
        block.draw(at, y + (height - block.height) * share);
        at += block.width + gap;
      }
    },
  };
}

type BoxOptions = Readonly<{ padX?: number; padY?: number; weight?: number; fill?: 'black'; width?: number }>;

/** A block with padding, a frame or a black ground. `width` widens it. */
export function box(ink: Ink, inner: Block, options: BoxOptions = {}): Block {
  const { padX = 6, padY = 3, weight = 0, fill } = options;
  const width = options.width ?? inner.width + 2 * padX;
  const height = inner.height + 2 * padY;
  return {
    width,
    height,
    draw(x, y) {
      if (fill) ink.doc.rect(x, y, width, height).fill('black');
      if (weight > 0) strokeRect(ink, x, y, width, height, weight);
      inner.draw(x + padX, y + padY);
    },
  };
}

/** A frame whose outer edge is the given rectangle. */
export function strokeRect(ink: Ink, x: number, y: number, width: number, height: number, weight: number): void {
  ink.doc
    .lineWidth(weight)
    .strokeColor('black')
    .rect(x + weight / 2, y + weight / 2, width - weight, height - weight)
    .stroke();
}

export function strokeLine(ink: Ink, x1: number, y1: number, x2: number, y2: number, weight: number): void {
  ink.doc.lineWidth(weight).strokeColor('black').moveTo(x1, y1).lineTo(x2, y2).stroke();
}
