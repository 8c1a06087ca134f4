/**
 * Every computed quantity, by the name its catalogue row gives. Adding one is one entry in a file of `formulas` and one row in
 * core/catalogue/compute/quantities.
 */

import { BORE_FORMULAS } from './formulas/bores.ts';
import { BOTTOM_END_FORMULAS } from './formulas/bottom-end.ts';
import { CAM_BORE_FORMULAS } from './formulas/cam-bores.ts';
import { CHAMBER_FORMULAS } from './formulas/chambers.ts';
import { COMPRESSION_FORMULAS } from './formulas/compression.ts';
import { DECK_FORMULAS } from './formulas/deck-height.ts';
import { EFFECT_FORMULAS } from './formulas/effects.ts';
import { FACE_FORMULAS } from './formulas/faces.ts';
import { FINISH_FORMULAS } from './formulas/finish.ts';
import { FIT_FORMULAS } from './formulas/fits.ts';
import type { Formula } from './formulas/formula.ts';
import { GRINDING_FORMULAS } from './formulas/grinding.ts';
import { LASH_FORMULAS } from './formulas/lash.ts';
import { LEAK_FORMULAS } from './formulas/leak-tests.ts';
import { LIFTING_FORMULAS } from './formulas/lifting.ts';
import { LINER_FORMULAS } from './formulas/liners.ts';
import { MAIN_FORMULAS } from './formulas/mains.ts';
import { MANIFOLD_FORMULAS } from './formulas/manifold.ts';
import { PORT_FORMULAS } from './formulas/ports.ts';
import { PROTRUSION_FORMULAS } from './formulas/protrusion.ts';
import { SEAT_FORMULAS } from './formulas/seats.ts';
import { SPRING_FORMULAS } from './formulas/springs.ts';
import { SURFACE_FORMULAS } from './formulas/surfaces.ts';
import { VALVE_FORMULAS } from './formulas/valves.ts';
import { WIRE_SPRING_FORMULAS } from './formulas/wire-springs.ts';

/** All formulas by name. */
export const FORMULAS: Readonly<Record<string, Formula>> = {
  ...VALVE_FORMULAS,
  ...SEAT_FORMULAS,
  ...GRINDING_FORMULAS,
  ...LASH_FORMULAS,
  ...PORT_FORMULAS,
  ...FIT_FORMULAS,
  ...CAM_BORE_FORMULAS,
  ...LEAK_FORMULAS,
  ...FINISH_FORMULAS,
  ...LIFTING_FORMULAS,
  ...SPRING_FORMULAS,
  ...WIRE_SPRING_FORMULAS,
  ...SURFACE_FORMULAS,
  ...FACE_FORMULAS,
  ...BORE_FORMULAS,
  ...LINER_FORMULAS,
  ...MAIN_FORMULAS,
  ...BOTTOM_END_FORMULAS,
  ...CHAMBER_FORMULAS,
  ...COMPRESSION_FORMULAS,
  ...EFFECT_FORMULAS,
  ...MANIFOLD_FORMULAS,
  ...DECK_FORMULAS,
  ...PROTRUSION_FORMULAS,
};
