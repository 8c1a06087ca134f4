/** The bores of the block that waits for pistons, as they were read before its pistons were ordered. Invented. */
import type { Reading } from './kit.ts';

/** Four bores worn at the top of their thrust side: thrust axis from the top, then along the crank. */
export const WORN_BORES: readonly Reading[] = [
  ['1', '86.052', '86.040', '86.018', '86.030', '86.024', '86.014'],
  ['2', '86.068', '86.046', '86.020', '86.034', '86.026', '86.014'],
  ['3', '86.071', '86.048', '86.020', '86.036', '86.028', '86.015'],
  ['4', '86.055', '86.042', '86.018', '86.031', '86.025', '86.014'],
].flatMap(([spot = '', ...sizes]) =>
  ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'].map((point, index) => ({
    quantity: 'bore',
    spot,
    point,
    typed: sizes[index] ?? '',
    unit: 'mm',
  })),
);
