/** Limits at the wash, as the United States print them. Elsewhere, and in doubt, local codes decide. */
import { limit, type ShopLimit } from '../shop-limit.ts';

const printed = (row: ShopLimit, source: string): ShopLimit => ({
  ...row,
  sourceTag: 'published',
  sourceWords: `shop default, common practice (published: ${source}); local codes first`,
});

export const CLEANING_LIMITS: readonly ShopLimit[] = [
  // Under 30 psi, so 30 is too high already.
  printed(limit('cleaning-air', 'after', null, '29', 'psi'), '29 CFR 1910.242(b): under 30 psi'),
  // Hazardous at 2 and below, and at 12.5 and above; a paper or a meter reads tenths.
  printed(limit('spent-bath', 'after', '2.1', '12.4', 'ratio'), '40 CFR 261.22(a)(1), D002 in the USA'),
];
