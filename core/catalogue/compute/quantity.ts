/**
 * What a quantity is, as data, and the few presets its rows share.
 *
 * A workspace keeps these rows (`quantity`, `quantity_point`); what is only a way of showing stays here and is found by code.
 * Decimals, entry rules and the words for over and under are common practice, no source.
 */
import type { Family, UnitCode } from '../../kernel/measure-units.ts';
import type { OnlyFor } from './applies.ts';

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
  /** Computed, unless somebody typed it: what is typed stands. */
  orTyped: boolean;
  /** Judged by the limits of this quantity after work, where it has none of its own: what a plan or a sum would come to. */
  judgedAs: string | null;
  /** Intake and exhaust may have limits of their own. */
  sideMatters: boolean;
  points: readonly Readonly<{ code: string; words: string }>[];
  entryRule: EntryRuleName;
  entryDigits: number;
  /**
   * A dial held against the face: a bare whole number counts its steps, tenths of a thou or micrometres, and not the unit. In
   * code only: a workspace keeps the rule `none` beside it.
   */
  countsSteps: boolean;
  /** Points are too many to be rows of a workspace (a grid): they live in code. */
  pointsInCode: boolean;
  /** Without limits a cell says nothing, empty or not: the figure is extra, or a sheet gives it. In code only. */
  optional: boolean;
  /** Judged by eye against a sample and never measured: every figure of it says so. In code only. */
  compared: boolean;
  /** Whoever builds the engine checks it again before bolting down: bold on paper once the work is done. In code only. */
  checkAgain: boolean;
  /** Says what is to be made, not what is: printed large in both units. In code only. */
  toMake: boolean;
  /** The engines it can arise on; null for all. A row that cannot arise is left out of tables. In code only. */
  onlyFor: OnlyFor | null;
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
    orTyped: false,
    judgedAs: null,
    optional: false,
    compared: false,
    checkAgain: false,
    toMake: false,
    onlyFor: null,
    sideMatters: false,
    entryRule: 'none',
    entryDigits: 0,
    countsSteps: false,
    pointsInCode: false,
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

export const valve = { spotKind: 'valve' } as const;
export const cylinder = { spotKind: 'cylinder' } as const;
export const bothSides = { spotKind: 'valve', sideMatters: true } as const;
export const fine = { fine: true, entryRule: 'implied', entryDigits: 4 } as const;
export const tall = { over: 'too tall', under: 'too short' } as const;
export const load = { family: 'force', over: 'too strong', under: 'too weak' } as const;
export const gap = { fine: true, under: 'not enough' } as const;
export const word = { family: 'choice' } as const;
/** Bold on the build sheet. Which figures: common practice, no source. */
export const checkAgain = { checkAgain: true } as const;
export const free = { family: 'text' } as const;
export const tally = { family: 'count', over: 'too many', under: 'too few' } as const;
