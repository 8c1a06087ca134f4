/** Guides and the stems that run in them, with the fits of guide and seat insert. */
import { bothSides, fine, gap, type Quantity, quantity, tall, valve, word } from '../quantity.ts';

export const VALVES: readonly Quantity[] = [
  quantity('guide-id', 'guide inside', {
    ...bothSides,
    ...fine,
    points: [
      ['top', 'top, along the rocker'],
      ['mid', 'middle, along the rocker'],
      ['bot', 'bottom, along the rocker'],
      ['top-y', 'top, across'],
      ['mid-y', 'middle, across'],
      ['bot-y', 'bottom, across'],
    ],
  }),
  quantity('stem', 'valve stem', { ...bothSides, ...fine }),
  quantity('guide-clearance', 'stem in guide', { ...bothSides, ...gap, derived: 'guide-clearance' }),
  quantity('bell-mouth', 'bell-mouth of guide', { ...valve, fine: true, over: 'too much', derived: 'bell-mouth' }),
  quantity('rock-swing', 'stem rocks, full side swing', { ...valve, fine: true, over: 'too much' }),
  quantity('rock-reach', 'gauge beyond the guide', { ...valve, over: 'too far', under: 'too near' }),
  quantity('guide-length', 'guide length', { ...valve, over: 'too long', under: 'too short' }),
  quantity('rock-clearance', 'stem in guide, by rocking', { ...bothSides, ...gap, derived: 'rock-clearance' }),
  quantity('stem-unworn', 'valve stem, unworn part', { ...bothSides, ...fine }),
  quantity('stem-wear', 'stem wear', { ...bothSides, fine: true, signed: true, over: 'worn', derived: 'stem-wear' }),
  quantity('valve-parts', 'to renew: valve, guide, seat', {
    ...valve,
    ...word,
    choices: ['V', 'G', 'S', 'VG', 'VS', 'GS', 'VGS', 'none'],
  }),
  quantity('guide-bore-in-head', 'hole for guide', { ...valve, ...fine }),
  quantity('guide-od', 'guide outside', { ...valve, ...fine }),
  quantity('guide-interference', 'guide fit', { ...valve, ...gap, derived: 'guide-interference', signed: true }),
  quantity('guide-height', 'guide stands', { ...valve, ...tall }),
  quantity('seal-boss-od', 'seal boss', { ...valve, ...fine }),
  quantity('seal-boss-height', 'seal boss height', { ...valve, ...tall }),
  quantity('counterbore-id', 'counterbore for insert', { ...bothSides, ...fine }),
  quantity('counterbore-depth', 'counterbore depth', { ...valve, over: 'too deep', under: 'too shallow' }),
  quantity('insert-od', 'seat insert', { ...bothSides, ...fine }),
  quantity('insert-interference', 'insert fit', { ...valve, ...gap, derived: 'insert-interference', signed: true }),
];
