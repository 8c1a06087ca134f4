/**
 * What a shop judges chambers, decks and the consequences of a cut by where nothing better is known. Common practice, no source.
 */
import { limit, type ShopLimit } from '../shop-limit.ts';

const BOTH = ['before', 'after'] as const;

export const EFFECT_LIMITS: readonly ShopLimit[] = [
  ...BOTH.flatMap((stage) => [
    limit('chamber-spread', stage, null, '1.0', 'cc'),
    limit('chamber-spread-performance', stage, null, '0.5', 'cc'),
    limit('deck-spread', stage, null, '0.004', 'in'),
    limit('deck-spread-performance', stage, null, '0.002', 'in'),
    limit('bank-difference', stage, null, '0.004', 'in'),
    limit('bank-difference-performance', stage, null, '0.002', 'in'),
  ]),
  limit('valve-to-piston-left', 'after', '0.080', null, 'in', 'I'),
  limit('valve-to-piston-left', 'after', '0.100', null, 'in', 'E'),
  // Ports that miss each other by less do no harm.
  limit('port-drop', 'after', null, '0.005', 'in'),
  // The same harm, done by two heads that do not drop alike.
  limit('pair-difference', 'after', null, '0.005', 'in'),
  // With steel rods; a piston nearer than this may touch.
  limit('piston-to-head', 'before', '0.035', null, 'in'),
  limit('piston-to-head', 'after', '0.035', null, 'in'),
];
