/**
 * Parts that are pressed or dropped in: seat inserts, guides, sleeves, core plugs, and the heat that lets them in. The sizes of
 * inserts, guides and sleeves themselves stand with the valves and the block.
 */
import { PART_METALS } from '../metals.ts';
import { cylinder, fine, gap, type Quantity, quantity, valve, word } from '../quantity.ts';

const warmth = { family: 'temperature', over: 'too hot', under: 'too cold', signed: true } as const;
const fit = { ...gap, signed: true, over: 'too tight', under: 'too loose' } as const;
const metal = { ...word, choices: Object.keys(PART_METALS) } as const;

/** What is computed for each part of a kind: the heat, what is left of the fit when hot, and the range of its sizes. */
const dropIn = (code: string, words: string, at: typeof valve | typeof cylinder): Quantity[] => [
  quantity(`${code}-heat`, `heat for ${words}`, { ...at, ...warmth, derived: `${code}-heat` }),
  quantity(`${code}-fit-hot`, `${words} fit left, hot`, { ...at, ...fit, derived: `${code}-fit-hot` }),
  quantity(`${code}-tightest`, `${words} fit, tightest by sizes`, {
    ...at,
    ...fit,
    optional: true,
    derived: `${code}-tightest`,
  }),
  quantity(`${code}-loosest`, `${words} fit, loosest by sizes`, {
    ...at,
    ...fit,
    optional: true,
    derived: `${code}-loosest`,
  }),
];

const chosen = (code: string, words: string): Quantity[] => [
  quantity(`${code}-metal`, `metal of the ${words}s`, metal),
  quantity(`${code}-chilled`, `${words}s chilled to`, { ...warmth, optional: true }),
  quantity(`${code}-heat-most`, `heat to, all ${words}s`, { ...warmth, derived: `${code}-heat-most` }),
];

export const FITS: readonly Quantity[] = [
  quantity('room-temperature', 'room temperature', { ...warmth, optional: true }),
  quantity('part-temperature', 'warmth of the casting, measuring', { ...warmth, optional: true }),
  quantity('running-temperature', 'running temperature', { ...warmth, optional: true }),
  quantity('drop-in-clearance', 'clearance to drop in', { ...fine, optional: true }),
  quantity('warm-inch', 'an inch (25.4 mm) reads too big by', {
    fine: true,
    signed: true,
    optional: true,
    derived: 'warm-inch',
  }),
  quantity('counterbore-warm', 'hole for insert reads too big by', {
    ...valve,
    fine: true,
    signed: true,
    optional: true,
    derived: 'counterbore-warm',
  }),
  quantity('bore-warm', 'bore reads too big by', {
    ...cylinder,
    fine: true,
    signed: true,
    optional: true,
    derived: 'bore-warm',
  }),
  ...chosen('insert', 'insert'),
  ...dropIn('insert', 'insert', valve),
  quantity('insert-oversize', 'oversize of the insert', { ...valve, ...fine, signed: true, optional: true }),
  quantity('insert-size-off', 'insert off its marked size', {
    ...valve,
    fine: true,
    signed: true,
    over: 'bigger than marked',
    under: 'smaller than marked',
    derived: 'insert-size-off',
  }),
  quantity('counterbore-wanted', 'cut the hole to', {
    ...valve,
    fine: true,
    optional: true,
    derived: 'counterbore-wanted',
  }),
  ...chosen('guide', 'guide'),
  ...dropIn('guide', 'guide', valve),
  quantity('guide-hole-wanted', 'size the hole to', {
    ...valve,
    fine: true,
    optional: true,
    derived: 'guide-hole-wanted',
  }),
  ...chosen('sleeve', 'sleeve'),
  quantity('sleeve-hole', 'hole for sleeve', { ...cylinder, ...fine }),
  ...dropIn('sleeve', 'sleeve', cylinder),
  quantity('plug-hole', 'hole for core plug', fine),
  quantity('plug-od', 'core plug', fine),
  quantity('plug-interference', 'core plug fit', { ...fit, derived: 'plug-interference' }),
  quantity('plug-tightest', 'plug fit, tightest by sizes', { ...fit, optional: true, derived: 'plug-tightest' }),
  quantity('plug-loosest', 'plug fit, loosest by sizes', { ...fit, optional: true, derived: 'plug-loosest' }),
  // These carry limits that depend on the metal of the casting.
  quantity('insert-interference-iron', 'insert fit, iron head', { ...valve, ...fit }),
  quantity('insert-interference-aluminium', 'insert fit, aluminium head', { ...valve, ...fit }),
  quantity('guide-interference-iron', 'guide fit, iron head', { ...valve, ...fit }),
  quantity('guide-interference-aluminium', 'guide fit, aluminium head', { ...valve, ...fit }),
  quantity('heat-aluminium', 'heat, aluminium casting', warmth),
];
