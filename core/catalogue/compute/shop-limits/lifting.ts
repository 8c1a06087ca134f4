/** Lifting by hand. Local rules come first. */
import { limit, type ShopLimit } from '../shop-limit.ts';

const NIOSH = {
  sourceTag: 'published',
  sourceWords: 'shop default, common practice (published: NIOSH 94-110, rev. 9/2021); local rules first',
} as const;

export const LIFTING_LIMITS: readonly ShopLimit[] = [
  // A limit of 0 is no weight at all.
  { ...limit('lift-limit', 'after', '0.1', null, 'kg'), ...NIOSH },
  { ...limit('lift-index', 'after', null, '1.00', 'ratio'), ...NIOSH },
];
