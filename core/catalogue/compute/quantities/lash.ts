/** Lash and the shims that set it, of engines with buckets. */
import { bothSides, fine, type Quantity, quantity, valve } from '../quantity.ts';

export const LASH: readonly Quantity[] = [
  quantity('lash', 'lash', { ...bothSides, over: 'too much', under: 'not enough' }),
  quantity('lash-shim', 'lash shim', { ...valve, over: 'too thick', under: 'too thin', onlyFor: 'overhead cam' }),
  // The sizes a maker offers: from smallest to largest by this step; limits of the lash shim are the ends.
  quantity('lash-shim-step', 'step of lash shim sizes', {
    ...valve,
    fine: true,
    optional: true,
    onlyFor: 'overhead cam',
  }),
  quantity('lash-shim-wanted', 'lash shim wanted', {
    ...valve,
    ...fine,
    entryRule: 'none',
    derived: 'lash-shim-wanted',
    optional: true,
    onlyFor: 'overhead cam',
  }),
  quantity('lash-shim-chosen', 'nearest size', {
    ...valve,
    ...fine,
    entryRule: 'none',
    derived: 'lash-shim-chosen',
    optional: true,
    onlyFor: 'overhead cam',
  }),
  quantity('lash-with-shim', 'lash with it', {
    ...bothSides,
    signed: true,
    over: 'too much',
    under: 'not enough',
    derived: 'lash-with-shim',
    judgedAs: 'lash',
    onlyFor: 'overhead cam',
  }),
];
