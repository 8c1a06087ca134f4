/**
 * What a limit is that a shop starts with where nothing better is known: the last rank of the order of limits.
 *
 * All common practice, no source, unless said. The owner changes them; every paper prints "shop default" beside them.
 */
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Stage } from './bench-table.ts';

export type ShopLimit = Readonly<{
  quantity: string;
  stage: Stage;
  side: 'I' | 'E' | 'any';
  low: string | null;
  high: string | null;
  /** What is aimed at, or the figure of the sheet that a formula needs. */
  target: string | null;
  unit: UnitCode;
  sourceTag: string;
  sourceWords: string;
}>;

/** One line of a list of shop limits. */
export const limit = (
  quantity: string,
  stage: Stage,
  low: string | null,
  high: string | null,
  unit: UnitCode,
  side: 'I' | 'E' | 'any' = 'any',
): ShopLimit => ({
  quantity,
  stage,
  side,
  low,
  high,
  target: null,
  unit,
  sourceTag: 'common practice',
  sourceWords: 'shop default, common practice',
});

/** A figure that a formula needs and the shop has no better one for, for example a hone allowance. */
export const usually = (quantity: string, stage: Stage, target: string, unit: UnitCode): ShopLimit => ({
  ...limit(quantity, stage, null, null, unit),
  target,
});
