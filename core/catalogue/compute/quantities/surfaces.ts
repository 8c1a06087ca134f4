/** Decks and other faces: thickness, flatness, finish, and what stands in them. */
import { checkAgain, cylinder, fine, gap, type Quantity, quantity, tall } from '../quantity.ts';

export const SURFACES: readonly Quantity[] = [
  quantity('thickness', 'thickness', { ...fine, ...checkAgain, over: 'too thick', under: 'too thin' }),
  quantity('stock-removed', 'taken off', { fine: true, signed: true, over: 'too much', derived: 'stock-removed' }),
  quantity('thickness-left', 'left above the minimum', {
    ...gap,
    ...checkAgain,
    signed: true,
    derived: 'thickness-left',
  }),
  quantity('face-removed', 'taken off the face', { fine: true, over: 'too much' }),
  quantity('chamber-volume', 'chamber', { spotKind: 'chamber', family: 'volume', unit: 'cc' }),
  quantity('stud-height', 'stud stands', tall),
  quantity('sleeve-protrusion', 'sleeve stands', { ...cylinder, ...tall, fine: true, signed: true }),
  quantity('flywheel-thickness', 'flywheel thickness', { over: 'too thick', under: 'too thin' }),
  quantity('step-height', 'step', tall),
];
