/** What to do, by quantity: data, a file for each family in `steps`. Adding advice is one entry there. */
import type { Steps } from './steps/step.ts';
import { VALVE_STEPS } from './steps/valves.ts';

export const STEPS: Readonly<Record<string, Steps>> = { ...VALVE_STEPS };
