/** Bores of a block: readings, what they make, the one size for all, and how it was honed. */
import { OVERSIZES } from '../oversizes.ts';
import { cylinder, fine, gap, type Quantity, quantity, tally, word } from '../quantity.ts';

const DEPTHS = [
  ['top', 'top'],
  ['up', 'a quarter down'],
  ['mid', 'middle'],
  ['low', 'three quarters down'],
  ['bot', 'bottom'],
] as const;
const AXES = [
  ['x', 'thrust'],
  ['y', 'pin axis'],
  ['a', '45 degrees one way'],
  ['b', '45 degrees the other way'],
] as const;

/** The six that every bore has, thrust axis first. */
const USUAL = ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'];

const places = DEPTHS.flatMap(([depth, deep]) =>
  AXES.map(([axis, along]) => [`${depth}-${axis}`, `${along}, ${deep}`] as const),
);

/** Every place of a bore: six usual ones, then more for liners and two-strokes, then the height where the piston is gauged. */
const BORE_POINTS: readonly (readonly [string, string])[] = [
  ...USUAL.flatMap((code) => places.filter(([point]) => point === code)),
  ...places.filter(([point]) => !USUAL.includes(point)),
  ['gauge-x', 'thrust, where the piston is gauged'],
];

const much = { over: 'too much' } as const;

export const BORES: readonly Quantity[] = [
  quantity('bore', 'bore', { ...cylinder, ...fine, points: BORE_POINTS }),
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
  quantity('bore-wanted', 'size wanted', { ...cylinder, ...fine }),
  quantity('bore-error', 'off the size wanted', {
    ...cylinder,
    fine: true,
    signed: true,
    derived: 'bore-error',
  }),
  quantity('piston-clearance', 'piston clearance', { ...cylinder, ...gap, signed: true, derived: 'piston-clearance' }),
  quantity('wall-thickness', 'wall', { ...cylinder, over: 'too thick', under: 'too thin' }),
  quantity('wall-left', 'wall left at the size wanted', {
    ...cylinder,
    derived: 'wall-left',
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
  quantity('hone-stones', 'stones', {
    ...word,
    choices: ['220', '280', '320', '400', '280, then 400', '280, then brush'],
  }),
  quantity('ring-facing', 'rings', { ...word, choices: ['plain or chrome', 'moly', 'not known'] }),
];
