/** Main bores and their line, cam tunnel, bearings, crankshaft and rods. */
import { checkAgain, fine, gap, type Quantity, quantity, word } from '../quantity.ts';

/** The parting line is avoided. */
const ROUND_A_HOUSING = [
  ['0', 'vertical'],
  ['+60', '60 degrees one way'],
  ['-60', '60 degrees the other way'],
] as const;
const TWO_PLACES = [
  ['front-x', 'front, one way'],
  ['front-y', 'front, square to it'],
  ['rear-x', 'rear, one way'],
  ['rear-y', 'rear, square to it'],
] as const;
const main = { spotKind: 'main' } as const;
const cam = { spotKind: 'cam_journal' } as const;
const journal = { spotKind: 'journal' } as const;
const rod = { spotKind: 'rod' } as const;
const much = { fine: true, over: 'too much' } as const;
const thick = { over: 'too thick', under: 'too thin' } as const;
/** What a dial or a feeler says along a line: higher is more. */
const along = { fine: true, signed: true, over: 'too high', under: 'too low' } as const;

export const BOTTOM_END: readonly Quantity[] = [
  quantity('main-size', 'main bore', { ...main, ...fine, ...checkAgain, points: ROUND_A_HOUSING }),
  quantity('main-out-of-round', 'out of round', { ...main, ...much, derived: 'main-out-of-round' }),
  quantity('main-vertical', 'vertical over the others', {
    ...main,
    fine: true,
    signed: true,
    over: 'vertical is the largest',
    derived: 'main-vertical',
  }),
  quantity('main-place', 'place from the front', { ...main, over: 'too far', under: 'too near' }),
  quantity('main-height', 'height along the bar', { ...main, ...along }),
  quantity('main-line', 'off the line of the end mains', { ...main, ...along, derived: 'main-line' }),
  quantity('main-step', 'off its neighbours', { ...main, ...much, derived: 'main-step' }),
  quantity('line-error', 'main line', { ...much, derived: 'line-error', orTyped: true }),
  quantity('cap-cut', 'taken off the cap', { ...main, ...much }),
  quantity('main-rise', 'centre rises', { ...main, ...much, derived: 'main-rise' }),
  quantity('centre-line-rise', 'centre line rises', { ...much, derived: 'centre-line-rise', orTyped: true }),
  quantity('main-shell', 'main shell', { ...main, ...fine, ...thick }),
  quantity('main-journal', 'crank journal', { ...main, ...fine }),
  quantity('bearing-clearance', 'main bearing clearance', {
    ...main,
    ...gap,
    signed: true,
    derived: 'bearing-clearance',
  }),
  quantity('end-play', 'crank end play', { ...gap, over: 'too much' }),
  quantity('crank-turns', 'crank turns by hand', { ...word, choices: ['freely', 'tight', 'not tried'] }),
  quantity('cam-tunnel-size', 'cam tunnel', { ...cam, ...fine }),
  quantity('cam-bearing-sizes', 'cam bearing', { ...cam, ...fine }),
  quantity('cam-journal-size', 'cam journal', { ...cam, ...fine }),
  quantity('cam-clearance', 'cam bearing clearance', { ...cam, ...gap, signed: true, derived: 'cam-clearance' }),
  quantity('cam-place', 'place from the front', { ...cam, over: 'too far', under: 'too near' }),
  quantity('cam-height', 'height along the bar', { ...cam, ...along }),
  quantity('cam-tunnel-line', 'off the line of the end bores', { ...cam, ...along, derived: 'cam-tunnel-line' }),
  quantity('cam-tunnel-error', 'cam tunnel line', { ...much, derived: 'cam-tunnel-error', orTyped: true }),
  quantity('cam-end-play', 'cam end play', { ...gap, over: 'too much' }),
  quantity('cam-turns', 'cam turns by hand', { ...word, choices: ['freely', 'tight', 'not tried'] }),
  quantity('lifter-bore-size', 'lifter bore', { spotKind: 'lifter', ...fine }),
  quantity('journal-place', 'journal', { ...journal, ...fine, points: TWO_PLACES }),
  quantity('journal-size', 'journal, smallest', { ...journal, ...fine, derived: 'journal-size', orTyped: true }),
  quantity('journal-taper', 'taper', { ...journal, ...much, derived: 'journal-taper' }),
  quantity('journal-out-of-round', 'out of round', { ...journal, ...much, derived: 'journal-out-of-round' }),
  quantity('rod-big-end', 'big end', fine),
  quantity('big-end-place', 'big end', { ...rod, ...fine, points: ROUND_A_HOUSING }),
  quantity('big-end-out-of-round', 'out of round', { ...rod, ...much, derived: 'big-end-out-of-round' }),
  quantity('rod-shell', 'rod shell', { ...rod, ...fine, ...thick }),
  quantity('pin-journal', 'crank pin', { ...rod, ...fine }),
  quantity('rod-clearance', 'rod bearing clearance', { ...rod, ...gap, signed: true, derived: 'rod-clearance' }),
  quantity('small-end-size', 'small end', fine),
];
