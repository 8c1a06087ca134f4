/** Bores, mains, decks of a block, and the parts that run in them. */
import { cylinder, fine, gap, type Quantity, quantity, tall } from '../quantity.ts';

export const BLOCK: readonly Quantity[] = [
  quantity('sleeve-od', 'sleeve outside', { ...cylinder, ...fine }),
  quantity('sleeve-fit', 'sleeve fit', { ...cylinder, ...gap, signed: true }),
  quantity('counterbore-ledge', 'ledge depth', { ...cylinder, ...fine, over: 'too deep', under: 'too shallow' }),
  quantity('liner-protrusion', 'liner stands', { ...cylinder, ...tall, fine: true, signed: true }),
  quantity('ring-gap-top', 'top ring gap', { ...cylinder, under: 'not enough' }),
  quantity('ring-gap-second', 'second ring gap', { ...cylinder, under: 'not enough' }),
  quantity('main-size', 'main bore', {
    spotKind: 'main',
    ...fine,
    points: [
      ['0', 'vertical'],
      ['+60', '60 degrees one way'],
      ['-60', '60 degrees the other way'],
    ],
  }),
  quantity('cap-cut', 'taken off the cap', { spotKind: 'main', fine: true, over: 'too much' }),
  quantity('line-error', 'main line', { fine: true, over: 'too much' }),
  quantity('centre-line-rise', 'centre line rises', { fine: true, over: 'too much' }),
  quantity('deck-height', 'deck height', { spotKind: 'deck_corner', ...fine, ...tall }),
  quantity('cam-tunnel-size', 'cam tunnel', { spotKind: 'cam_journal', ...fine }),
  quantity('cam-bearing-sizes', 'cam bearing', { spotKind: 'cam_journal', ...fine }),
  quantity('lifter-bore-size', 'lifter bore', { spotKind: 'lifter', ...fine }),
  quantity('journal-size', 'journal', { spotKind: 'journal', ...fine }),
  quantity('rod-big-end', 'big end', fine),
  quantity('rod-length', 'rod length', { ...fine, over: 'too long', under: 'too short' }),
  quantity('small-end-size', 'small end', fine),
];
