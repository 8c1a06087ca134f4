/** What to do, by quantity: data, a file for each family in `steps`. Adding advice is one entry there. */
import { BLOCK_STEPS } from './steps/block.ts';
import { EFFECT_STEPS } from './steps/effects.ts';
import { FACE_STEPS } from './steps/faces.ts';
import { FIT_AND_FACE_STEPS } from './steps/fits-and-faces.ts';
import { SPRING_STEPS } from './steps/springs.ts';
import type { Steps } from './steps/step.ts';
import { VALVE_STEPS } from './steps/valves.ts';

export const STEPS: Readonly<Record<string, Steps>> = {
  ...BLOCK_STEPS,
  ...EFFECT_STEPS,
  ...VALVE_STEPS,
  ...SPRING_STEPS,
  ...FACE_STEPS,
  ...FIT_AND_FACE_STEPS,
};
