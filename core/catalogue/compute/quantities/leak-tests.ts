/** Crack checks and leak tests: by which method, how hard, how warm, how long, and what was left of the pressure. */
import { LEAK_METHODS } from '../limits-by-word.ts';
import { free, type Quantity, quantity, tally, word } from '../quantity.ts';

const minutes = { family: 'duration', unit: 'min', over: 'too long', under: 'too short' } as const;
const warmth = { family: 'temperature', over: 'too hot', under: 'too cold', signed: true } as const;
const pressure = { family: 'pressure', over: 'too high', under: 'too low' } as const;
const fall = { family: 'pressure', signed: true, over: 'falls too fast', under: 'rises' } as const;

export const LEAK_TESTS: readonly Quantity[] = [
  quantity('magnet-method', 'particles', { ...word, choices: ['dry powder', 'wet, visible', 'wet, fluorescent'] }),
  quantity('magnet-directions', 'directions magnetised', tally),
  quantity('dye-method', 'dye', { ...word, choices: ['visible', 'fluorescent'] }),
  quantity('dye-dwell', 'dye left on for', minutes),
  quantity('dye-temperature', 'casting, for the dye', warmth),
  quantity('leak-method', 'method', { ...word, choices: Object.values(LEAK_METHODS) }),
  quantity('leak-soak', 'soaked for', { ...minutes, optional: true }),
  quantity('water-temperature', 'water', { ...warmth, optional: true }),
  quantity('leak-minutes', 'under pressure for', minutes),
  quantity('pressure-end', 'pressure at the end', { ...pressure, optional: true }),
  quantity('pressure-fall', 'fall in 10 min', { ...fall, derived: 'pressure-fall' }),
  quantity('relief-valve', 'relief valve set to', { ...pressure, optional: true }),
  quantity('leak-places', 'where it leaks', free),
  // These carry limits that depend on the method or on the kind of casting.
  quantity('pressure-held-head', 'pressure held, heads', pressure),
  quantity('pressure-held-block', 'pressure held, blocks', pressure),
  quantity('water-temperature-block', 'water, blocks', warmth),
  quantity('leak-soak-bath', 'soaked for, warm water', minutes),
  quantity('leak-minutes-decay', 'under pressure for, air decay', minutes),
  quantity('leak-minutes-dye', 'under pressure for, dyed water', minutes),
  quantity('pressure-fall-decay', 'fall in 10 min, air decay', fall),
];
