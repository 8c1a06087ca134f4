/**
 * The quantities a shop measures, as data: adding one is one row here, and a formula in core/readings when it is computed.
 *
 * A workspace keeps these rows (`quantity`, `quantity_point`); what is only a way of showing stays here and is found by code.
 * Decimals, entry rules and the words for over and under are common practice, no source.
 */
import type { Family, UnitCode } from '../../kernel/measure-units.ts';

export type SpotKind =
  | 'valve'
  | 'cylinder'
  | 'main'
  | 'cam_journal'
  | 'deck_corner'
  | 'deck_line'
  | 'chamber'
  | 'lifter'
  | 'plug'
  | 'journal'
  | 'rod'
  | 'port';

/** How a bare number of a length is read; see core/kernel/measure.ts. */
export type EntryRuleName = 'none' | 'implied' | 'last_digits';

export type Quantity = Readonly<{
  code: string;
  words: string;
  family: Family;
  /** Null: once for a casting. */
  spotKind: SpotKind | null;
  /** Name of the formula in core/readings/compute/formulas.ts; null for what is read. */
  derived: string | null;
  /** Intake and exhaust may have limits of their own. */
  sideMatters: boolean;
  points: readonly Readonly<{ code: string; words: string }>[];
  entryRule: EntryRuleName;
  entryDigits: number;
  /** Allowed words of a `choice`; empty when free. */
  choices: readonly string[];
  /** Four decimals of an inch, three of a millimetre: bores, guides, fits, flatness. Else three and two. */
  fine: boolean;
  /** A place or a difference may stand below zero. */
  signed: boolean;
  /** What a person says of a figure past its limit. */
  over: string;
  under: string;
  /** The unit where inch or metric does not decide it. */
  unit: UnitCode | null;
}>;

type Extra = Partial<Omit<Quantity, 'code' | 'words' | 'points'>> & { points?: readonly (readonly [string, string])[] };

/** A quantity with everything a plain length has, and what differs. */
export function quantity(code: string, words: string, extra: Extra = {}): Quantity {
  const { points = [], ...rest } = extra;
  return {
    code,
    words,
    family: 'length',
    spotKind: null,
    derived: null,
    sideMatters: false,
    entryRule: 'none',
    entryDigits: 0,
    choices: [],
    fine: false,
    signed: false,
    over: 'too big',
    under: 'too small',
    unit: null,
    ...rest,
    points: points.map(([point, said]) => ({ code: point, words: said })),
  };
}

const valve = { spotKind: 'valve' } as const;
const cylinder = { spotKind: 'cylinder' } as const;
const bothSides = { spotKind: 'valve', sideMatters: true } as const;
const fine = { fine: true, entryRule: 'implied', entryDigits: 4 } as const;
const tall = { over: 'too tall', under: 'too short' } as const;
const load = { family: 'force', over: 'too strong', under: 'too weak' } as const;
const gap = { fine: true, under: 'not enough' } as const;
const word = { family: 'choice' } as const;
const free = { family: 'text' } as const;
const tally = { family: 'count', over: 'too many', under: 'too few' } as const;

const HEAD: readonly Quantity[] = [
  quantity('guide-id', 'guide inside', {
    ...bothSides,
    ...fine,
    points: [
      ['top', 'top, along the rocker'],
      ['mid', 'middle, along the rocker'],
      ['bot', 'bottom, along the rocker'],
      ['top-y', 'top, across'],
      ['mid-y', 'middle, across'],
      ['bot-y', 'bottom, across'],
    ],
  }),
  quantity('stem', 'valve stem', { ...bothSides, ...fine }),
  quantity('guide-clearance', 'stem in guide', { ...bothSides, ...gap, derived: 'guide-clearance' }),
  quantity('bell-mouth', 'bell-mouth of guide', { ...valve, fine: true, derived: 'bell-mouth' }),
  quantity('guide-bore-in-head', 'hole for guide', { ...valve, ...fine }),
  quantity('guide-od', 'guide outside', { ...valve, ...fine }),
  quantity('guide-interference', 'guide fit', { ...valve, ...gap, derived: 'guide-interference', signed: true }),
  quantity('guide-height', 'guide stands', { ...valve, ...tall }),
  quantity('seal-boss-od', 'seal boss', { ...valve, ...fine }),
  quantity('seal-boss-height', 'seal boss height', { ...valve, ...tall }),
  quantity('counterbore-id', 'counterbore for insert', { ...bothSides, ...fine }),
  quantity('counterbore-depth', 'counterbore depth', { ...valve, over: 'too deep', under: 'too shallow' }),
  quantity('insert-od', 'seat insert', { ...bothSides, ...fine }),
  quantity('insert-interference', 'insert fit', { ...valve, ...gap, derived: 'insert-interference', signed: true }),
  quantity('seat-angle', 'seat angle', { ...bothSides, family: 'angle' }),
  quantity('seat-width', 'seat width', { ...bothSides, over: 'too wide', under: 'too narrow' }),
  quantity('seat-runout', 'seat runout', { ...valve, fine: true, over: 'too much' }),
  quantity('tip-height', 'stem tip height', { ...valve, ...tall }),
  quantity('margin', 'margin', { ...bothSides, over: 'too thick', under: 'too thin' }),
  quantity('face-runout', 'face runout', { ...valve, fine: true, over: 'too much' }),
  quantity('tip-removed', 'taken off the tip', { ...valve, over: 'too much' }),
  quantity('recession', 'recession', { ...bothSides, signed: true, over: 'too deep', under: 'too proud' }),
  quantity('pocket-depth', 'spring pocket', { ...valve, over: 'too deep', under: 'too shallow' }),
  quantity('lash', 'lash', { ...bothSides, over: 'too much', under: 'not enough' }),
  quantity('lash-shim', 'lash shim', valve),
  quantity('vacuum-start', 'vacuum, start', { ...valve, family: 'pressure', unit: 'inHg' }),
  quantity('vacuum-end', 'vacuum, after 10 s', { ...valve, family: 'pressure', unit: 'inHg' }),
  quantity('vacuum-hold', 'vacuum, fall in 10 s', {
    ...valve,
    family: 'pressure',
    unit: 'inHg',
    derived: 'vacuum-fall',
    over: 'falls too fast',
  }),
];

