/**
 * The limits a shop starts with where nothing better is known: the last rank of the order of limits.
 *
 * All common practice, no source, unless said. The owner changes them; every paper prints "shop default" beside them.
 */
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Stage } from './bench-tables.ts';

export type ShopLimit = Readonly<{
  quantity: string;
  stage: Stage;
  side: 'I' | 'E' | 'any';
  low: string | null;
  high: string | null;
  unit: UnitCode;
  sourceTag: string;
  sourceWords: string;
}>;

const limit = (
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
  unit,
  sourceTag: 'common practice',
  sourceWords: 'shop default, common practice',
});

/** In the order the bench meets them. */
export const SHOP_LIMITS: readonly ShopLimit[] = [
  limit('coil-bind-clearance', 'after', '0.060', null, 'in'),
  limit('seal-clearance', 'after', '0.050', null, 'in'),
  // A used spring keeps at least nine tenths of its specified load.
  limit('spring-strength', 'after', '0.90', null, 'ratio'),
  limit('guide-clearance', 'before', null, '0.0040', 'in', 'I'),
  limit('guide-clearance', 'after', null, '0.0040', 'in', 'I'),
  limit('guide-clearance', 'before', null, '0.0050', 'in', 'E'),
  limit('guide-clearance', 'after', null, '0.0050', 'in', 'E'),
  limit('margin', 'after', '0.031', null, 'in', 'I'),
  limit('margin', 'after', '0.047', null, 'in', 'E'),
  limit('seat-runout', 'after', null, '0.002', 'in'),
  limit('vacuum-hold', 'after', null, '5', 'inHg'),
  limit('thickness-left', 'after', '0', null, 'in'),
];
