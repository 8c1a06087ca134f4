/** What a shop judges faces by, and cuts for the finish, where nothing better is known. Common practice, no source. */
import { limit, type ShopLimit, usually } from '../shop-limit.ts';

export const FACE_LIMITS: readonly ShopLimit[] = [
  ...(['before', 'after'] as const).flatMap((stage) => [
    limit('intake-face-flatness', stage, null, '0.0040', 'in'),
    limit('exhaust-face-flatness', stage, null, '0.0060', 'in'),
  ]),
  usually('cut-finish', 'before', '0.0010', 'in'),
  usually('feeler-step', 'before', '0.0010', 'in'),
];