const SPRINGS: readonly Quantity[] = [
  quantity('installed-height', 'height read', { ...bothSides, ...tall, entryRule: 'last_digits', entryDigits: 3 }),
  quantity('shims-fitted', 'shims', { ...valve, ...word }),
  quantity('height-with-shim', 'with shims', { ...bothSides, ...tall, derived: 'height-with-shim' }),
  quantity('seat-load', 'seat load', { ...bothSides, ...load, derived: 'seat-load' }),
  quantity('open-load', 'open load', { ...bothSides, ...load, derived: 'open-load' }),
  quantity('spring-rate', 'spring rate', { ...valve, family: 'spring_rate', derived: 'spring-rate' }),
  quantity('coil-bind-clearance', 'coil bind clearance', {
    ...bothSides,
    under: 'not enough',
    signed: true,
    derived: 'coil-bind-clearance',
  }),
  quantity('greatest-lift', 'greatest lift before bind', { ...bothSides, derived: 'greatest-lift' }),
  quantity('seal-gap', 'retainer to seal, closed', valve),
  quantity('seal-clearance', 'retainer to seal, open', {
    ...bothSides,
    under: 'not enough',
    signed: true,
    derived: 'seal-clearance',
  }),
  quantity('spring-load-1', 'spring tested at seat height', { ...valve, ...load }),
  quantity('spring-load-2', 'spring tested at open height', { ...valve, ...load }),
  quantity('spring-strength', 'of its load', {
    ...valve,
    family: 'ratio',
    derived: 'spring-strength',
    over: 'too strong',
    under: 'weak',
  }),
  quantity('spring-height-1', 'seat height of the spring data', { ...valve, ...tall }),
  quantity('spring-height-2', 'open height of the spring data', { ...valve, ...tall }),
  quantity('solid-height', 'solid height', { ...valve, ...tall }),
  quantity('valve-lift', 'valve lift', bothSides),
  quantity('cup-thickness', 'spring cup', valve),
  quantity('old-shim', 'old shim', valve),
  quantity('spring-free-length', 'free length', { ...valve, ...tall, entryRule: 'last_digits', entryDigits: 3 }),
  quantity('spring-squareness', 'lean', { ...valve, over: 'too much' }),
];

const SURFACES: readonly Quantity[] = [
  quantity('thickness', 'thickness', { ...fine, over: 'too thick', under: 'too thin' }),
  quantity('stock-removed', 'taken off', { fine: true, signed: true, over: 'too much', derived: 'stock-removed' }),
  quantity('thickness-left', 'left above the minimum', { ...gap, signed: true, derived: 'thickness-left' }),
  quantity('deck-flatness', 'deck flatness', { fine: true, over: 'too much' }),
  quantity('cam-line', 'cam line', { fine: true, over: 'too much' }),
  quantity('finish-ra', 'finish Ra', { family: 'roughness', over: 'too rough', under: 'too smooth' }),
  quantity('face-removed', 'taken off the face', { fine: true, over: 'too much' }),
  quantity('chamber-volume', 'chamber', { spotKind: 'chamber', family: 'volume', unit: 'cc' }),
  quantity('cam-bore-size', 'cam bore', { spotKind: 'cam_journal', ...fine }),
  quantity('stud-height', 'stud stands', tall),
  quantity('sleeve-protrusion', 'sleeve stands', { ...cylinder, ...tall, fine: true, signed: true }),
  quantity('flywheel-thickness', 'flywheel thickness', { over: 'too thick', under: 'too thin' }),
  quantity('step-height', 'step', tall),
];

