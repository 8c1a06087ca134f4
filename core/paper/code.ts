/** QR codes as black squares (ISO/IEC 18004; the modules come from bwip-js). */
import bwipjs from 'bwip-js/node';
import type { Block } from './block.ts';
import type { Ink } from './styles.ts';

/** 18 mm on sheets and large tags, 13 mm on the smallest tags. */
export const CODE_SIZES = { sheet: 51, small: 36.9 } as const;

type Squares = Readonly<{ pixs: ArrayLike<number>; pixx: number; pixy: number }>;

/** The squares of a code with error correction M, row by row, 1 for black. */
function squaresOf(words: string): Squares {
  // The published types know only the drawing forms of raw(); without a drawing it returns a list with the squares.
  const raw = bwipjs.raw as unknown as (options: Readonly<Record<string, string>>) => readonly Squares[];
  const found = raw({ bcid: 'qrcode', text: words, eclevel: 'M' })[0];
  if (!found) throw new Error('no code was made');
  return found;
}

/**
 * A code block. The squares fill `size`; a reader needs four squares of white paper around them (ISO/IEC 18004, from
 * memory), which the caller leaves free.
 */
export function code(ink: Ink, words: string, size: number): Block {
  const { pixs, pixx, pixy } = squaresOf(words);
  const step = size / pixx;
  return {
    width: size,
    height: size,
    draw(x, y) {
      for (let row = 0; row < pixy; row += 1) drawRow(ink, pixs, { row, pixx, step, x, y });
      ink.doc.fill('black');
    },
  };
}

type Row = Readonly<{ row: number; pixx: number; step: number; x: number; y: number }>;

/** Neighbouring squares are one rectangle, so that no hair line of white shows between them. */
function drawRow(ink: Ink, pixs: ArrayLike<number>, { row, pixx, step, x, y }: Row): void {
  let from = 0;
  while (from < pixx) {
    let until = from;
    while (until < pixx && pixs[row * pixx + until]) until += 1;
    if (until > from) ink.doc.rect(x + from * step, y + row * step, (until - from) * step, step);
    from = Math.max(until, from + 1);
  }
}
