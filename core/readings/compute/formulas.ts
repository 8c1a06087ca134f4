/**
 * Every computed quantity, by the name its catalogue row gives. Adding one is one entry in a file of `formulas` and one row in
 * core/catalogue/compute/quantities.
 */
import { BORE_FORMULAS } from './formulas/bores.ts';
import type { Formula } from './formulas/formula.ts';
import { SPRING_FORMULAS } from './formulas/springs.ts';
import { SURFACE_FORMULAS } from './formulas/surfaces.ts';
import { VALVE_FORMULAS } from './formulas/valves.ts';

/** All formulas by name. */
export const FORMULAS: Readonly<Record<string, Formula>> = {
  ...VALVE_FORMULAS,
  ...SPRING_FORMULAS,
  ...SURFACE_FORMULAS,
  ...BORE_FORMULAS,
};