const BLOCK: readonly Quantity[] = [
  quantity('bore', 'bore', {
    ...cylinder,
    ...fine,
    points: [
      ['top-x', 'top, across'],
      ['mid-x', 'middle, across'],
      ['bot-x', 'bottom, across'],
      ['top-y', 'top, along'],
      ['mid-y', 'middle, along'],
      ['bot-y', 'bottom, along'],
    ],
  }),
  quantity('bore-taper', 'taper', { ...cylinder, fine: true, over: 'too much', derived: 'bore-taper' }),
  quantity('bore-out-of-round', 'out of round', {
    ...cylinder,
    fine: true,
    over: 'too much',
    derived: 'bore-out-of-round',
  }),
  quantity('bore-wear', 'wear', { ...cylinder, fine: true, signed: true, over: 'too much', derived: 'bore-wear' }),
  quantity('piston-size', 'piston', { ...cylinder, ...fine }),
  quantity('piston-clearance', 'piston clearance', {
    ...cylinder,
    ...gap,
    signed: true,
    derived: 'piston-clearance',
  }),
  quantity('bore-wanted', 'size wanted', { ...cylinder, ...fine }),
  quantity('wall-thickness', 'wall', { ...cylinder, over: 'too thick', under: 'too thin' }),
  quantity('crosshatch', 'crosshatch', { ...cylinder, family: 'angle' }),
  quantity('sleeve-od', 'sleeve outside', { ...cylinder, ...fine }),
  quantity('sleeve-fit', 'sleeve fit', { ...cylinder, ...gap, signed: true }),
  quantity('counterbore-ledge', 'ledge depth', { ...cylinder, ...fine, over: 'too deep', under: 'too shallow' }),
  quantity('liner-protrusion', 'liner stands', { ...cylinder, ...tall, fine: true, signed: true }),
  quantity('ring-gap-top', 'top ring gap', { ...cylinder, under: 'not enough' }),
  quantity('ring-gap-second', 'second ring gap', { ...cylinder, under: 'not enough' }),
  quantity('main-size', 'main bore', {
    spotKind: 'main',
    ...fine,
    points: [
      ['0', 'vertical'],
      ['+60', '60 degrees one way'],
      ['-60', '60 degrees the other way'],
    ],
  }),
  quantity('cap-cut', 'taken off the cap', { spotKind: 'main', fine: true, over: 'too much' }),
  quantity('line-error', 'main line', { fine: true, over: 'too much' }),
  quantity('centre-line-rise', 'centre line rises', { fine: true, over: 'too much' }),
  quantity('deck-height', 'deck height', { spotKind: 'deck_corner', ...fine, ...tall }),
  quantity('cam-tunnel-size', 'cam tunnel', { spotKind: 'cam_journal', ...fine }),
  quantity('cam-bearing-sizes', 'cam bearing', { spotKind: 'cam_journal', ...fine }),
  quantity('lifter-bore-size', 'lifter bore', { spotKind: 'lifter', ...fine }),
  quantity('journal-size', 'journal', { spotKind: 'journal', ...fine }),
  quantity('rod-big-end', 'big end', fine),
  quantity('rod-length', 'rod length', { ...fine, over: 'too long', under: 'too short' }),
  quantity('small-end-size', 'small end', fine),
];

const RECORDS: readonly Quantity[] = [
  quantity('part-counts', 'parts counted', tally),
  quantity('cap-count', 'caps counted', tally),
  quantity('pin-count', 'pins set', tally),
  quantity('wash-method', 'washed by', word),
  quantity('oven-programme', 'oven programme', word),
  quantity('crack-result', 'crack result', {
    ...word,
    choices: ['none found', 'crack found', 'repaired', 'cannot tell'],
  }),
  quantity('crack-map', 'where the cracks are', free),
  quantity('pressure-held', 'pressure held', { family: 'pressure', under: 'too low', over: 'too high' }),
  quantity('weld-record', 'weld record', free),
  quantity('hole-place', 'which hole', free),
  quantity('plug-map', 'plugs out and in', free),
  quantity('torque-done', 'torqued', { ...word, choices: ['done', 'not done'] }),
  quantity('cleaned-by', 'cleaned', free),
];

/** Every quantity of the first catalogue, in the order lists show them. */
export const QUANTITIES: readonly Quantity[] = [...HEAD, ...SPRINGS, ...SURFACES, ...BLOCK, ...RECORDS];

const BY_CODE = new Map(QUANTITIES.map((it) => [it.code, it]));

/** A quantity of the first catalogue by its code; undefined for one the shop added itself. */
export const findQuantity = (code: string): Quantity | undefined => BY_CODE.get(code);
