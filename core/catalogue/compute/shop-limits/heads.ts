/** What a shop judges a head by where nothing better is known. Common practice, no source. */
import { limit, type ShopLimit } from '../shop-limit.ts';

export const HEAD_LIMITS: readonly ShopLimit[] = [
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
