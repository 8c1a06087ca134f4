/** Finish by gasket where its maker's figure is not known: too rough and too smooth. Common practice, no source, unless said. */
import { limit, type ShopLimit } from '../shop-limit.ts';

export const FINISH_LIMITS: readonly ShopLimit[] = [
  limit('finish-ra-composition', 'after', '30', '110', 'uin'),
  {
    ...limit('finish-ra-soft', 'after', '30', '110', 'uin'),
    sourceTag: 'published',
    sourceWords: 'shop default, common practice (published, not smoother than 30: a trade article on head resurfacing)',
  },
  // Up to 30 for any of them; up to 60 only where the gasket maker says so.
  limit('finish-ra-mls', 'after', null, '60', 'uin'),
  limit('finish-ra-mls-sure', 'after', null, '30', 'uin'),
  {
    ...limit('finish-ra-diesel', 'after', '75', '130', 'uin'),
    sourceTag: 'published',
    sourceWords: 'shop default, common practice (published: TM 9-2815-255-24 for a ground diesel face)',
  },
];
