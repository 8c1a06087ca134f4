/** How a shop crack-checks and leak-tests where nothing better is known. Common practice, no source, unless said. */
import { limit, type ShopLimit } from '../shop-limit.ts';

const read = (row: ShopLimit, sourceTag: string, source: string): ShopLimit => ({
  ...row,
  sourceTag,
  sourceWords: `shop default, common practice (${source})`,
});

export const LEAK_LIMITS: readonly ShopLimit[] = [
  limit('magnet-directions', 'after', '2', null, 'count'),
  read(limit('dye-dwell', 'after', '10', '30', 'min'), 'from memory', 'at least 10 min: ASTM E1417, from memory'),
  read(limit('dye-temperature', 'after', '40', '125', 'degF'), 'from memory', 'ASTM E1417, from memory'),
  limit('pressure-held-head', 'after', '20', '60', 'psi'),
  read(
    limit('pressure-held-block', 'after', '30', '100', 'psi'),
    'published',
    'published: TM 5-3895-359-14&P prints 40, TM 5-3810-295-34 80 to 100 for large blocks',
  ),
  read(limit('water-temperature-block', 'after', '180', '200', 'degF'), 'published', 'published: TM 5-3895-359-14&P'),
  read(limit('leak-soak-bath', 'after', '20', null, 'min'), 'published', 'published: TM 5-3895-359-14&P'),
  read(limit('leak-minutes-dye', 'after', '120', null, 'min'), 'published', 'published: TM 5-3895-359-14&P: two hours'),
  read(limit('leak-minutes-decay', 'after', '10', null, 'min'), 'from memory', 'from memory'),
  read(limit('pressure-fall-decay', 'after', null, '1', 'psi'), 'from memory', 'from memory'),
];
