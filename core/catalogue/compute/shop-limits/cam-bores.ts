/** Cam bores a shop judges where nothing better is known. Common practice, no source. */
import { limit, type ShopLimit } from '../shop-limit.ts';

export const CAM_BORE_LIMITS: readonly ShopLimit[] = [
  // 0.002 to 0.003 in is usual; where an engine turns fast half of it is asked for.
  limit('cam-line', 'before', null, '0.0030', 'in'),
  limit('cam-line', 'after', null, '0.0030', 'in'),
  limit('cam-bore-round', 'after', null, '0.0010', 'in'),
  limit('cam-bore-clearance', 'after', '0.0020', '0.0040', 'in'),
];
