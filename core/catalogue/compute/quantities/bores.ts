/** Bores of a block: readings, what they make, the one size for all, and how it was honed. */
import { OVERSIZES } from '../oversizes.ts';
import { checkAgain, cylinder, fine, gap, type Quantity, quantity, tally, word } from '../quantity.ts';

/** Thrust axis: across the engine. Pin axis: along the crank. */
const USUAL = [
  ['top-x', 'thrust, top'],
  ['mid-x', 'thrust, middle'],
  ['bot-x', 'thrust, bottom'],
  ['top-y', 'pin axis, top'],
  ['mid-y', 'pin axis, middle'],
  ['bot-y', 'pin axis, bottom'],
] as const;

/** More levels and axes, for liners and two-strokes. */
const MORE = [
  ['up-x', 'thrust, a quarter down'],
  ['low-x', 'thrust, three quarters down'],
  ['up-y', 'pin axis, a quarter down'],
  ['low-y', 'pin axis, three quarters down'],
  ['top-a', '45 degrees one way, top'],
  ['mid-a', '45 degrees one way, middle'],
  ['bot-a', '45 degrees one way, bottom'],
  ['top-b', '45 degrees the other way, top'],
  ['mid-b', '45 degrees the other way, middle'],
  ['bot-b', '45 degrees the other way, bottom'],
] as const;

/** Where the piston is gauged, when that is not the middle. */
const GAUGED = ['gauge-x', 'thrust, where the piston is gauged'] as const;

const much = { over: 'too much' } as const;

export const BORES: readonly Quantity[] = [
  quantity('bore', 'bore', { ...cylinder, ...fine, ...checkAgain, points: [...USUAL, ...MORE, GAUGED] }),
  quantity('bore-depth', 'depth of the readings', {
    points: [
      ['top', 'top, just under the ridge'],
      ['mid', 'middle'],
      ['bot', 'bottom, below the rings'],
    ],
  }),
  quantity('bore-taper', 'taper', { ...cylinder, fine: true, ...much, derived: 'bore-taper' }),
  quantity('bore-taper-simple', 'taper, top to bottom', {
    ...cylinder,
    fine: true,
    signed: true,
    ...much,
    derived: 'bore-taper-simple',
  }),
  quantity('bore-out-of-round', 'out of round', { ...cylinder, fine: true, ...much, derived: 'bore-out-of-round' }),
  quantity('bore-wear', 'wear', { ...cylinder, fine: true, signed: true, ...much, derived: 'bore-wear' }),
  quantity('bore-largest', 'largest reading', { ...cylinder, fine: true, derived: 'bore-largest' }),
  quantity('score-depth', 'score or pit, depth', { ...cylinder, fine: true, over: 'too deep', under: 'too shallow' }),
  quantity('piston-size', 'piston', { ...cylinder, ...fine }),
  quantity('piston-offered', 'pistons of this set', {
    ...fine,
    points: OVERSIZES.map(({ code, words }) => [code, words] as const),
  }),
  quantity('bore-present', 'size it was last bored to', fine),
  quantity('bore-greatest', 'greatest bore', fine),
  quantity('hone-allowance', 'left for the hone', { fine: true }),
  quantity('clean-up', 'clean-up', { fine: true }),
  quantity('centre-shift', 'bar set off centre', { ...cylinder, fine: true, ...much }),
  quantity('bore-wanted', 'size wanted', { toMake: true, ...cylinder, ...fine }),
  quantity('bore-error', 'off the size wanted', {
    ...cylinder,
    fine: true,
    signed: true,
    derived: 'bore-error',
  }),
  quantity('piston-clearance', 'piston clearance', {
    ...cylinder,
    ...gap,
    ...checkAgain,
    signed: true,
    derived: 'piston-clearance',
  }),
  quantity('wall-thickness', 'wall', { ...cylinder, over: 'too thick', under: 'too thin' }),
  quantity('wall-left', 'wall left at the size wanted', {
    ...cylinder,
    derived: 'wall-left',
    judgedAs: 'wall-thickness',
    over: 'too thick',
    under: 'too thin',
  }),
  quantity('hone-speed', 'hone, turns a minute', tally),
  quantity('hone-strokes', 'hone, full strokes a minute', tally),
  quantity('hone-stroke', 'hone, stroke one way', { over: 'too long', under: 'too short' }),
  quantity('crosshatch', 'crosshatch, included', {
    ...cylinder,
    family: 'angle',
    derived: 'crosshatch',
    orTyped: true,
    over: 'too steep',
    under: 'too flat',
  }),
  quantity('bore-finish', 'finish Ra', {
    ...cylinder,
    family: 'roughness',
    over: 'too rough',
    under: 'too smooth',
  }),
  quantity('hone-stones', 'stones', {
    ...word,
    choices: ['220 grit', '280 grit', '320 to 400 grit', '280, then 400', '280, then brush'],
  }),
  quantity('ring-facing', 'rings', { ...word, choices: ['plain or chrome', 'moly', 'not known'] }),
];
