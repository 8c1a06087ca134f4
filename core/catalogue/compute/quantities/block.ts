/** Sleeves, liners, rings and decks of a block. */
import { cylinder, fine, gap, type Quantity, quantity, tall } from '../quantity.ts';

const ROUND_A_LINER = [
  ['front', 'front'],
  ['rear', 'rear'],
  ['left', 'left'],
  ['right', 'right'],
] as const;
const deep = { over: 'too deep', under: 'too shallow' } as const;
const apart = { fine: true, over: 'too far apart' } as const;

export const BLOCK: readonly Quantity[] = [
  quantity('sleeve-od', 'sleeve outside', { ...cylinder, ...fine }),
  // From the two sizes; typed where only the fit was taken.
  quantity('sleeve-fit', 'sleeve fit', {
    ...cylinder,
    ...gap,
    signed: true,
    over: 'too tight',
    under: 'too loose',
    derived: 'sleeve-fit',
    orTyped: true,
  }),
  quantity('ledge-place', 'ledge depth', { ...cylinder, ...fine, ...deep, points: ROUND_A_LINER }),
  quantity('counterbore-ledge', 'ledge depth, shallowest', {
    ...cylinder,
    ...fine,
    ...deep,
    derived: 'counterbore-ledge',
    orTyped: true,
  }),
  quantity('ledge-level', 'ledge, out of level', { ...cylinder, fine: true, over: 'too much', derived: 'ledge-level' }),
  quantity('liner-flange', 'liner flange', { ...cylinder, ...fine, over: 'too thick', under: 'too thin' }),
  quantity('liner-shim', 'shim under the liner', { ...cylinder, fine: true }),
  quantity('liner-would-stand', 'liner would stand', {
    ...cylinder,
    ...tall,
    fine: true,
    signed: true,
    derived: 'liner-would-stand',
    judgedAs: 'liner-protrusion',
  }),
  quantity('liner-place', 'liner stands', {
    ...cylinder,
    ...tall,
    fine: true,
    signed: true,
    points: ROUND_A_LINER,
    judgedAs: 'liner-protrusion',
  }),
  quantity('liner-protrusion', 'liner stands, worst', {
    ...cylinder,
    ...tall,
    fine: true,
    signed: true,
    derived: 'liner-protrusion',
    orTyped: true,
  }),
  quantity('liner-level', 'liner, out of level', { ...cylinder, fine: true, over: 'too much', derived: 'liner-level' }),
  quantity('liner-spread', 'off the others under its head', { ...cylinder, ...apart, derived: 'liner-spread' }),
  quantity('ring-factor-top', 'top ring, gap to bore', { family: 'ratio', over: 'too much', under: 'not enough' }),
  quantity('ring-factor-second', 'second ring, gap to bore', {
    family: 'ratio',
    over: 'too much',
    under: 'not enough',
  }),
  quantity('ring-gap-top', 'top ring gap', { ...cylinder, fine: true, under: 'not enough' }),
  quantity('ring-gap-second', 'second ring gap', { ...cylinder, fine: true, under: 'not enough' }),
  quantity('ring-wanted-top', 'top ring gap, at least', { ...cylinder, fine: true, derived: 'ring-wanted-top' }),
  quantity('ring-wanted-second', 'second ring gap, at least', {
    ...cylinder,
    fine: true,
    derived: 'ring-wanted-second',
  }),
  quantity('ring-spare-top', 'top ring gap, to spare', {
    ...cylinder,
    ...gap,
    signed: true,
    derived: 'ring-spare-top',
  }),
  quantity('ring-spare-second', 'second ring gap, to spare', {
    ...cylinder,
    ...gap,
    signed: true,
    derived: 'ring-spare-second',
  }),
  quantity('ring-side-top', 'top ring, side clearance', { ...cylinder, ...gap, over: 'too much' }),
  quantity('ring-side-second', 'second ring, side clearance', { ...cylinder, ...gap, over: 'too much' }),
  quantity('ring-growth', 'ring gap grown by wear', { ...cylinder, fine: true, signed: true, derived: 'ring-growth' }),
  quantity('deck-height', 'deck height', { spotKind: 'deck_corner', ...fine, ...tall }),
  quantity('rod-length', 'rod length', { ...fine, over: 'too long', under: 'too short' }),
];
