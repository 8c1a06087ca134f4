/** The limits a shop starts with, as data. The owner changes them; every paper prints "shop default" beside them. */
import type { ShopLimit } from './shop-limit.ts';
import { BLOCK_LIMITS } from './shop-limits/block.ts';
import { CAM_BORE_LIMITS } from './shop-limits/cam-bores.ts';
import { CLEANING_LIMITS } from './shop-limits/cleaning.ts';
import { EFFECT_LIMITS } from './shop-limits/effects.ts';
import { FACE_LIMITS } from './shop-limits/faces.ts';
import { FINISH_LIMITS } from './shop-limits/finish.ts';
import { FIT_LIMITS } from './shop-limits/fits.ts';
import { HEAD_LIMITS } from './shop-limits/heads.ts';
import { LEAK_LIMITS } from './shop-limits/leak-tests.ts';
import { LIFTING_LIMITS } from './shop-limits/lifting.ts';

/** In the order the bench meets them. */
export const SHOP_LIMITS: readonly ShopLimit[] = [
  ...HEAD_LIMITS,
  ...FACE_LIMITS,
  ...FIT_LIMITS,
  ...CAM_BORE_LIMITS,
  ...LEAK_LIMITS,
  ...FINISH_LIMITS,
  ...EFFECT_LIMITS,
  ...BLOCK_LIMITS,
  ...LIFTING_LIMITS,
  ...CLEANING_LIMITS,
];
