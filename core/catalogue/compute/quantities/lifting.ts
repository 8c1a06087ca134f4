/** Lifting a casting by hand: its weight, and the data of the published lifting equation. */
import { type Quantity, quantity, tally, word } from '../quantity.ts';

const extra = { optional: true } as const;
const mass = { family: 'mass', over: 'too heavy', under: 'too light' } as const;

export const LIFTING: readonly Quantity[] = [
  quantity('lift-weight', 'weight to lift', { ...mass, ...extra, derived: 'lift-weight', orTyped: true }),
  quantity('lift-h', 'hands in front of the ankles', { ...extra, over: 'too far', under: 'too near' }),
  quantity('lift-v', 'hands above the floor', { ...extra, over: 'too high', under: 'too low' }),
  quantity('lift-d', 'lifted up or down by', { ...extra, over: 'too far', under: 'too near' }),
  quantity('lift-a', 'body turned by', { ...extra, family: 'angle', over: 'too far', under: 'too little' }),
  quantity('lift-coupling', 'grip', { ...word, choices: ['good', 'fair', 'poor'] }),
  quantity('lift-count', 'lifts in 15 minutes', { ...tally, ...extra, over: 'too often' }),
  quantity('lift-duration', 'for how long', { ...word, choices: ['up to 1 hour', '1 to 2 hours', '2 to 8 hours'] }),
  quantity('lift-h-end', 'hands in front, where it goes', { ...extra, over: 'too far', under: 'too near' }),
  quantity('lift-v-end', 'hands above the floor, where it goes', { ...extra, over: 'too high', under: 'too low' }),
  quantity('lift-a-end', 'body turned, where it goes', { ...extra, family: 'angle', over: 'too far' }),
  quantity('lift-limit', 'recommended limit', { ...mass, under: 'do not lift by hand', derived: 'lift-limit' }),
  quantity('lift-index', 'lifting index', {
    family: 'ratio',
    over: 'too heavy for this lift',
    under: 'light',
    derived: 'lift-index',
  }),
];
