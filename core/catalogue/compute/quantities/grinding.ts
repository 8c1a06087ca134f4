/**
 * What a cut seat and a ground face do. At "before" they are what is planned and what it would come to, at "after" what was
 * done.
 */
import { bothSides, load, type Quantity, quantity, tall, valve } from '../quantity.ts';

const deep = { ...valve, over: 'too deep', under: 'too shallow' } as const;

export const GRINDING: readonly Quantity[] = [
  quantity('seat-cut-depth', 'seat cut by', { ...deep, fine: true }),
  quantity('face-stock', 'face ground by', { ...deep, fine: true }),
  quantity('valve-rise', 'valve rises by', { ...deep, fine: true, derived: 'valve-rise', optional: true }),
  quantity('plan-height', 'height without shims', { ...bothSides, ...tall, derived: 'plan-height', optional: true }),
  quantity('plan-shim', 'shims under it', { ...valve, over: 'too thick', derived: 'plan-shim', optional: true }),
  quantity('plan-height-with-shim', 'height with them', {
    ...bothSides,
    ...tall,
    derived: 'plan-height-with-shim',
    judgedAs: 'height-with-shim',
  }),
  quantity('plan-load-no-shim', 'seat load without shims', {
    ...bothSides,
    ...load,
    derived: 'plan-load-no-shim',
    optional: true,
  }),
  quantity('plan-seat-load', 'seat load with them', {
    ...bothSides,
    ...load,
    derived: 'plan-seat-load',
    judgedAs: 'seat-load',
  }),
  quantity('plan-open-load', 'open load with them', {
    ...bothSides,
    ...load,
    derived: 'plan-open-load',
    judgedAs: 'open-load',
  }),
  quantity('plan-tip-height', 'stem tip height then', {
    ...valve,
    ...tall,
    derived: 'plan-tip-height',
    judgedAs: 'tip-height',
  }),
  quantity('plan-tip-from-mean', 'tip from the mean then', {
    ...valve,
    ...tall,
    signed: true,
    derived: 'plan-tip-from-mean',
    judgedAs: 'tip-from-mean',
  }),
  quantity('plan-chamber', 'chamber grows', {
    ...valve,
    family: 'volume',
    unit: 'cc',
    fine: true,
    signed: true,
    derived: 'plan-chamber',
    optional: true,
  }),
  quantity('plan-recession', 'recession then', {
    ...bothSides,
    signed: true,
    over: 'too deep',
    under: 'too proud',
    derived: 'plan-recession',
    judgedAs: 'recession',
  }),
  quantity('plan-lash', 'lash left, same shim', {
    ...bothSides,
    signed: true,
    over: 'too much',
    under: 'not enough',
    derived: 'plan-lash',
    judgedAs: 'lash',
  }),
];
