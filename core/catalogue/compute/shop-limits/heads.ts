/** What a shop judges a head by where nothing better is known. Common practice, no source, unless the row says more. */
import { limit, type ShopLimit } from '../shop-limit.ts';

const said = (row: ShopLimit, sourceTag: string, more: string): ShopLimit => ({
  ...row,
  sourceTag,
  sourceWords: `${row.sourceWords} (${more})`,
});

export const HEAD_LIMITS: readonly ShopLimit[] = [
  limit('coil-bind-clearance', 'after', '0.060', null, 'in'),
  limit('seal-clearance', 'after', '0.050', null, 'in'),
  limit('rocker-clearance', 'after', '0.040', null, 'in'),
  // A used spring keeps at least nine tenths of its specified load, and of the strongest of its set.
  limit('spring-strength', 'after', '0.90', null, 'ratio'),
  limit('spring-match', 'after', '0.90', null, 'ratio'),
  limit('spring-set', 'after', '0.90', null, 'ratio'),
  limit('spring-squareness', 'after', null, '0.063', 'in'),
  said(limit('surge-margin', 'after', '10', null, 'ratio'), 'from memory', 'from memory'),
  said(limit('height-spread', 'after', null, '0.010', 'in'), 'from memory', 'from memory'),
  limit('guide-clearance', 'before', null, '0.0040', 'in', 'I'),
  limit('guide-clearance', 'after', null, '0.0040', 'in', 'I'),
  limit('guide-clearance', 'before', null, '0.0050', 'in', 'E'),
  limit('guide-clearance', 'after', null, '0.0050', 'in', 'E'),
  limit('stem-wear', 'after', null, '0.0015', 'in'),
  limit('margin', 'after', '0.031', null, 'in', 'I'),
  limit('margin', 'after', '0.047', null, 'in', 'E'),
  limit('seat-runout', 'after', null, '0.002', 'in'),
  said(limit('face-runout', 'after', null, '0.002', 'in'), 'published', 'TM 9-4310-397-14, TM 10-3930-671-24'),
  // 1/64 in.
  said(limit('seat-free', 'after', '0.015625', null, 'in'), 'published', 'TM 10-3930-671-24: at least 1/64 in'),
  limit('tip-from-mean', 'after', '-0.010', '0.010', 'in'),
  limit('tip-removed', 'after', null, '0.010', 'in'),
  said(limit('port-vacuum-fall', 'after', null, '5', 'inHg'), 'from memory', 'from memory; shops differ'),
  limit('thickness-left', 'after', '0', null, 'in'),
];
