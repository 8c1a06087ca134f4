/** The bores a camshaft runs in: their size, their line, and the journals in them. */
import { fine, gap, type Quantity, quantity } from '../quantity.ts';

const journal = { spotKind: 'cam_journal' } as const;

export const CAM_BORES: readonly Quantity[] = [
  // Computed from the journals where they were read; typed where only one figure was taken.
  quantity('cam-line', 'cam line', { fine: true, over: 'too much', derived: 'cam-line', orTyped: true }),
  quantity('cam-bore-size', 'cam bore', { ...journal, ...fine, optional: true }),
  quantity('cam-bore-across', 'cam bore, along the split', { ...journal, ...fine, optional: true }),
  quantity('cam-bore-round', 'cam bore out of round', {
    ...journal,
    fine: true,
    over: 'too much',
    derived: 'cam-bore-round',
  }),
  quantity('cam-line-at', 'line reads', { ...journal, fine: true, signed: true, optional: true }),
  quantity('cam-line-here', 'line of its camshaft', {
    ...journal,
    fine: true,
    over: 'too much',
    derived: 'cam-line-here',
    judgedAs: 'cam-line',
  }),
  quantity('cam-journal-place', 'journal from the front', { ...journal, optional: true }),
  quantity('cam-line-off', 'stands off the line', {
    ...journal,
    fine: true,
    signed: true,
    optional: true,
    derived: 'cam-line-off',
  }),
  quantity('cam-bore-clearance', 'cam in its bore', {
    ...journal,
    ...gap,
    signed: true,
    derived: 'cam-bore-clearance',
  }),
];
