/** How the gap of a ring follows the bore. Exact mathematics: the circumference is pi times the diameter. */
import { wholeOf } from './whole.ts';

/** Gap that a ring gains, in nanometres, when the bore it runs in grows by `growth` in diameter; below zero when it shrinks. */
export const gapGrowth = (growth: number): number => wholeOf(Math.PI * growth);
