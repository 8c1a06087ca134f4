/** What to do about bores, liners, mains and bearings that do not pass. Common practice, no source. */
import type { Steps } from './step.ts';

const WORN_BORE: readonly string[] = [
  'Clean the bore and measure again at the worst place.',
  'Bore all cylinders to one oversize, from pistons in the hand.',
  'One bad bore alone: sleeve it back to the size of the others.',
];

const LINE: readonly string[] = [
  'Caps on their own seats, torqued with the final fasteners? Then measure again.',
  'Line hone, or line bore when caps were changed.',
  'Look at deck height and timing chain afterwards: the centre line rises.',
];

export const BLOCK_STEPS: Readonly<Record<string, Steps>> = {
  'bore-taper': { over: WORN_BORE },
  'bore-out-of-round': { over: WORN_BORE },
  'bore-error': {
    over: ['Let the block cool and measure again.', 'Larger pistons, or the next oversize for all.'],
    under: ['Let the block cool and measure again.', 'Hone on to the size wanted.'],
  },
  'piston-clearance': {
    over: ['Measure bore and piston again, both cold and at the piston’s own height.', 'Larger piston for this bore.'],
    under: ['Measure bore and piston again, both cold.', 'Hone this bore for its piston.'],
  },
  'wall-left': {
    under: ['A smaller oversize, when it cleans up.', 'Keep the bar on the first centre.', 'Sleeve the bore.'],
  },
  'wall-thickness': {
    under: ['Measure again beside it: a core may have shifted.', 'Sleeve the bore, or another block.'],
  },
  crosshatch: {
    over: ['Slower strokes or faster turning of the hone.'],
    under: ['Faster strokes or slower turning of the hone.'],
  },
  'ring-spare-top': { under: ['File the ring square, to the size of its own bore.'] },
  'ring-spare-second': { under: ['File the ring square, to the size of its own bore.'] },
  'liner-protrusion': {
    over: ['Liner seated, nothing under its flange?', 'Thinner shim, or flange machined as the maker allows.'],
    under: ['Ledge clean and level?', 'Shim under the flange.', 'Ledge cut true and shimmed.'],
  },
  'liner-spread': { over: ['Change liners between holes.', 'Shims by liner, until all under one head agree.'] },
  'liner-level': { over: ['Turn the liner and measure again.', 'Cut the ledge true.'] },
  'ledge-level': { over: ['Cut the ledge true, and shim by what was taken.'] },
  'main-out-of-round': { over: LINE },
  'main-vertical': { over: LINE },
  'main-size': { over: ['Caps cut and line honed back to size.', ...LINE], under: LINE },
  'main-step': { over: LINE },
  'line-error': { over: LINE },
  'bearing-clearance': {
    over: ['Housing, shell and journal measured again?', 'Undersize shells, or the journal ground.'],
    under: ['Right shells for this journal?', 'Housing to the upper end of its size.'],
  },
  'end-play': {
    over: ['Thrust faces of crank and cap looked at.', 'Thicker thrust washers, or the thrust face repaired.'],
    under: ['Thrust cap lined up before it was torqued?', 'Thinner thrust washers.'],
  },
  'cam-clearance': {
    under: ['Bearing burred at the edge?', 'Scrape or hone the tight bearing; the cam turns freely by hand.'],
  },
};
